using System.Text.RegularExpressions;
using FitCheck.Physics.Quantities;

namespace FitCheck.Fixes;

/// <summary>
/// Spells a quantity as the catalog does, where what was written has one reading: `4 Ohms` is `4 ohm`, `90dB @1W/1m` is `90 dB @ 1 W/1 m`.
/// The digits stay as they are. What may be read in two ways is left alone: a decimal comma, a dollar, an `RMS`.
/// </summary>
internal static partial class UnitSpelling
{
    // Spellings met on sheets, by the unit that they mean. A letter's case is forgiven only where no other unit of the same dimension has
    // it.
    private static readonly Dictionary<string, string> Variants = Table(
        ("mm", "millimetre millimetres millimeter millimeters Mm MM"), ("cm", "centimetre centimetres centimeter centimeters Cm CM"),
        ("m", "metre metres meter meters"),
        ("in", "inch inches in. \" ″ In IN Inch Inches"), ("cm2", "cm² cm^2 sqcm cm²."), ("mm2", "mm² mm^2 sqmm"),
        ("L", "l ltr litre litres liter liters Litre Litres Liter Liters"),
        ("cm3", "cm³ cm^3 cc ccm"), ("g", "gram grams gramme grammes"), ("kg", "Kg KG kilogram kilograms"), ("Hz", "hz HZ hertz Hertz"),
        ("kHz", "khz Khz KHz KHZ kilohertz"),
        ("A", "amp amps Amp Amps ampere amperes Ampere Amperes"), ("V", "volt volts Volt Volts v"), ("W", "watt watts Watt Watts w"),
        ("kW", "kw KW kilowatt kilowatts"),
        ("ohm", "ohms Ohm Ohms OHM OHMS Ω \u2126"), ("mohm", "mΩ m\u2126 milliohm milliohms mOhm"),
        ("kohm", "kΩ k\u2126 kOhm kOhms kiloohm"), ("uF", "\u00B5F \u03BCF uf \u00B5f \u03BCf microfarad microfarads"),
        ("nF", "nf nanofarad"), ("pF", "pf picofarad"), ("uH", "\u00B5H \u03BCH uh microhenry"), ("mH", "mh millihenry millihenries"),
        ("um/N", "\u00B5m/N \u03BCm/N"),
        ("T m", "Tm T·m T*m T.m"), ("dB", "db DB Db decibel decibels"), ("deg", "° degree degrees"), ("degC", "°C ℃"), ("%", "percent"),
        ("AWG", "awg Awg"));

    private static readonly Dictionary<string, string[]> UnitsOf = new(StringComparer.Ordinal)
    {
        ["length"] = ["mm", "cm", "m", "in"],
        ["coordinate"] = ["mm", "cm", "m", "in"],
        ["size"] = ["mm", "cm", "m", "in"],
        ["area"] = ["cm2", "mm2"],
        ["gauge"] = ["AWG", "mm2"],
        ["resistance"] = ["ohm", "mohm", "kohm"],
        ["power"] = ["W", "kW"],
        ["voltage"] = ["V", "mV"],
        ["current"] = ["A", "mA"],
        ["frequency"] = ["Hz", "kHz"],
        ["level"] = ["dB"],
        ["capacitance"] = ["pF", "nF", "uF", "mF"],
        ["inductance"] = ["uH", "mH"],
        ["mass"] = ["g", "kg"],
        ["volume"] = ["L", "cm3"],
        ["compliance"] = ["mm/N", "um/N"],
        ["force-factor"] = ["T m", "N/A"],
        ["angle"] = ["deg"],
        ["percentage"] = ["%"],
        ["temperature"] = ["degC"],
    };

    /// <summary>The catalog's spelling of a value of a kind that the schemas define; null when there is none, or more than one.</summary>
    /// <param name="kind">The name of the schema's definition: `length`, `sensitivity`, `money`.</param>
    /// <param name="text">As it is written.</param>
    public static string? Of(string kind, string text)
    {
        if (text.Length > Longest)
            return null;
        var plain = Spaces().Replace(text, " ").Trim().Replace('\u2212', '-');
        var spelled = kind switch
        {
            "sensitivity" => Level(plain),
            "filter" or "crossover-limit" => Corner(plain),
            "money" => Money(plain),
            _ => UnitsOf.TryGetValue(kind, out var units) ? Plain(plain, units) : null,
        };
        // What could be read before must mean the same afterwards.
        return spelled is not null && (QuantityText.Parse(text) is not { } before || QuantityText.Parse(spelled) == before) ? spelled
            : null;
    }

    private static string? Plain(string text, string[] units)
    {
        if (Quantity().Match(text) is not { Success: true } m || UnitIn(m.Groups["unit"].Value, units) is not { } unit)
            return null;
        var spelled = $"{Number(m.Groups["number"].Value)} {unit}";
        if (m.Groups["sign"].Success)
        {
            if (UnitIn(m.Groups["unit2"].Value, units) is not { } half)
                return null;
            spelled += $" {(m.Groups["sign"].Value == "+-" ? "±" : m.Groups["sign"].Value)} {Number(m.Groups["number2"].Value)} {half}";
        }
        return m.Groups["given"].Success ? $"{spelled} {m.Groups["given"].Value}" : spelled;
    }

    // Without a number a watt is one watt, as in dB/W/m; 2.83 V is always written out.
    private static string? Level(string text)
    {
        if (Sensitivity().Match(text) is not { Success: true } m)
            return null;
        var volts = m.Groups["volts"].Success;
        return $"{m.Groups["number"].Value} dB @ {(volts ? "2.83 V" : "1 W")}/1 m"
            + $"{(m.Groups["given"].Success ? " " + m.Groups["given"].Value : "")}";
    }

    private static string? Corner(string text)
    {
        if (Filter().Match(text) is not { Success: true } m || UnitIn(m.Groups["unit"].Value, ["Hz", "kHz"]) is not { } unit)
            return null;
        var slope = m.Groups["slope"].Success ? $" @ {m.Groups["slope"].Value} dB/octave" : "";
        return $"{m.Groups["number"].Value} {unit}{slope}{(m.Groups["given"].Success ? " " + m.Groups["given"].Value : "")}";
    }

    private static string? Money(string text)
    {
        if (Amount().Match(text) is not { Success: true } m || m.Groups["before"].Success == m.Groups["after"].Success)
            return null;
        var currency = m.Groups["before"].Success || m.Groups["after"].Value == "€" ? "EUR" : m.Groups["after"].Value.ToUpperInvariant();
        return $"{m.Groups["number"].Value} {currency}";
    }

    // 2-9/16 is how fractions of an inch stand in American catalogs.
    private static string Number(string number) => number.Length > 1 ? number[0] + number[1..].Replace('-', ' ') : number;

    private static string? UnitIn(string written, string[] units)
    {
        var unit = Variants.GetValueOrDefault(written, written);
        return Array.IndexOf(units, unit) >= 0 ? unit : null;
    }

    private static Dictionary<string, string> Table(params (string Unit, string Spellings)[] rows) =>
        rows.SelectMany(r => r.Spellings.Split(' ').Select(s => (s, r.Unit))).DistinctBy(p => p.s)
            .ToDictionary(p => p.s, p => p.Unit, StringComparer.Ordinal);

    // No quantity is longer, so no expression below has much to try; the limits in milliseconds are for a machine that does other things
    // meanwhile.
    private const int Longest = 100;
    private const int Patience = 10_000;

    private const string Numbers = @"\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?";
    private const string Given = @"(?: ?(?<given>\((?:measured|datasheet|estimated)\)))?";

    [GeneratedRegex(@"[ \u00A0\u2009\u202F]+", RegexOptions.None, Patience)]
    private static partial Regex Spaces();

    [GeneratedRegex($@"^(?<number>-?(?:{Numbers})) ?(?<unit>[^\d ±+(/-][^±+(]*?)"
        + $@"(?: ?(?<sign>±|\+/-|\+-) ?(?<number2>{Numbers}) ?(?<unit2>[^\d ±+(/-][^±+(]*?))?{Given}$",
        RegexOptions.ExplicitCapture, Patience)]
    private static partial Regex Quantity();

    [GeneratedRegex($@"^(?<number>\d+(\.\d+)?) ?(dB|db|DB) ?(SPL )?(@|/|at |\()? ?"
        + $@"((1 ?)?[Ww]|(?<volts>2\.83 ?[Vv])) ?(/|@|,) ?(1 ?)?m\)?{Given}$", RegexOptions.ExplicitCapture, Patience)]
    private static partial Regex Sensitivity();

    [GeneratedRegex($@"^(?<number>\d+(\.\d+)?) ?(?<unit>[A-Za-z]+)"
        + $@"( ?(@|,|at ) ?(?<slope>6|12|18|24|36|48) ?(dB|db|DB) ?(/|per) ?(oct|Oct|octave|Octave)\.?)?{Given}$",
        RegexOptions.ExplicitCapture, Patience)]
    private static partial Regex Filter();

    [GeneratedRegex(@"^(?<before>€ ?)?(?<number>-?\d+(\.\d{1,2})?) ?(?<after>€|[A-Za-z]{3})?$", RegexOptions.ExplicitCapture, Patience)]
    private static partial Regex Amount();
}
