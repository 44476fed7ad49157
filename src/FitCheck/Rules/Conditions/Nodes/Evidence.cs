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
        var unsure = new List<Unsure>();
        var data = new List<Datum>();
        foreach (var operand in operands)
        {
            unsure.AddRange(operand.Unsure.Select(WithoutPassing));
            data.AddRange(operand.Data);
        }
        return result with { Unsure = [.. unsure.Distinct()], Data = [.. data.Distinct()] };
    }

    /// <summary>An unknown result that a tolerance leaves open: where no datum is missing, the inexact facts are to be measured.</summary>
    public static FactValue OrInexact(this FactValue unknown, Node node, FactInputs inputs) => unknown.Unsure.Count > 0
        ? unknown
        : unknown with { Unsure = [.. node.Names().Where(inputs.IsInexact).SelectMany(inputs.Inexact).Select(WithoutPassing)] };

    public static Unsure WithoutPassing(Unsure unsure) => unsure.Passing is null ? unsure : unsure with { Passing = null };
}
