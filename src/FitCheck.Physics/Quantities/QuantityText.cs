using System.Globalization;

namespace FitCheck.Physics.Quantities;

/// <summary>Reads and writes quantities as people write them: `65 mm`, `2 9/16 in ± 1/16 in (measured)`, `14 AWG`.</summary>
internal static class QuantityText
{
    /// <summary>Reads a quantity. Null when the text is no number with a known unit; never throws.</summary>
    public static Quantity? Parse(string text)
    {
        var rest = text.Trim();
        var provenance = TakeProvenance(ref rest);
        if (Gauge(rest) is { } gauge)
            return gauge with { Provenance = provenance };

        string? toleranceText = null;
        var sign = rest.IndexOf('±', StringComparison.Ordinal);
        var length = 1;
        if (sign < 0)
        {
            sign = rest.IndexOf("+/-", StringComparison.Ordinal);
            length = 3;
        }
        if (sign >= 0)
        {
            toleranceText = rest[(sign + length)..].Trim();
            rest = rest[..sign].Trim();
        }
        if (NumberAndUnit(rest) is not { } main)
            return null;
        double? tolerance = null;
        if (toleranceText is not null)
        {
            if (NumberAndUnit(toleranceText) is not { } half || half.Unit.Dimension != main.Unit.Dimension || half.Number < 0)
                return null;
            tolerance = half.Unit.ToSi(half.Number);
        }
        return new Quantity(main.Unit.ToSi(main.Number), main.Unit, tolerance, provenance);
    }

    /// <summary>The value in a unit, rounded to what the unit deserves, with trailing zeros left off: `65 mm`, `71.2 mm`.</summary>
    public static string Format(double si, Unit unit)
    {
        var shown = Readable(unit, si);
        return !Lengths.Concerns(shown) ? Plain(si, shown)
            : Lengths.Told == LengthUnits.Inch ? Lengths.InInches(si) : $"{Plain(si, shown)} ({Lengths.InInches(si)})";
    }

    /// <summary>The unit itself; from 10,000 Hz on kilohertz, for nobody reads five digits of a frequency.</summary>
    public static Unit Readable(Unit unit, double si) => unit.Symbol == "Hz" && Math.Abs(si) >= 10_000 ? Unit.Find("kHz")! : unit;

    /// <summary>
    /// The value, given in SI, in the unit that people read for this dimension, rounded to what the unit deserves: `71.2 mm`, `3 m`,
    /// `12 kHz`.
    /// </summary>
    public static string Format(double si, Dimension dimension) =>
        UnitFor(si, dimension) is { } unit ? Format(si, unit) : $"{Number(si, 3)} {dimension}";

    private static Unit? UnitFor(double si, Dimension dimension) =>
        dimension == Dimension.Hertz ? Readable(Unit.Find("Hz")!, si)
        // Areas of cones, not cross-sections of wires.
        : dimension == Dimension.SquareMetre && Math.Abs(si) >= 1e-3 ? Unit.Find("cm2")
        // Ways of cables, not sizes of parts.
        : dimension == Dimension.Metre && Math.Abs(si) >= 2 ? Unit.Find("m")
        : Unit.DisplayFor(dimension);

    /// <summary>
    /// As <see cref="Format(double, Dimension)"/>, with which it shares unit and digits, but rounded to the side that keeps a limit: up for
    /// the least that will do, down for the most. What is told as a reading that passes does pass.
    /// </summary>
    public static string FormatLimit(double si, Dimension dimension, bool orMore) => UnitFor(si, dimension) is { } unit
        ? FormatLimit(si, unit, orMore) : $"{Number(Rounded(si, 3, orMore), 3)} {dimension}";

    /// <inheritdoc cref="FormatLimit(double, Dimension, bool)"/>
    public static string FormatLimit(double si, Unit unit, bool orMore)
    {
        if (!Lengths.Concerns(unit))
            return Limit(si, unit, orMore);
        var decimals = Lengths.Decimals(si / Lengths.Inch);
        var inches = $"{Number(Rounded(si / Lengths.Inch, decimals, orMore), decimals)} in";
        return Lengths.Told == LengthUnits.Inch ? inches : $"{Limit(si, unit, orMore)} ({inches})";
    }

    private static string Limit(double si, Unit unit, bool orMore) =>
        $"{Number(Rounded(unit.FromSi(si), unit.Decimals, orMore), unit.Decimals)}{Spaced(unit)}";

    private static string Plain(double si, Unit unit) => $"{Number(unit.FromSi(si), unit.Decimals)}{Spaced(unit)}";

    private static double Rounded(double number, int decimals, bool up)
    {
        var steps = number * Math.Pow(10, decimals);
        // A part in a million of a step forgives the arithmetic, not the limit.
        return (up ? Math.Ceiling(steps - 1e-6) : Math.Floor(steps + 1e-6)) / Math.Pow(10, decimals);
    }

    /// <summary>A number with at most so many decimals, invariant, never `-0`.</summary>
    public static string Number(double value, int decimals)
    {
        // Half away from zero, in decimal, so that 2.25 shows as 2.3 on every machine.
        var rounded = Math.Abs(value) < 1e15
            ? (double)Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero)
            : value;
        if (rounded == 0)
            rounded = 0;
        return rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    /// <summary>A plain or fractional number: `65`, `2.56`, `9/16`, `2 9/16`. Null when it is none.</summary>
    public static double? ParseNumber(string text)
    {
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var negative = parts.Length > 0 && parts[0].StartsWith('-');
        double? number = parts.Length switch
        {
            1 when parts[0].Contains('/', StringComparison.Ordinal) => Fraction(parts[0]),
            1 => Plain(parts[0]),
            2 when Plain(parts[0]) is { } whole && Fraction(parts[1]) is { } fraction => negative ? whole - fraction : whole + fraction,
            _ => null,
        };
        // -0 is 0: the processor's negative zero counts as negative in some comparisons and not in others.
        return number + 0.0;
    }

    private static string Spaced(Unit unit) => unit.Symbol == "1" ? "" : " " + unit.Symbol;

    private static Provenance? TakeProvenance(ref string text)
    {
        if (!text.EndsWith(')'))
            return null;
        foreach (var (word, value) in new[] { ("(measured)", Provenance.Measured), ("(datasheet)", Provenance.Datasheet),
            ("(estimated)", Provenance.Estimated) })
        {
            if (!text.EndsWith(word, StringComparison.Ordinal))
                continue;
            text = text[..^word.Length].TrimEnd();
            return value;
        }
        return null;
    }

    private static (double Number, Unit Unit)? NumberAndUnit(string text)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or '/' or '-' or ' '))
            end++;
        if (ParseNumber(text[..end]) is not { } number || Unit.Find(text[end..].Trim()) is not { } unit)
            return null;
        return (number, unit);
    }

    private static Quantity? Gauge(string text)
    {
        if (!text.EndsWith("AWG", StringComparison.Ordinal))
            return null;
        var size = text[..^3].Trim();
        var zeros = size.EndsWith("/0", StringComparison.Ordinal);
        if (!int.TryParse(zeros ? size[..^2] : size, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > 40)
            return null;
        return new Quantity(Physics.Quantities.WireGauge.AreaOf(zeros ? 1 - number : number), Unit.Find("mm2")!);
    }

    private static double? Plain(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value) ? value : null;

    private static double? Fraction(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && Plain(text[..slash]) is { } top && Plain(text[(slash + 1)..]) is { } bottom && bottom > 0 ? top / bottom : null;
    }
}
