using System.Diagnostics;
using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;

namespace FitCheck;

/// <summary>
/// Finds the changes from the catalog that make a build pass, by trying them against the same facts and rules as `check`.
/// </summary>
internal static class Suggest
{
    private const int Wanted = 3;
    // Above so many entries the first answer is looked for among few of each kind.
    private const int Large = 2_000;

    /// <summary>
    /// The best changes of a build that was read among what is tried, or why there are none; null when it is asked to keep what there is
    /// not, which problems tell.
    /// </summary>
    internal static Suggestion? Of(BuildFile file, SuggestOptions options, ValidInputs valid, ProblemList problems,
        CancellationToken cancel)
    {
        var (build, _, text) = file;
        foreach (var kept in options.Keep)
            BuildReader.CheckKept(new Located<string>(kept, new Location("--keep", 0, 0)), valid.Catalog, build.Vehicle, build.Devices,
                build.Channels, problems);
        if (problems.HasErrors)
            return null;
        options.Progress?.Report("looking for changes");
        return Of(new ProposalEvaluator(build.File, text, valid.Catalog, valid.Rules, build.Today, cancel), options, valid,
            options.Progress is { } progress ? progress.Report : null);
    }

    private static Suggestion Of(ProposalEvaluator evaluator, SuggestOptions request, ValidInputs valid, Action<string>? progress)
    {
        var clock = Stopwatch.StartNew();
        var before = BuildEvaluation.Judged(evaluator.Build, valid.Rules);
        var goal = new Goal { FailOn = request.FailOn, Prefer = request.Prefer };
        var suggestion = new Suggestion
        {
            Program = ProgramName.WithVersion,
            CatalogDigest = valid.Catalog.Digest,
            Preference = request.Prefer,
            FailOn = request.FailOn,
            Before = before,
            Proof = new Proof(1, 0, 0, Complete: true),
            PassesAlready = before.Verdict < request.FailOn,
            Readings = Settling.Of(evaluator.Build, valid.Rules),
        };
        if (suggestion.PassesAlready)
            return suggestion;
        IReadOnlyList<string> keep = [.. request.Keep, .. evaluator.Build.Keep.Select(k => k.Value)];
        var slots = Slots.Of(evaluator, valid.Catalog, request.CurrentOnly, keep);
        suggestion = suggestion with { Coverage = Coverage.Of(evaluator, slots, keep, request.CurrentOnly) };
        var sample = new Sample(0, evaluator.Build.Vehicle.Id,
            Shopping.List(evaluator.Build).Select(l => l.Part).ToHashSet(StringComparer.Ordinal));
        var finder = new Finder(evaluator, slots, goal, request.Time, progress)
        {
            Few = valid.Catalog.Ids.Count < Large ? null
                : most => Slots.Of(evaluator, valid.Catalog, request.CurrentOnly, keep, sample with { Most = most }),
        };
        var answers = finder.Best(Wanted);
        if (answers.Count > 0)
        {
            var teller = new ProposalTeller(evaluator, valid.Rules, before, finder.Reached);
            return suggestion with
            {
                Proposals = [.. answers.Select(teller.Tell)],
                Proof = finder.Proof,
                WithoutNewWarning = finder.AddsNothing,
            };
        }
        if (finder.Proof.Complete)
        {
            var beyond = new Beyond(evaluator, valid.Catalog, valid.Rules, before, goal, request.CurrentOnly, keep);
            progress?.Invoke("nothing nearer passes; looking further");
            var further = beyond.Find(Wanted, request.Time - clock.Elapsed);
            suggestion = suggestion with
            {
                Coverage = suggestion.Coverage.With(beyond.Tried),
                Proof = finder.Proof.With(beyond.Proof),
            };
            if (further.Count > 0)
                return suggestion with { Proposals = further };
        }
        var wishes = new Wishes(evaluator, valid.Catalog, valid.Rules, goal, request.CurrentOnly, keep, request.Time / 6);
        var conflict = suggestion.Proof.Complete && finder.Proof.Complete
            ? new Conflicts(evaluator, valid.Rules, before, slots, goal, request.Time / 6).Find(wishes.All()) : new Conflict();
        return suggestion with { Conflict = conflict, Proof = finder.Proof.Complete ? suggestion.Proof : finder.Proof };
    }
}
