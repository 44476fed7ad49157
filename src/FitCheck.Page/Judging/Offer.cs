using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Judging;

/// <summary>One thing that could stand somewhere, and what it would bring: judged as the whole build would be with it.</summary>
internal sealed record Offer
{
    public required string Choice { get; init; }
    /// <summary>A part's id or a setting; null for nothing.</summary>
    public required string? Value { get; init; }
    public required IReadOnlyList<ChosenPart> Parts { get; init; }
    /// <summary>The worst that would be said at the places of the slot; null where the choice can't be made.</summary>
    public Status? Here { get; init; }
    /// <summary>The verdict of the whole build.</summary>
    public Status? Whole { get; init; }
    /// <summary>Why not, or what to look at, in one line; null where all passes.</summary>
    public string? Because { get; init; }
    /// <summary>How many more findings of each status than without it, worst first.</summary>
    public int Appear { get; init; }
    /// <summary>The finding with the least room of a length at these places; null where none is known.</summary>
    public Finding? Least { get; init; }
    /// <summary>Points of work on the vehicle at these places.</summary>
    public int Work { get; init; }
    /// <summary>What the build costs more with it, by currency; empty for as much.</summary>
    public IReadOnlyList<Money> Difference { get; init; } = [];

    /// <summary>The text with it, where it is more than the choice alone; null else.</summary>
    public string? Text { get; init; }

    public static Offer Of(BuildChoice choice, ChoiceSlot slot, PreviewOutcome outcome, IReadOnlySet<string> work) =>
        outcome.Result is { } preview ? Of(choice, slot, preview.Before, preview.After, work, [])
        : new Offer
        {
            Choice = choice.Id,
            Value = choice.Value,
            Parts = choice.Parts,
            Because = outcome.Problems.Count > 0 ? outcome.Problems[0].Message : "it can't be put into the build",
        };

    /// <param name="choice">What is chosen.</param>
    /// <param name="slot">For what.</param>
    /// <param name="before">The build without it.</param>
    /// <param name="after">The build with it.</param>
    /// <param name="work">The rules that tell of work on the vehicle.</param>
    /// <param name="besides">Parts that come with it.</param>
    public static Offer Of(BuildChoice choice, ChoiceSlot slot, BuildResult before, BuildResult after, IReadOnlySet<string> work,
        IReadOnlyList<ChosenPart> besides)
    {
        var appear = ChoicePreview.Without(after, before);
        IReadOnlyList<ChosenPart> parts = [.. choice.Parts, .. besides];
        var own = slot.Where.Concat(parts.Select(p => p.Id)).ToHashSet(StringComparer.Ordinal);
        // What is said at the places themselves and of the parts that come, then whatever else appears anywhere because of it.
        var concerned = after.Findings.Where(f => f.Waived is null && (own.Contains(f.Position) || appear.Contains(f))).ToList();
        var open = concerned.Where(f => f.Status != Status.Pass).OrderByDescending(f => f.Status)
            .ThenByDescending(f => own.Contains(f.Position)).ToList();
        return new Offer
        {
            Choice = choice.Id,
            Value = choice.Value,
            Parts = parts,
            Here = open.Count == 0 ? Status.Pass : open[0].Status,
            Whole = after.Verdict,
            Because = open.Count == 0 ? null : Reason(open),
            Appear = appear.Count(f => f.Status == Status.Fail),
            Least = concerned.Where(f => f is { Unit: "mm", Margin: not null } && f.Status != Status.Measure && !work.Contains(f.Rule)
                && own.Contains(f.Position)).MinBy(f => f.Margin),
            Work = Told.Of(concerned.Where(f => f.Status == Status.Warn && work.Contains(f.Rule))).Count,
            Difference = Dearer(before, after),
        };
    }

    private static string Reason(IReadOnlyList<Finding> open)
    {
        var told = Told.Of(open.Where(f => f.Status == open[0].Status));
        var first = told[0].First;
        var figures = Figures.Tell(first) && first.Status != Status.Measure ? $" ({Figures.Row(first)})" : "";
        var more = told.Count - 1;
        return $"{first.Title}{figures}{(more > 0 ? $", and {Sentences.Count(more, "more point", "more points")}" : "")}";
    }

    private static List<Money> Dearer(BuildResult before, BuildResult after) =>
        [.. before.Totals.Concat(after.Totals).Select(t => t.Currency).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(c => new Money(Sum(after, c) - Sum(before, c), c)).Where(m => m.Amount != 0)];

    private static decimal Sum(BuildResult of, string currency) => of.Totals.Where(t => t.Currency == currency).Sum(t => t.Amount);

    /// <summary>The best first: what can be made, the better verdict, fewer failures elsewhere, less money, more room.</summary>
    public static IReadOnlyList<Offer> BestFirst(IEnumerable<Offer> offers) =>
        [.. offers.OrderBy(o => o.Here is null).ThenBy(o => o.Here).ThenBy(o => o.Appear).ThenBy(o => o.Work)
            .ThenBy(o => o.Difference.Count == 1 ? o.Difference[0].Amount : 0).ThenByDescending(o => o.Least?.Margin ?? 0)
            .ThenBy(o => o.Choice, StringComparer.Ordinal)];
}
