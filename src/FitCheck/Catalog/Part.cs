using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>What every entry of the catalog has.</summary>
public abstract record Entry
{
    private protected Entry(Fields f)
    {
        Id = f.Word("id");
        Kind = f.Word("kind");
        Name = f.Text("name")?.Value ?? Id;
        Source = f.Word("source");
        Provenance = f.Provenance;
        At = f.Text("id")?.At ?? f.At;
    }

    /// <summary>The id by which others name it, in lower case with hyphens.</summary>
    public string Id { get; }
    /// <summary>`driver`, `vehicle`, `component-set` and so on.</summary>
    public string Kind { get; }
    /// <summary>What a person calls it; the id when no name is written.</summary>
    public string Name { get; }
    /// <summary>Where the figures come from, in words.</summary>
    public string Source { get; }
    /// <summary>How far its figures are trusted, where a figure does not say otherwise.</summary>
    public Provenance Provenance { get; }
    /// <summary>Where its id is written.</summary>
    public Location At { get; }
}

/// <summary>What every part that can be bought has.</summary>
public abstract record Part : Entry
{
    private protected Part(Fields f) : base(f)
    {
        Pack = f.Count("pack") ?? 1;
        HasPrice = f.Map["price"] is not null;
        Price = f.Money("price") ?? new Located<Money>(new Money(0, "EUR"), f.At);
        Availability = f.Text("availability") ?? new Located<string>("current", f.At);
        IsOwned = f.Truth("owned") == true;
        Articles = f.Texts("articles");
    }

    /// <summary>Pieces in a pack; 1 when nothing is written.</summary>
    public int Pack { get; }
    /// <summary>False when no price is written; it counts as nothing then.</summary>
    public bool HasPrice { get; }
    /// <summary>Price of a pack.</summary>
    public Located<Money> Price { get; }
    /// <summary>`current`, `to-order` or `discontinued`, and where it is written; `current` when nothing is.</summary>
    public Located<string> Availability { get; }
    /// <summary>True for what is there already: nobody buys it.</summary>
    internal bool IsOwned { get; }
    /// <summary>The article numbers under which sellers list it.</summary>
    internal IReadOnlyList<Located<string>> Articles { get; }
}

/// <summary>Something that comes in a box or a kit.</summary>
/// <param name="Part">The id of the part, and where it is named.</param>
/// <param name="Quantity">Pieces; 1 when nothing is written.</param>
public sealed record Contained(Located<string> Part, int Quantity)
{
    internal static IReadOnlyList<Contained> Read(Fields f) => [.. f.Each("contains")
        .Where(c => c.Text("part") is not null).Select(c => new Contained(c.Text("part")!, c.Count("quantity") ?? 1))];
}

/// <summary>A vehicle, and the positions there, in which a part fits. No positions: all of them.</summary>
internal sealed record Fit(Located<string> Vehicle, IReadOnlyList<Located<string>> Positions)
{
    internal static IReadOnlyList<Fit> Read(Fields f) => [.. f.Each("fits")
        .Where(x => x.Text("vehicle") is not null).Select(x => new Fit(x.Text("vehicle")!, x.Texts("positions")))];

    /// <summary>The word for every vehicle.</summary>
    internal const string Any = "any";

    /// <summary>True when `any` vehicle is written.</summary>
    internal static bool IsAny(Fields f) => f.Word("fits") == Any;

    /// <summary>Whether it is made for this place; null where nobody wrote what it fits.</summary>
    public static bool? IsFor(IReadOnlyList<Fit> fits, bool isUniversal, string vehicle, string position) =>
        fits.Count == 0 && !isUniversal ? null : Covers(fits, vehicle, position);

    /// <summary>True when it may go there: made for this place, or for none in particular as far as anybody knows.</summary>
    public static bool Covers(IReadOnlyList<Fit> fits, string vehicle, string position) =>
        fits.Count == 0
        || fits.Any(f => f.Vehicle.Value == vehicle && (f.Positions.Count == 0 || f.Positions.Any(p => p.Value == position)));
}

/// <summary>How wires are joined: tab widths, a plug family, or bare leads.</summary>
/// <param name="Type">`tabs`, `plug`, `leads` or `screws`.</param>
/// <param name="Positive">Width of the plus tab, metres; null when not recorded.</param>
/// <param name="Negative">Width of the minus tab, metres; null when not recorded.</param>
/// <param name="Family">The family of the plug, and where it is named; null when not recorded.</param>
/// <param name="Polarity">`keyed` when the joint keeps it, `marked` when a sign shows it, `unmarked`; null when not recorded.</param>
/// <param name="At">Where it is written.</param>
public sealed record Terminals(string Type, Figure? Positive, Figure? Negative, Located<string>? Family, string? Polarity, Location At)
{
    internal static Terminals? Read(Fields? f) => f is null ? null
        : new(f.Word("type"), f.Length("positive"), f.Length("negative"), f.Text("family"), f.Text("polarity")?.Value, f.At)
        {
            Length = f.Length("length"),
        };

    // Tab widths are told apart to half a millimetre: 2.8, 4.8 and 6.3 mm (IEC 61210).
    private const double TabTolerance = 0.5e-3;

    /// <summary>Length of leads that are fixed to the part, metres; null when not recorded.</summary>
    public Figure? Length { get; init; }

    /// <summary>
    /// True when this end of a harness takes a driver's terminals: the same plug, tabs of the same widths, or leads that are crimped or
    /// screwed on.
    /// </summary>
    public bool Takes(Terminals driver) => (Type, driver.Type) switch
    {
        ("plug", "plug") => Family?.Value == driver.Family?.Value,
        ("tabs", "tabs") => Same(Positive, driver.Positive) && Same(Negative, driver.Negative),
        ("leads", "leads" or "screws") => true,
        _ => false,
    };

    private static bool Same(Figure? a, Figure? b) => a is not null && b is not null && Math.Abs(a.Si - b.Si) < TabTolerance;
}

/// <summary>One element of a ladder as written; R, L and C are in series with each other.</summary>
/// <param name="Shunt">True across the wire, false in line with it.</param>
/// <param name="Resistance">Ohm; null when it has none.</param>
/// <param name="Inductance">Henry; null when it has none.</param>
/// <param name="Capacitance">Farads; null when it has none.</param>
public sealed record LadderPart(bool Shunt, Figure? Resistance, Figure? Inductance, Figure? Capacitance)
{
    internal static IReadOnlyList<LadderPart> Read(Fields f, string key) => [.. f.Each(key).Select(Read)];

    // Without a figure it would pass for a plain wire.
    private static LadderPart Read(Fields e)
    {
        if (e.Map["resistance"] is null && e.Map["inductance"] is null && e.Map["capacitance"] is null)
            e.Problems.Error(e.At, "a part of a network needs `resistance`, `inductance` or `capacitance`", ProblemKind.WrongShape);
        return new LadderPart(e.Word("place") == "shunt", e.Figure("resistance", Dimension.Ohm), e.Figure("inductance", Dimension.Henry),
            e.Figure("capacitance", Dimension.Farad));
    }
}

/// <summary>One stated power rating per channel.</summary>
internal sealed record Rating(Figure Power, Figure Load, Figure? Supply, Figure? Distortion, bool Peak, bool Bridged, bool? AllChannels)
{
    internal static IReadOnlyList<Rating> Read(Fields f) => [.. f.Each("ratings").Select(ReadOne).OfType<Rating>()];

    private static Rating? ReadOne(Fields f) =>
        f.Figure("power", Dimension.Watt) is { } power && f.Figure("load", Dimension.Ohm) is { } load
        ? new Rating(power, load, f.Figure("supply", Dimension.Volt), f.Figure("distortion", Dimension.One),
            f.Word("basis") == "peak", f.Truth("bridged") ?? false, f.Truth("all_channels"))
        : null;
}

/// <summary>A filter setting: corner in Hz, slope in dB per octave.</summary>
internal sealed record FilterSetting(Figure Corner, int SlopePerOctave)
{
    /// <summary>`80 Hz at 12 dB/octave`.</summary>
    public string Text =>
        $"{QuantityText.Format(Corner.Si, Dimension.Hertz)} at {QuantityText.Format(SlopePerOctave, Dimension.Slope)}";

    internal static FilterSetting? Read(Fields f, string key) =>
        f.Rated(key, Dimension.Hertz) is ({ } corner, var slope) ? new(corner, Slope(slope) ?? 0) : null;

    internal static int? Slope(string? text) =>
        text is not null && QuantityText.Parse(text) is { } q && q.Dimension == Dimension.Slope ? (int)Math.Round(q.Si) : null;
}
