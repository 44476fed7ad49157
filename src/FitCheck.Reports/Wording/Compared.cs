using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>One build of a comparison, in the words of its cells.</summary>
internal sealed class Compared(string letter, BuildResult build, IReadOnlySet<string> workRules)
{
    public string Letter => letter;

    public BuildResult Build => build;

    public string Verdict
    {
        get
        {
            var points = Tally.OfPoints(build.Findings);
            var open = Sentences.WorstFirst.Where(s => s != Status.Pass && points[s] > 0)
                .Select(s => $"{Figures.Whole(points[s])} {s.Word()}").ToList();
            var verdict = open.Count == 0 ? build.Verdict.Word() : $"{build.Verdict.Word()} ({string.Join(", ", open)})";
            return build.RestingOn.Count == 0 ? verdict : $"{verdict}, on the strength of {Headline.Count(build)}";
        }
    }

    public string Price => build.Totals.Count == 0 ? "nothing to buy" : string.Join(" + ", build.Totals);

    /// <summary>What the rules say of the sum, as of a budget.</summary>
    public Status? PriceStatus => WorstOf(f => f.Fact == BuildFacts.TotalCost.Name);

    /// <summary>
    /// The smallest margin of a length at a place, with it; what is not known is said beside it. Work that is planned makes its own room,
    /// and what an entry says of itself is no room.
    /// </summary>
    public string SmallestMargin
    {
        get
        {
            var lengths = build.Findings.Where(IsLength).ToList();
            var known = lengths.Where(f => f.Margin is not null && f.Status != Status.Measure).OrderBy(f => f.Margin).FirstOrDefault();
            var open = lengths.Where(f => f.Status == Status.Measure).Select(f => f.PositionName).ToList();
            var unknown = open.Count == 0 ? null : $"{Sentences.Unknown} ({Names.Joined(open)})";
            if (known is null)
                return unknown ?? "nothing to compare";
            // Titles name what is wrong where a rule is not kept.
            var margin = known.Margin < 0 ? $"{Figures.Margin(known)} ({known.PositionName}: {known.Title})"
                : $"{Figures.Margin(known)} to spare before: {known.Title} ({known.PositionName})";
            return unknown is null ? margin : $"{margin}; elsewhere {unknown}";
        }
    }

    /// <summary>The worst that is said of a length at a place.</summary>
    public Status? MarginStatus => WorstOf(f => IsLength(f) && (f.Margin is not null || f.Status == Status.Measure));

    /// <summary>Work that the build accepts and needs, each with its places.</summary>
    public IReadOnlyList<string> Work => [.. Works(Status.Warn)];

    public string WorkText
    {
        get
        {
            var open = Works(Status.Measure).Select(w => $"{Sentences.Unknown} ({w})");
            return string.Join("; ", Work.Concat(open)) is { Length: > 0 } text ? text : "none planned";
        }
    }

    /// <summary>Work is something to look at; none is well.</summary>
    public Status? WorkStatus => Works(Status.Measure).Any() ? Status.Measure : Work.Count > 0 ? Status.Warn : Status.Pass;

    /// <summary>Decibels, whole; null when it is not known of every driver.</summary>
    public int? Loudest => LoudestKnown is { } level && Silent.Count == 0 ? level : null;

    public string LoudestText => LoudestKnown is not { } level ? Sentences.Unknown
        : Silent.Count == 0 ? $"{Figures.Whole(level)} dB(A)"
        : $"at least {Figures.Whole(level)} dB(A); {Sentences.Unknown} ({Names.Joined(Silent)})";

    /// <summary>No rule judges how loud it is; only that it is not known.</summary>
    public Status? LoudestStatus => Loudest is null ? Status.Measure : null;

    /// <summary>Whether the cones stay within their travel as the build is planned.</summary>
    public Status? SafeStatus => Woofers.Any(t => Safe(t) == Sentences.Unknown) ? Status.Measure
        : WorstOf(f => f.Fact == TravelFacts.ExcursionRatio.Name);

    /// <summary>The lowest corner of a high-pass that keeps each woofer within its linear travel.</summary>
    public string SafeFrom
    {
        get
        {
            var woofers = Woofers.ToList();
            if (woofers.Count == 0)
                return "no new woofer";
            return string.Join("; ",
                woofers.GroupBy(Safe, StringComparer.Ordinal).Select(g => $"{g.Key} ({Names.Joined(g.Select(t => t.Name))})"));
        }
    }

    /// <summary>In words, how it differs from another: `B costs 84.00 EUR more than A and plays 3 dB louder; it needs: …`.</summary>
    public string Against(Compared other)
    {
        var said = new List<string>();
        if (build.Verdict != other.Build.Verdict)
            said.Add($"is judged {build.Verdict.Word()} where {other.Letter} is judged {other.Build.Verdict.Word()}");
        said.Add(PriceAgainst(other));
        if (Loudest is { } mine && other.Loudest is { } theirs)
            said.Add(mine == theirs ? "plays as loud"
                : $"plays {Figures.Whole(Math.Abs(mine - theirs))} dB {(mine > theirs ? "louder" : "quieter")}");
        var sentence = $"{letter} {Names.Listed(said)}";
        var (more, less) =
            (Work.Except(other.Work, StringComparer.Ordinal).ToList(), other.Work.Except(Work, StringComparer.Ordinal).ToList());
        if (more.Count > 0)
            sentence += $"; work that {other.Letter} does not need: {string.Join("; ", more)}";
        if (less.Count > 0)
            sentence += $"; {other.Letter} needs work that {letter} does not: {string.Join("; ", less)}";
        return sentence + ".";
    }

    private IEnumerable<FactTable> Woofers => Positions.Where(t => Is(t, PlaceFacts.HasDriver) && !Is(t, TweeterFacts.IsTweeter));

    private bool IsLength(Finding f) => f is { Unit: "mm", Waived: null } && !workRules.Contains(f.Rule)
        && Positions.Any(p => p.Key == f.Position);

    private Status? WorstOf(Func<Finding, bool> about) =>
        build.Findings.Where(f => f.Waived is null && about(f)).Select(f => f.Status).ToList() is { Count: > 0 } found
            ? StatusWords.Worst(found) : null;

    private IEnumerable<FactTable> Positions => build.Facts.Where(t => t.Subject == Subject.Position);

    private int? LoudestKnown =>
        build.Facts.FirstOrDefault(t => t.Subject == Subject.Build)?.Of(LoudnessFacts.LoudestLevel)?.Number is { } level
        ? (int)Math.Round(level.Value, MidpointRounding.AwayFromZero) : null;

    // Drivers whose level is not known; the level of all together is then a lower bound.
    private List<string> Silent =>
        [.. Positions.Where(t => Is(t, PlaceFacts.HasDriver) && t.Of(LevelFacts.LevelAtFullPower)?.Number is null).Select(t => t.Name)];

    private IEnumerable<string> Works(Status status) =>
        Told.Of(build.Findings.Where(f => f.Waived is null && f.Status == status && workRules.Contains(f.Rule)))
        .GroupBy(t => t.First.Title, StringComparer.Ordinal)
        .Select(g => $"{Names.Joined(g.SelectMany(t => t.Findings).Select(f => f.PositionName))}: {g.Key}");

    private string PriceAgainst(Compared other)
    {
        if (build.Totals.Count == 0 && other.Build.Totals.Count == 0)
            return "costs as little";
        var (mine, theirs) = (Single(build), Single(other.Build));
        if (mine is null || theirs is null || (mine.Currency != theirs.Currency && mine.Amount != 0 && theirs.Amount != 0))
            return $"is priced in other currencies ({Price} against {other.Price})";
        var difference = mine.Amount - theirs.Amount;
        var currency = mine.Amount != 0 ? mine.Currency : theirs.Currency;
        return difference == 0 ? $"costs as much as {other.Letter}"
            : $"costs {new Money(Math.Abs(difference), currency)} {(difference > 0 ? "more" : "less")} than {other.Letter}";
    }

    private static Money? Single(BuildResult of) => of.Totals.Count switch { 0 => new Money(0, ""), 1 => of.Totals[0], _ => null };

    private static bool Is(FactTable table, TruthFact fact) => table.Of(fact)?.Truth == true;

    private static string Safe(FactTable table)
    {
        if (table.Of(TravelFacts.LowestSafeHighPass) is not { Number: { } corner } fact || fact.Unsure.Count > 0)
            return Sentences.Unknown;
        var slope = table.Of(TravelFacts.SafeHighPassSlope)?.Number is { } s
            ? $" at {s.Value.ToString("0", CultureInfo.InvariantCulture)} dB/octave" : "";
        return corner.Value <= Physics.Numerics.FrequencyGrid.Lowest ? $"{Figures.Hertz(corner.Value)}, without a filter"
            : Figures.Hertz(corner.Value) + slope;
    }
}
