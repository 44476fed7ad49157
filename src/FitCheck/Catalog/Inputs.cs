using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>An input of an amplifier. Whether it is there is one thing, what it stands another.</summary>
/// <param name="IsThere">False when `none` is written; null when nobody wrote anything.</param>
/// <param name="Fields">What is written of it.</param>
internal sealed record AmplifierInput(bool? IsThere, Fields? Fields)
{
    internal static AmplifierInput Read(Fields f, string key) =>
        f.Inner(key) is { } inner ? new(true, inner) : new(f.Text(key)?.Value == FilterRange.None ? false : null, null);

    internal Figure? Volts(string key) => Fields?.Figure(key, Dimension.Volt);
}

/// <summary>The supply voltages with which a device works; without ends, it is written down that it needs none.</summary>
internal sealed record SupplyRange(Figure? Lowest, Figure? Highest, Location At)
{
    internal static SupplyRange? Read(Fields f)
    {
        if (f.Text("supply_range") is { Value: FilterRange.None } none)
            return new SupplyRange(null, null, none.At);
        if (f.Figures("supply_range", Dimension.Volt) is not [var lowest, var highest])
            return null;
        FigureOrder.Range(f, lowest, highest);
        return new SupplyRange(lowest, highest, lowest.At);
    }

    public bool IsNone => Lowest is null || Highest is null;
}
