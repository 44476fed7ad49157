using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;

namespace FitCheck;

/// <summary>What `suggest` is asked for.</summary>
public sealed record SuggestRequest(string File)
{
    public Status FailOn { get; init; } = Status.Fail;
    public Preference Prefer { get; init; }
    /// <summary>Ids of parts, positions, devices or outputs that stay, besides those that the build keeps.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];
    /// <summary>Only parts that need not be ordered.</summary>
    public bool CurrentOnly { get; init; }
    /// <summary>How long to search at most.</summary>
    public TimeSpan Time { get; init; } = TimeSpan.FromSeconds(60);
}

/// <summary>Finds the changes from the catalog that make a build pass, by trying them against the same facts and rules as `check`.</summary>
public static class Suggest
{
    private const int Wanted = 3;
    // Above so many entries the first answer is looked for among few of each kind.
    private const int Large = 2_000;

    /// <summary>The best changes among what is tried, or why there are none. Bad input comes back as problems, never as an exception.</summary>
    public static SuggestOutcome Run(SuggestRequest request, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (BuildFiles.Open([request.File], folders, remembered, problems, progress) is not var (workshop, builds))
            return new SuggestOutcome(null, problems.Sorted());
        var (build, _, text) = builds[0];
        foreach (var kept in request.Keep)
            BuildReader.CheckKept(new Located<string>(kept, new Location("--keep", 0, 0)), workshop.Catalog, build.Vehicle, build.Devices, build.Channels, problems);
        if (problems.HasErrors)
            return new SuggestOutcome(null, problems.Sorted());
        progress?.Invoke("looking for changes");
        var bench = new Bench(build.File, text, workshop.Catalog, workshop.Rules);
        return new SuggestOutcome(Of(bench, request, workshop, progress), problems.Sorted());
    }

    private static Suggestion Of(Bench bench, SuggestRequest request, Workshop workshop, Action<string>? progress)
    {
        var before = BuildEvaluation.Judged(bench.Build, workshop.Rules);
        var goal = new Goal { FailOn = request.FailOn, Prefer = request.Prefer };
        var suggestion = new Suggestion
        {
            Program = ProgramName.WithVersion,
            CatalogDigest = workshop.Catalog.Digest,
            Preference = request.Prefer,
            FailOn = request.FailOn,
            Before = before,
            Proof = new Proof(1, 0, 0, Complete: true),
            PassesAlready = before.Verdict < request.FailOn,
            Readings = Settling.Of(bench.Build, workshop.Rules),
        };
        if (suggestion.PassesAlready)
            return suggestion;
        IReadOnlyList<string> keep = [.. request.Keep, .. bench.Build.Keep.Select(k => k.Value)];
        var slots = Slots.Of(bench, workshop.Catalog, request.CurrentOnly, keep);
        suggestion = suggestion with { Coverage = Coverage.Of(bench, slots, keep, request.CurrentOnly) };
        var sample = new Sample(0, bench.Build.Vehicle.Id, Shopping.List(bench.Build).Select(l => l.Part).ToHashSet(StringComparer.Ordinal));
        var finder = new Finder(bench, slots, goal, request.Time, progress)
        {
            Few = workshop.Catalog.Ids.Count < Large ? null : most => Slots.Of(bench, workshop.Catalog, request.CurrentOnly, keep, sample with { Most = most }),
        };
        var answers = finder.Best(Wanted);
        if (answers.Count > 0)
        {
            var teller = new ProposalTeller(bench, workshop.Rules, before, finder.Reached);
            return suggestion with { Proposals = [.. answers.Select(teller.Tell)], Proof = finder.Proof };
        }
        var wishes = new Wishes(bench, workshop.Catalog, workshop.Rules, goal, request.CurrentOnly, keep, request.Time / 6);
        var conflict = finder.Proof.Complete ? new Conflicts(bench, workshop.Rules, before, slots, goal, request.Time / 6).Find(wishes.All()) : new Conflict();
        return suggestion with { Conflict = conflict, Proof = finder.Proof };
    }
}
