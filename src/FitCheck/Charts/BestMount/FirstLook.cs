using FitCheck.Charts.Pairs;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// A rule on what a place has to spare over what a driver needs on its spacer: of most spacers it tells that they are no better than
/// another.
/// </summary>
/// <param name="Order">Its place in the order of judging.</param>
/// <param name="Rule">The rule, a plain one that always applies.</param>
/// <param name="There">What the place has.</param>
/// <param name="Needed">What is needed.</param>
internal sealed record FirstLook(int Order, BriefRule Rule, Func<ChartedPlace, LengthTerm> There, Func<DriverOnMount, LengthTerm> Needed)
{
    /// <summary>Whether this alone tells that a mounting fails and is no better than the best.</summary>
    public bool IsWorse(in LengthTerm there, in LengthTerm needed, in PairVerdict best) =>
        Rule.Keeps(there.Si - needed.Si, there.Low - needed.High, there.High - needed.Low, out var metres) == false && Order <= best.Failed
        && (Order < best.Failed || PairVerdict.Nanometres(metres) <= best.Margin);
}
