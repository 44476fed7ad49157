using FitCheck.Drawings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>What of the section is on the paper, and how large: one of the drawing office's scales.</summary>
internal sealed class SectionScale
{
    // At 96 units an inch the drawing is true to scale on paper.
    private const double UnitsPerMm = 96 / 25.4;
    private const double Widest = 230;
    private const double Tallest = 340;

    // Further behind the driver than this nothing is drawn: it could not touch.
    private const double Beyond = 45;

    public SectionScale(PositionDrawing drawing, SectionGeometry geometry)
    {
        HoleRadius = SectionGeometry.Known(drawing.HoleRadius);
        var radius =
            Math.Max(Math.Max(SectionGeometry.Known(drawing.FlangeRadius) ?? 0, SectionGeometry.Known(drawing.AdapterOuterRadius) ?? 0),
                HoleRadius ?? 0);
        if (radius <= 0)
            radius = 40;
        DashedHole = HoleRadius ?? (SectionGeometry.Known(drawing.FlangeRadius) is { } flange ? flange * 0.85 : radius * 0.85);
        Rear = geometry.Deepest?.Z ?? DashedHole * 0.8;
        FrontEnd = geometry.Foremost?.Z ?? -Math.Max(drawing.AdapterThickness, 2);

        var gap = SectionGeometry.Known(drawing.GrilleGap);
        Grille = gap is { } known ? -known : Math.Min(FrontEnd - (0.12 * radius), -6);
        GrilleKnown = gap is not null;
        // A place that no clearance asks a grille of may have none.
        GrilleShown = GrilleKnown || drawing.Clearances.Any(c => c is { Value: null, Kind: "front" });

        Drawn = [.. drawing.Obstructions.Where(o => double.IsFinite(o.Depth) && o.Depth <= Rear + Beyond)];
        TooFar = [.. drawing.Obstructions.Where(o => !(double.IsFinite(o.Depth) && o.Depth <= Rear + Beyond))];
        DashedDepth = Rear + (0.18 * radius);

        var deepest = Drawn.Count > 0 ? Math.Max(Rear, Drawn.Max(o => o.Depth)) : Rear;
        if (drawing.Clearances.Any(c => c is { Value: null, Kind: "back" or "glass" }))
            deepest = Math.Max(deepest, DashedDepth);
        HalfHeight = radius * 1.1;
        (Divisor, PerMm) = Choose(deepest - Math.Min(Grille, FrontEnd), 2 * HalfHeight);
        From = Math.Min(Grille, FrontEnd) - (10 / PerMm);
        To = deepest + (22 / PerMm);
    }

    public double? HoleRadius { get; }

    /// <summary>Where the hole is drawn, dashed when it is not known.</summary>
    public double DashedHole { get; }

    public double Rear { get; }

    public double FrontEnd { get; }

    public double Grille { get; }

    public bool GrilleKnown { get; }

    public bool GrilleShown { get; }

    /// <summary>Where an obstruction of unknown depth is drawn, dashed.</summary>
    public double DashedDepth { get; }

    public IReadOnlyList<DrawnObstruction> Drawn { get; }

    public IReadOnlyList<DrawnObstruction> TooFar { get; }

    public double HalfHeight { get; }

    /// <summary>First and last millimetre on the paper.</summary>
    public double From { get; }

    public double To { get; }

    public double PerMm { get; }

    /// <summary>2 stands for 1 : 2.</summary>
    public double Divisor { get; }

    /// <summary>Millimetres of the scale bar.</summary>
    public int Bar => Divisor switch { < 1 => 10, 1 => 20, < 5 => 50, _ => 100 };

    public string Name => Divisor < 1 ? $"{Figures.Bare(1 / Divisor, "1")} : 1" : $"1 : {Figures.Bare(Divisor, "1")}";

    private static (double Divisor, double PerMm) Choose(double width, double height)
    {
        foreach (var divisor in new[] { 0.5, 1, 2, 2.5, 5, 10, 20 })
        {
            var perMm = UnitsPerMm / divisor;
            if (width * perMm <= Widest && height * perMm <= Tallest)
                return (divisor, perMm);
        }
        return (50, UnitsPerMm / 50);
    }
}
