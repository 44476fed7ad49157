using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>Which side of a bound is bad.</summary>
internal enum LimitSide
{
    Below,
    Above,
    Is,
}

/// <summary>One bound of a threshold with its value for one subject.</summary>
internal sealed record Limit(Status Status, LimitSide Side, Expression Bound, FactValue Value)
{
    /// <summary>Every limit of a rule: those that fail first, then those that warn.</summary>
    public static IReadOnlyList<Limit> AllOf(Rule rule, FactInputs inputs)
    {
        var limits = new List<Limit>();
        foreach (var (status, side, bound) in AllOf(rule))
            limits.Add(new Limit(status, side, bound, bound.Evaluate(inputs)));
        return limits;
    }

    /// <summary>Every limit before its value for a subject is known.</summary>
    public static IEnumerable<(Status Status, LimitSide Side, Expression Bound)> AllOf(Rule rule)
    {
        foreach (var (status, threshold) in new[] { (Status.Fail, rule.Fail), (Status.Warn, rule.Warn) })
        {
            if (threshold?.Below is { } below)
                yield return (status, LimitSide.Below, below);
            if (threshold?.Above is { } above)
                yield return (status, LimitSide.Above, above);
            foreach (var value in threshold?.Is ?? [])
                yield return (status, LimitSide.Is, value);
        }
    }

    /// <summary>What decides.</summary>
    public LimitValue InBrief => new(Status, Side, Brief.Of(Value));

    /// <summary>Distance in SI, positive on the good side and zero on the limit itself; null for truths, words and unknowns.</summary>
    public double? Margin(FactValue fact) =>
        InBrief.Margin(Brief.Of(fact), Comparison.ScaleOf(fact.Type.Dimension)) is var margin && double.IsNaN(margin) ? null : margin;

    /// <summary>What a datum has to reach to be on the good side for certain; null when the limit is unknown or no number.</summary>
    public PassLimit? Passing => Side == LimitSide.Is || Value.Number is not { } limit
        ? null
        : Side == LimitSide.Below ? new PassLimit(limit.High, AtLeast: true) : new PassLimit(limit.Low, AtLeast: false);
}
