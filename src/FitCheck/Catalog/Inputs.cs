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
