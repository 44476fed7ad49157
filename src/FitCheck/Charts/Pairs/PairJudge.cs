using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Charts.Pairs;

/// <summary>
/// Judges single pairs by the facts and rules of `check`: what a chart tells comes from here, and what finds it faster is held to it.
/// </summary>
internal sealed class PairJudge(PairRules rules, IReadOnlySet<string> accepts)
{
    /// <summary>The best mounting, and what the rules say of the pair on it.</summary>
    public (int Mount, PairVerdict Outcome) Best(IReadOnlyList<Pair> mountings)
    {
        var (best, outcome) = (0, Judge(mountings[0]));
        for (var i = 1; i < mountings.Count; i++)
        {
            var other = Judge(mountings[i]);
            if (other.IsBetterThan(outcome))
                (best, outcome) = (i, other);
        }
        return (best, outcome);
    }

    /// <summary>What the rules say of one pair; nothing more is asked once one fails.</summary>
    public PairVerdict Judge(Pair pair)
    {
        var table = pair.Facts(accepts, rules.Practice);
        var worst = Status.Pass;
        var least = PairVerdict.NoMargin;
        for (var i = 0; i < rules.Judged.Count; i++)
        {
            var rule = rules.Judged[i];
            if (Judgement.Of(rule, new FactInputs(rule.Scope, table.Values)) is not { } judgement)
                continue;
            var margin = rule.Unit?.Dimension == Dimension.Metre && judgement.Margin is { } metres ? PairVerdict.Nanometres(metres)
                : PairVerdict.NoMargin;
            if (judgement.Status == Status.Fail)
                return new PairVerdict(Status.Fail, i, margin);
            worst = StatusWords.WorseOf(worst, judgement.Status);
            least = Math.Min(least, margin);
        }
        return new PairVerdict(worst, rules.Judged.Count, least);
    }

    /// <summary>Every finding on a pair, worst first, then by the smaller margin, then in the order of judging.</summary>
    public IReadOnlyList<Finding> Findings(Pair pair)
    {
        var table = pair.Facts(accepts, rules.Practice);
        return [.. rules.Judged.Select(r => Rules.Judge.Evaluate(r, table, table.Key)).OfType<Finding>()
            .OrderByDescending(f => f.Status).ThenBy(f => f.Unit == "mm" ? f.Margin ?? double.MaxValue : double.MaxValue)];
    }
}
