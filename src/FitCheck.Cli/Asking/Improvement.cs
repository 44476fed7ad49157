using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;

namespace FitCheck.Cli.Asking;

/// <summary>
/// What the answers lack, such as tape, screws or a capacitor, is looked for in the catalog and offered, before the build is written.
/// </summary>
internal sealed class Improvement(Checker checker, IProgress<string>? progress = null)
{
    // Each step of what is asked of the build, with what was chosen kept or not.
    private static readonly (Status FailOn, bool Keep)[] Steps =
        [(Status.Measure, true), (Status.Fail, true), (Status.Measure, false), (Status.Fail, false)];

    // So many parts more are offered at most.
    private const int MostParts = 10;

    // What the person was asked about.
    private static readonly string[] Chosen = ["driver", "component set", "source unit", "amplifier", "spacer", "harness adapter"];

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    // Who goes a step back and on again is told the same.
    private readonly Dictionary<string, Better?> _found = new(StringComparer.Ordinal);

    /// <summary>The text of the build, with the changes that were taken.</summary>
    /// <param name="ask">Who answers.</param>
    /// <param name="draft">What was answered.</param>
    /// <param name="text">The same as a build.</param>
    public string Offered(IQuestions ask, BuildDraft draft, string text)
    {
        if (Result(text) is not { Verdict: not Status.Pass } before || Known(draft, text, before) is not { } better)
            return text;
        progress?.Report("");
        ask.Say("");
        ask.Say($"As chosen: {Headline.Of(before)}");
        ask.Say("The catalog has what makes it better:");
        foreach (var change in better.Changes)
            ask.Say($"  {change}");
        var taken = ask.One("Take these changes?",
            [new Choice("take", $"yes: {Headline.Of(better.After)}{Price(before, better.After)}", ShowsId: false),
                new Choice("leave", "no, as I chose", ShowsId: false)]).Id;
        return taken == "take" ? better.Yaml : text;
    }

    private Better? Known(BuildDraft draft, string text, BuildResult before)
    {
        if (!_found.TryGetValue(text, out var better))
            _found[text] = better = Found(draft, text, before);
        return better;
    }

    // What fails or can't be judged goes first, by whatever a search finds; then whatever a part more takes away of what is warned of.
    private Better? Found(BuildDraft draft, string text, BuildResult before)
    {
        var proposal = Changed(draft, text, before);
        var better = new Better([.. proposal?.Changes.Select(Told) ?? []], proposal?.Yaml ?? text, proposal?.After ?? before);
        for (var i = 0; i < MostParts && Added(draft, better) is { } next; i++)
            better = next;
        return better.Changes.Count > 0 ? better : null;
    }

    private Proposal? Changed(BuildDraft draft, string text, BuildResult before)
    {
        var open = DraftVerdict.Of(before);
        List<string> kept = [.. draft.Places.Select(p => p.Set?.Id ?? p.Driver.Id).Append(draft.Drive?.Amplifier.Id).OfType<string>()
            .Distinct(StringComparer.Ordinal)];
        foreach (var (failOn, keep) in Steps.Where(s => before.Verdict >= s.FailOn))
        {
            var options = new SuggestOptions { FailOn = failOn, Keep = keep ? kept : [], Time = Patience, Progress = progress };
            if (checker.Suggest(BuildSource.Text("new build", text), options).Result?.Proposals is [var best, ..]
                && DraftVerdict.Of(best.After) < open)
                return best;
        }
        return null;
    }

    // The one part more that takes most away, the cheapest of several.
    private Better? Added(BuildDraft draft, Better now)
    {
        var slots =
            checker.Choices(BuildSource.Text("new build", now.Yaml)).Result?.Slots
                .Where(s => s.Now is null && !Chosen.Contains(s.What) && !(s.What == "gasket ring" && s.Where.Any(draft.IsOval)));
        var choices = slots?.SelectMany(s => s.Choices.Where(c => c.Parts.Count > 0).Select(c => (Slot: s, Choice: c))).ToList() ?? [];
        var open = DraftVerdict.Of(now.After);
        var previews = checker.Previews(choices.ConvertAll(c => c.Choice), progress);
        var best = choices.Zip(previews).Where(c => c.Second.Result is not null)
            .Select(c => (c.First.Slot, c.First.Choice, c.Second.Result!.After, Verdict: DraftVerdict.Of(c.Second.Result.After)))
            .Where(c => c.Verdict < open).OrderBy(c => c.Verdict).ThenBy(c => c.Choice.Parts.Sum(p => p.Price?.Amount ?? 0))
            .FirstOrDefault();
        return best.Choice is null ? null
            : new Better([.. now.Changes, $"{best.Slot.What} ({Where(best.Slot.WhereNames)}): {best.Choice.Parts[0].Name}"],
            best.Choice.Text, best.After);
    }

    private static string Where(IReadOnlyList<string> names) => names is ["extras"] ? "besides" : Names.Joined(names);

    private BuildResult? Result(string text) => checker.Check([BuildSource.Text("new build", text)]).Result?.Builds[0];

    private static string Told(ProposedChange change)
    {
        var where = Where(change.Where);
        return change.To is null ? $"{change.What} ({where}): without {change.FromName ?? change.From}"
            : change.From is null ? $"{change.What} ({where}): {change.ToName ?? change.To}"
            : $"{change.What} ({where}): {change.ToName ?? change.To} instead of {change.FromName ?? change.From}";
    }

    private static string Price(BuildResult before, BuildResult after) =>
        before.Totals is [var was] && after.Totals is [var now] && now.Currency == was.Currency && now.Amount != was.Amount
            ? $" ({(now.Amount > was.Amount ? "+" : "")}{now with { Amount = now.Amount - was.Amount }})" : "";

    /// <summary>A build with changes, in words.</summary>
    private sealed record Better(IReadOnlyList<string> Changes, string Yaml, BuildResult After);
}
