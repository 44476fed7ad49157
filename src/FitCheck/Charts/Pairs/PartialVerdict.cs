using FitCheck.Findings;

namespace FitCheck.Charts.Pairs;

/// <summary>What some of the rules say; parts from different rules are put together to an outcome.</summary>
/// <param name="Worst">The worst status.</param>
/// <param name="Failed">Place in the order of judging of the first rule that fails, or the largest number there is.</param>
/// <param name="FailedMargin">The margin of that rule.</param>
/// <param name="Least">The smallest margin.</param>
internal readonly record struct PartialVerdict(Status Worst, int Failed, long FailedMargin, long Least)
{
    public static readonly PartialVerdict Nothing = new(Status.Pass, int.MaxValue, PairVerdict.NoMargin, PairVerdict.NoMargin);

    public bool HasFailed => Failed != int.MaxValue;

    public PartialVerdict With(in PartialVerdict other)
    {
        var first = Failed <= other.Failed;
        return new(StatusWords.WorseOf(Worst, other.Worst), first ? Failed : other.Failed, first ? FailedMargin : other.FailedMargin,
            Math.Min(Least, other.Least));
    }

    public PartialVerdict With(Status status, long margin) =>
        this with { Worst = StatusWords.WorseOf(Worst, status), Least = Math.Min(Least, margin) };

    /// <summary>With a rule that fails, none before it having failed.</summary>
    public PartialVerdict WithFailed(int order, long margin) => new(Status.Fail, order, margin, Least);

    public PairVerdict ToOutcome(int rules) => HasFailed ? new(Status.Fail, Failed, FailedMargin) : new(Worst, rules, Least);
}
