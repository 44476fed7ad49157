using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions;

namespace FitCheck.Rules.Model;

/// <summary>
/// Where a status begins: strictly below or above a number, or at one of several truths or words. Exactly on the limit is still good.
/// </summary>
internal sealed record Threshold(Location At)
{
    public Expression? Below { get; init; }
    public Expression? Above { get; init; }
    public IReadOnlyList<Expression> Is { get; init; } = [];

    /// <summary>Every bound of it.</summary>
    public IEnumerable<Expression> Bounds =>
        [.. Below is null ? [] : (Expression[])[Below], .. Above is null ? [] : (Expression[])[Above], .. Is];

    /// <summary>As a person reads it: `below 3 mm or above 20 mm`.</summary>
    public override string ToString() => string.Join(" or ", Parts());

    private IEnumerable<string> Parts()
    {
        if (Below is not null)
            yield return "below " + Below.Text;
        if (Above is not null)
            yield return "above " + Above.Text;
        foreach (var value in Is)
            yield return "is " + value.Text;
    }
}
