namespace FitCheck.Physics.Quantities;

/// <summary>
/// The dimension of a quantity: exponents of the base quantities that the trade's units need.
/// Level (dB), octave, angle and money count as dimensions of their own, so that a rule cannot add decibels to ohms.
/// </summary>
public readonly record struct Dimension(
    sbyte Length = 0, sbyte Mass = 0, sbyte Time = 0, sbyte Current = 0,
    sbyte Temperature = 0, sbyte Level = 0, sbyte Octave = 0, sbyte Angle = 0, sbyte Money = 0)
{
    /// <summary>A pure number.</summary>
    public static readonly Dimension One;
    /// <summary>Metre.</summary>
    public static readonly Dimension Metre = new(Length: 1);
    /// <summary>Square metre.</summary>
    public static readonly Dimension SquareMetre = new(Length: 2);
    /// <summary>Cubic metre.</summary>
    public static readonly Dimension CubicMetre = new(Length: 3);
    /// <summary>Kilogram.</summary>
    public static readonly Dimension Kilogram = new(Mass: 1);
    /// <summary>Hertz.</summary>
    public static readonly Dimension Hertz = new(Time: -1);
    /// <summary>Ampere.</summary>
    public static readonly Dimension Ampere = new(Current: 1);
    /// <summary>Watt.</summary>
    public static readonly Dimension Watt = new(Length: 2, Mass: 1, Time: -3);
    /// <summary>Volt.</summary>
    public static readonly Dimension Volt = new(Length: 2, Mass: 1, Time: -3, Current: -1);
    /// <summary>Ohm.</summary>
    public static readonly Dimension Ohm = new(Length: 2, Mass: 1, Time: -3, Current: -2);
    /// <summary>Farad.</summary>
    public static readonly Dimension Farad = new(Length: -2, Mass: -1, Time: 4, Current: 2);
    /// <summary>Henry.</summary>
    public static readonly Dimension Henry = new(Length: 2, Mass: 1, Time: -2, Current: -2);
    /// <summary>Metre per newton.</summary>
    public static readonly Dimension Compliance = new(Mass: -1, Time: 2);
    /// <summary>Tesla metre, newton per ampere.</summary>
    public static readonly Dimension ForceFactor = new(Length: 1, Mass: 1, Time: -2, Current: -1);
    /// <summary>Kelvin (differences; a temperature in degrees Celsius is kept as such).</summary>
    public static readonly Dimension Kelvin = new(Temperature: 1);
    /// <summary>Decibel.</summary>
    public static readonly Dimension Decibel = new(Level: 1);
    /// <summary>Decibel per octave.</summary>
    public static readonly Dimension Slope = new(Level: 1, Octave: -1);
    /// <summary>Radian.</summary>
    public static readonly Dimension Radian = new(Angle: 1);
    /// <summary>An amount of the build's currency.</summary>
    public static readonly Dimension Currency = new(Money: 1);

    /// <summary>Dimension of a product.</summary>
    public static Dimension operator *(Dimension a, Dimension b) => Combine(a, b, 1);

    /// <summary>Dimension of a quotient.</summary>
    public static Dimension operator /(Dimension a, Dimension b) => Combine(a, b, -1);

    /// <summary>Dimension of a product; the named form of the operator.</summary>
    public static Dimension Multiply(Dimension left, Dimension right) => left * right;

    /// <summary>Dimension of a quotient; the named form of the operator.</summary>
    public static Dimension Divide(Dimension left, Dimension right) => left / right;

    /// <summary>The unit in which people write it, or base units joined by a dot.</summary>
    public override string ToString() => Unit.DisplayFor(this)?.Symbol is { } symbol
        ? symbol == "1" ? "a pure number" : symbol
        : BaseUnits();

    /// <summary>Field by field: what the compiler would make needs the just-in-time compiler at every start.</summary>
    public bool Equals(Dimension other) =>
        Length == other.Length && Mass == other.Mass && Time == other.Time && Current == other.Current && Temperature == other.Temperature
        && Level == other.Level && Octave == other.Octave && Angle == other.Angle && Money == other.Money;

    /// <inheritdoc/>
    public override int GetHashCode() =>
        Length + (7
            * (Mass + (7 * (Time + (7 * (Current + (7 * (Temperature + (7 * (Level + (7 * (Octave + (7 * (Angle + (7 * Money)))))))))))))));

    private static Dimension Combine(Dimension a, Dimension b, int sign) => new(
        Sum(a.Length, b.Length, sign), Sum(a.Mass, b.Mass, sign), Sum(a.Time, b.Time, sign), Sum(a.Current, b.Current, sign),
        Sum(a.Temperature, b.Temperature, sign), Sum(a.Level, b.Level, sign), Sum(a.Octave, b.Octave, sign),
        Sum(a.Angle, b.Angle, sign), Sum(a.Money, b.Money, sign));

    // Clamped: an expression of a thousand factors is refused as nonsense by its dimension, not by an overflow.
    private static sbyte Sum(sbyte a, sbyte b, int sign) => (sbyte)Math.Clamp(a + (sign * b), sbyte.MinValue, sbyte.MaxValue);

    private string BaseUnits()
    {
        var parts = new List<string>();
        Add(parts, "m", Length);
        Add(parts, "kg", Mass);
        Add(parts, "s", Time);
        Add(parts, "A", Current);
        Add(parts, "K", Temperature);
        Add(parts, "dB", Level);
        Add(parts, "octave", Octave);
        Add(parts, "rad", Angle);
        Add(parts, "money", Money);
        return string.Join("·", parts);
    }

    private static void Add(List<string> parts, string unit, sbyte power)
    {
        if (power != 0)
            parts.Add(power == 1 ? unit : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{unit}^{power}"));
    }
}
