using FitCheck.Drawings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The names above the section, one a row, each on a thin leader to its part. The leftmost part has the highest row, so that no leader
/// crosses a name; a name without room to its right goes above all others and reads leftwards.
/// </summary>
internal sealed class SectionLabels
{
    private readonly List<(string Text, double X, double TextX, Anchor Anchor)> _rows = [];

    public int Rows => _rows.Count;

    public static SectionLabels Of(PositionDrawing drawing, SectionGeometry geometry, SectionScale scale, SectionPaper paper)
    {
        var labels = new List<(string Text, double X)> { (PanelName(drawing, scale), paper.X(0) + 1) };
        if (scale.GrilleShown)
            labels.Add((scale.GrilleKnown ? "grille" : "grille: " + Sentences.Unknown, paper.X(scale.Grille)));
        if (geometry.Wedges.Count > 0)
            labels.Add((drawing.TiltDeg == 0 ? "spacer" : $"spacer, tilted {Figures.Show(drawing.TiltDeg, "deg")}",
                paper.X(-drawing.AdapterThickness / 2)));
        foreach (var obstruction in scale.Drawn)
            labels.Add((obstruction.Moving ? $"{obstruction.Name}, down" : obstruction.Name, paper.X(obstruction.Depth) + 2));
        if (DashedName(drawing) is { } dashed)
            labels.Add((dashed, paper.X(scale.DashedDepth)));

        var result = new SectionLabels();
        foreach (var (text, x) in labels.OrderByDescending(l => l.X).Where(l => !HasRoom(l)))
            result._rows.Add(Leftwards(text, x));
        foreach (var (text, x) in labels.OrderBy(l => l.X).Where(HasRoom))
            result._rows.Add((text, x, x + 4, Anchor.Start));
        return result;
    }

    public void Draw(SvgWriter svg, SectionPaper paper, double rowHeight)
    {
        for (var i = 0; i < _rows.Count; i++)
            svg.Line(new(_rows[i].X, (i * rowHeight) + 5), new(_rows[i].X, paper.Top + 4), "thin");
        for (var i = 0; i < _rows.Count; i++)
        {
            var (text, _, x, anchor) = _rows[i];
            svg.Text(new(x, (i * rowHeight) + 12), text, "label", anchor);
        }
        svg.Text(new(paper.FirstX - 6, paper.Top + 14), "cabin", "label soft", Anchor.End);
        svg.Text(new(paper.LastX + 2, paper.Top + 14), "cavity", "label soft");
    }

    /// <summary>What stands behind the driver when its depth is not known.</summary>
    public static string? DashedName(PositionDrawing drawing)
    {
        foreach (var clearance in drawing.Clearances)
        {
            if (clearance is { Value: null, Kind: "glass" } && !drawing.Obstructions.Any(o => o.Moving))
                return "glass, down: " + Sentences.Unknown;
            if (clearance is { Value: null, Kind: "back" } && !drawing.Obstructions.Any(o => !o.Moving))
                return "depth: " + Sentences.Unknown;
        }
        return null;
    }

    private static string PanelName(PositionDrawing drawing, SectionScale scale)
    {
        var name = drawing.CupName is null ? "panel" : "cup";
        return scale.HoleRadius is null ? $"hole in the {name}: {Sentences.Unknown}" : name;
    }

    // A name that has no room on the left either covers the top of its leader.
    private static (string Text, double X, double TextX, Anchor Anchor) Leftwards(string name, double x)
    {
        var text = Lettering.Cut(name, SectionPaper.Width - 4, Lettering.Label);
        return (text, x, Math.Max(x - 4, Lettering.WidthOf(text, Lettering.Label) + 2), Anchor.End);
    }

    private static bool HasRoom((string Text, double X) label) =>
        label.X + 4 + Lettering.WidthOf(label.Text, Lettering.Label) <= SectionPaper.Width;
}
