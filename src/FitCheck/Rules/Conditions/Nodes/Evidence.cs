using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>Carries what a result rests on: the data, and what of them is missing or guessed.</summary>
internal static class Evidence
{
    /// <summary>
    /// The result with the evidence of its operands, each entry once. What value of a datum would pass is dropped:
    /// it was told for the operand, not for the result.
    /// </summary>
    public static FactValue RestingOn(this FactValue result, params FactValue[] operands)
    {
        var (unsure, data) = (AllOf(operands, o => o.Unsure), AllOf(operands, o => o.Data));
        return result with
        {
            Unsure = unsure.Count switch { 0 => [], 1 => [WithoutPassing(unsure[0])], _ => [.. unsure.Select(WithoutPassing).Distinct()] },
            Data = data.Count < 2 ? data : [.. data.Distinct()],
        };
    }

    /// <summary>An unknown result that a tolerance leaves open: where no datum is missing, the inexact facts are to be measured.</summary>
    public static FactValue OrInexact(this FactValue unknown, Node node, FactInputs inputs) => unknown.Unsure.Count > 0
        ? unknown
        : unknown with { Unsure = [.. node.Names().Where(inputs.IsInexact).SelectMany(inputs.Inexact).Select(WithoutPassing)] };

    // Most results rest on one operand that has any: its own list then.
    private static IReadOnlyList<T> AllOf<T>(FactValue[] operands, Func<FactValue, IReadOnlyList<T>> of)
    {
        IReadOnlyList<T> all = [];
        foreach (var operand in operands)
        {
            if (of(operand) is { Count: > 0 } more)
                all = all.Count == 0 ? more : [.. all, .. more];
        }
        return all;
    }

    public static Unsure WithoutPassing(Unsure unsure) => unsure.Passing is null ? unsure : unsure with { Passing = null };
}
