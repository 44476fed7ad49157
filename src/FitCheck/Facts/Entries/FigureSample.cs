using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>A figure of entries that are alike.</summary>
/// <param name="Figure">The word for it: `depth`, `price a piece`.</param>
/// <param name="Name">Entries that are alike: `165 mm woofer`.</param>
/// <param name="Unit">The unit in which the middle of the class is told; a currency for an amount.</param>
internal readonly record struct FigureClass(string Figure, string Name, string Unit)
{
    /// <summary>Levels are compared by difference, all else by ratio.</summary>
    public bool IsLevel => Unit == "dB";

    /// <summary>What is compared of a value: decibels, or the natural logarithm.</summary>
    public double Compared(double value) => IsLevel ? value : Math.Log(value);

    /// <summary>A value as a person reads it.</summary>
    public string Told(double value) => Physics.Quantities.Unit.Find(Unit) is { } unit
        ? QuantityText.Format(value, unit)
        : string.Create(CultureInfo.InvariantCulture, $"{value:0.00} {Unit}");
}

/// <summary>One figure of one entry, with the class of entries that it is compared with.</summary>
/// <param name="Within">What it is compared with.</param>
/// <param name="Name">The entry's name.</param>
/// <param name="At">Where it stands.</param>
/// <param name="Value">SI, decibels, or an amount.</param>
internal sealed record FigureSample(FigureClass Within, string Name, Location At, double Value)
{
    /// <summary>The unit in which it was written; null where that of the class is told.</summary>
    public Unit? WrittenIn { get; init; }

    /// <summary>The figure as it is told.</summary>
    public string Written => WrittenIn is { } unit ? QuantityText.Format(Value, unit) : Within.Told(Value);

    /// <summary>Every figure of an entry that its class may be asked about.</summary>
    public static IEnumerable<FigureSample> Of(Entry entry) =>
        All(entry).Where(s => s.Within.IsLevel || (s.Value > 0 && double.IsFinite(s.Value)));

    private static IEnumerable<FigureSample> All(Entry entry)
    {
        if (entry is Part { HasPrice: true } part && ClassOf(part) is { } own)
        {
            var each = (double)part.Price.Value.Amount / Math.Max(1, part.Pack);
            yield return new FigureSample(new("price a piece", $"{own} in {part.Price.Value.Currency}", part.Price.Value.Currency),
                part.Name, part.Price.At, each);
        }
        var figures = entry switch
        {
            Driver d => OfDriver(d),
            Adapter a => OfAdapter(a),
            Vehicle v =>
            v.Positions.SelectMany(OfPosition).DistinctBy(s => s.At),
            _ => []
        };
        foreach (var figure in figures)
            yield return figure;
    }

    private static IEnumerable<FigureSample> OfDriver(Driver driver)
    {
        if (ClassOf(driver) is not { } own)
            yield break;
        var (p, d) = (driver.Parameters, driver.Dimensions);
        foreach (var (what, figure) in new[]
        {
            ("fs", p?.Fs), ("Vas", p?.Vas), ("Mms", p?.Mms), ("Sd", p?.Sd), ("cutout", d?.Cutout), ("flange", d?.Flange),
            ("depth", d?.Depth),
            ("magnet diameter", d?.MagnetDiameter), ("magnet height", d?.MagnetHeight), ("mass", driver.Mass),
        })
        {
            if (figure is not null)
                yield return Sample(what, own, driver.Name, figure);
        }
        if (driver is { OneWattLevel: { } level, Sensitivity: { } stated })
            yield return new FigureSample(new("sensitivity", own, "dB"), driver.Name, stated.At, level);
    }

    private static IEnumerable<FigureSample> OfAdapter(Adapter adapter) => Several("spacer", adapter.Name,
        ("thickness of the spacer", adapter.Thickness), ("opening of the spacer", adapter.Opening),
        ("outer diameter of the spacer", adapter.Outer),
        ("screw circle of the spacer", adapter.VehicleHoles?.Circle));

    private static IEnumerable<FigureSample> OfPosition(Position position) => Several($"place for a {position.Role}", position.Name,
        ("cutout of the panel", position.Mounting.Cutout), ("depth behind the panel", position.Mounting.Depth),
        ("gap to the grille", position.Mounting.GrilleGap),
        ("recess of the panel", position.Mounting.Recess), ("screw circle of the panel", position.Mounting.Holes?.Circle));

    private static IEnumerable<FigureSample> Several(string own, string name, params (string What, Figure? Figure)[] figures) =>
        figures.Where(f => f.Figure is not null).Select(f => Sample(f.What, own, name, f.Figure!));

    private static FigureSample Sample(string what, string own, string name, Figure figure) =>
        new(new FigureClass(what, own, Unit.DisplayFor(figure.Quantity.Dimension)!.Symbol), name, figure.At,
            figure.Si)
        { WrittenIn = figure.Quantity.Unit };

    /// <summary>Sizes of different spelling, 165 mm and 6 1/2 in, are one class.</summary>
    private static string? ClassOf(Part part) => part switch
    {
        Driver { Size: { } size } driver =>
            string.Create(CultureInfo.InvariantCulture, $"{Math.Round(size.Si * 1000)} mm {(driver.Oval ? "oval " : "")}{driver.Type}"),
        Driver => null,
        WiringPart wiring => wiring.Type,
        Sundry sundry => sundry.Type,
        Amplifier amplifier => $"{amplifier.Channels}-channel amplifier",
        _ => part.Kind,
    };
}
