using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>The supply voltages with which a device works; without ends, it is written down that it needs none.</summary>
internal sealed record SupplyRange(Figure? Lowest, Figure? Highest, Location At)
{
    internal static SupplyRange? Read(Fields f)
    {
        if (f.Text("supply_range") is { Value: FilterRange.None } none)
            return new SupplyRange(null, null, none.At);
        if (f.Figures("supply_range", Dimension.Volt) is not [var lowest, var highest])
            return null;
        Ordered(f, lowest, highest);
        return new SupplyRange(lowest, highest, lowest.At);
    }

    public bool IsNone => Lowest is null || Highest is null;

    /// <summary>Tells a range that goes from its upper end to its lower one.</summary>
    internal static void Ordered(Fields f, Figure? lowest, Figure? highest)
    {
        if (lowest is not null && highest is not null && lowest.Si > highest.Si)
            f.Problems.Error(lowest.At, $"a range goes from its lower end to its upper one, found `{lowest}` before `{highest}`",
                ProblemKind.WrongShape);
    }
}
