using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>Which side of a bound is bad.</summary>
internal enum Side
{
    Below,
    Above,
    Is,
}

/// <summary>One bound of a threshold with its value for one subject.</summary>
internal sealed record Limit(Status Status, Side Side, Expression Bound, FactValue Value)
{
    /// <summary>Every limit of a rule: those that fail first, then those that warn.</summary>
    public static IReadOnlyList<Limit> AllOf(Rule rule, FactInputs inputs)
    {
        var limits = new List<Limit>();
        foreach (var (status, side, bound) in AllOf(rule))
            limits.Add(new Limit(status, side, bound, bound.Evaluate(inputs)));
        return limits;
    }

    /// <summary>The same before their values are known.</summary>
    public static IEnumerable<(Status Status, Side Side, Expression Bound)> AllOf(Rule rule)
    {
        foreach (var (status, threshold) in new[] { (Status.Fail, rule.Fail), (Status.Warn, rule.Warn) })
        {
            if (threshold?.Below is { } below)
                yield return (status, Side.Below, below);
            if (threshold?.Above is { } above)
                yield return (status, Side.Above, above);
            foreach (var value in threshold?.Is ?? [])
                yield return (status, Side.Is, value);
        }
    }

    /// <summary>Whether a value is beyond it: certainly, certainly not, or null when bounds overlap. Both values must be known.</summary>
    public bool? IsBroken(FactValue fact) => Side switch
    {
        Side.Below => Comparison.Less(fact.Number!.Value, Value.Number!.Value, fact.Type.Dimension),
        Side.Above => Comparison.Less(Value.Number!.Value, fact.Number!.Value, fact.Type.Dimension),
        _ => fact.Truth == Value.Truth && fact.Word == Value.Word,
    };

    /// <summary>Distance in SI, positive on the good side and zero on the limit itself; null for truths, words and unknowns.</summary>
    public double? Margin(FactValue fact)
    {
        if (Side == Side.Is || fact.Number is not { } number || Value.Number is not { } limit)
            return null;
        if (Comparison.Near(number.Value, limit.Value, fact.Type.Dimension))
            return 0;
        return Side == Side.Below ? number.Value - limit.Value : limit.Value - number.Value;
    }

    /// <summary>What a datum has to reach to be on the good side for certain; null when the limit is unknown or no number.</summary>
    public PassLimit? Passing => Side == Side.Is || Value.Number is not { } limit
        ? null
        : Side == Side.Below ? new PassLimit(limit.High, AtLeast: true) : new PassLimit(limit.Low, AtLeast: false);
}
