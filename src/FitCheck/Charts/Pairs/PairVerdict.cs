using FitCheck.Findings;

namespace FitCheck.Charts.Pairs;

/// <summary>What the rules say of a pair on one mounting, in the few numbers by which mountings are compared.</summary>
/// <param name="Status">The worst of its findings.</param>
/// <param name="Failed">Place, in the order of judging, of the first rule that fails; the number of rules when none does.</param>
/// <param name="Margin">
/// The smallest distance of a length to its limit in nanometres, negative beyond it; of the rule that failed, when one does. The largest
/// number there is when no length is known. Whole, so that two ways of adding up the same figures can't differ.
/// </param>
internal readonly record struct PairVerdict(Status Status, int Failed, long Margin)
{
    public const long NoMargin = long.MaxValue;

    /// <summary>Any other is better.</summary>
    public static readonly PairVerdict Worst = new(Status.Fail, -1, long.MinValue);

    /// <summary>
    /// True when this is better than another: by status, then by the larger margin; of two that fail, the one that gets farther first.
    /// </summary>
    public bool IsBetterThan(in PairVerdict other) =>
        Status != other.Status ? Status < other.Status
        : Failed != other.Failed ? Failed > other.Failed
        : Margin > other.Margin;

    /// <summary>A margin in metres as it is compared.</summary>
    public static long Nanometres(double metres) => double.IsFinite(metres) ? (long)Math.Round(metres * 1e9) : NoMargin;
}
