namespace FitCheck.Physics.Quantities;

/// <summary>A unit as it is written, its dimension and its factor to the SI unit.</summary>
/// <param name="Symbol">As written, case-sensitive (`mm`, `ohm`, `Hz`).</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Multiply a number in this unit by this to get SI. Degrees Celsius stay as they are.</param>
/// <param name="Decimals">Digits after the point when a value is shown to a person.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, int Decimals = 1)
{
    /// <summary>Every unit that a catalog, a build or a rule may use.</summary>
    public static readonly IReadOnlyList<Unit> All =
    [
        new("mm", Dimension.Metre, 1e-3), new("cm", Dimension.Metre, 1e-2), new("m", Dimension.Metre, 1, 2),
        new("in", Dimension.Metre, 0.0254, 3),
        new("mm2", Dimension.SquareMetre, 1e-6, 2), new("cm2", Dimension.SquareMetre, 1e-4),
        new("L", Dimension.CubicMetre, 1e-3), new("cm3", Dimension.CubicMetre, 1e-6),
        new("g", Dimension.Kilogram, 1e-3), new("kg", Dimension.Kilogram, 1, 2),
        new("Hz", Dimension.Hertz, 1, 0), new("kHz", Dimension.Hertz, 1e3, 2),
        new("s", new Dimension(Time: 1), 1, 1),
        new("A", Dimension.Ampere, 1), new("mA", Dimension.Ampere, 1e-3, 0),
        new("V", Dimension.Volt, 1, 2), new("mV", Dimension.Volt, 1e-3, 0),
        new("W", Dimension.Watt, 1), new("kW", Dimension.Watt, 1e3, 2),
        new("ohm", Dimension.Ohm, 1, 2), new("mohm", Dimension.Ohm, 1e-3), new("kohm", Dimension.Ohm, 1e3, 2),
        new("pF", Dimension.Farad, 1e-12, 0), new("nF", Dimension.Farad, 1e-9, 0), new("uF", Dimension.Farad, 1e-6, 2),
        new("mF", Dimension.Farad, 1e-3, 2),
        new("uH", Dimension.Henry, 1e-6, 0), new("mH", Dimension.Henry, 1e-3, 2),
        new("mm/N", Dimension.Compliance, 1e-3, 2), new("um/N", Dimension.Compliance, 1e-6, 0),
        new("T m", Dimension.ForceFactor, 1, 2), new("N/A", Dimension.ForceFactor, 1, 2),
        new("degC", Dimension.Kelvin, 1, 0), new("K", Dimension.Kelvin, 1, 0),
        new("dB", Dimension.Decibel, 1), new("dB/octave", Dimension.Slope, 1, 0),
        new("deg", Dimension.Radian, Math.PI / 180),
        new("1", Dimension.One, 1, 2), new("%", Dimension.One, 1e-2, 0),
        new("money", Dimension.Currency, 1, 2),
    ];

    private static readonly Dictionary<string, Unit> BySymbol = All.ToDictionary(u => u.Symbol, StringComparer.Ordinal);

    // The first of a dimension in the list is the one that people read: millimetres, hertz, ohms; but microfarads and millihenries.
    private static readonly Dictionary<Dimension, Unit> Shown = All.GroupBy(u => u.Dimension)
        .ToDictionary(g => g.Key, g => g.FirstOrDefault(u => u.Symbol is "uF" or "mH") ?? g.First());

    /// <summary>The unit with this symbol, or null.</summary>
    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);

    /// <summary>The unit in which a value of this dimension is shown, or null when there is none.</summary>
    public static Unit? DisplayFor(Dimension dimension) => Shown.GetValueOrDefault(dimension);

    /// <summary>SI to this unit.</summary>
    public double FromSi(double si) => si / Factor;

    /// <summary>This unit to SI.</summary>
    public double ToSi(double number) => number * Factor;
}
