using FitCheck.Drawings;
using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The cross-section of one position, true to scale: cabin on the left, cavity on the right. Thick lines are edges, thin ones dimensions,
/// chain-dotted ones axes, dashed ones what is not known.
/// </summary>
internal static class SectionDrawing
{
    private const double LabelRow = 15;

    public static SafeHtml Draw(string id, PositionDrawing drawing)
    {
        drawing = drawing with { Clearances = [.. drawing.Clearances.Select(c => c with { Value = SectionGeometry.Known(c.Value) })] };
        var geometry = new SectionGeometry(drawing);
        var scale = new SectionScale(drawing, geometry);
        var probe = new SectionPaper(scale, 0);
        var labels = SectionLabels.Of(drawing, geometry, scale, probe);
        var paper = new SectionPaper(scale, (labels.Rows * LabelRow) + 14);
        var dimensions = SectionDimensions.Of(drawing, geometry, scale, paper);
        var legend = SectionLegend.Of(drawing, geometry, scale);
        var foot = paper.Bottom + dimensions.Height + 8;

        using var svg = new SvgWriter(id, "drawing", SectionPaper.Width, foot + legend.Height, SectionLegend.Title(drawing),
            SectionLegend.Sentence(drawing));
        svg.Hatch("hatch", 6, "hatch");
        svg.Hatch("hatch-fine", 4, "hatch", rising: false);
        DrawObstructions(svg, scale, paper);
        if (SectionLabels.DashedName(drawing) is not null)
            svg.Line(new(paper.X(scale.DashedDepth), paper.Top), new(paper.X(scale.DashedDepth), paper.Bottom), "thin dashed");
        DrawPanel(svg, drawing, scale, paper);
        foreach (var wedge in geometry.Wedges)
            svg.Shape(paper.At(wedge), "edge", fill: svg.Fill("hatch-fine"));
        DrawDriver(svg, drawing, geometry, scale, paper);
        DrawGrille(svg, scale, paper);
        DrawAxes(svg, drawing, geometry, scale, paper);
        labels.Draw(svg, paper, LabelRow);
        dimensions.Draw(svg);
        legend.Draw(svg, foot);
        return svg.Finish();
    }

    private static void DrawObstructions(SvgWriter svg, SectionScale scale, SectionPaper paper)
    {
        foreach (var obstruction in scale.Drawn)
        {
            var x = paper.X(obstruction.Depth);
            var from = Math.Clamp(obstruction.FromRadius, 0, scale.HalfHeight);
            if (from == 0)
            {
                DrawSurface(svg, obstruction.Moving, x, paper.Top, paper.Bottom);
            }
            else
            {
                DrawSurface(svg, obstruction.Moving, x, paper.Top, paper.Y(from));
                DrawSurface(svg, obstruction.Moving, x, paper.Y(-from), paper.Bottom);
            }
        }
    }

    // Glass is a double line with a sheen; anything fixed is an edge with hatching behind it.
    private static void DrawSurface(SvgWriter svg, bool glass, double x, double top, double bottom)
    {
        if (glass)
        {
            svg.Box(x, top, 5, bottom - top, "glass");
            svg.Line(new(x, top), new(x, bottom), "edge");
            svg.Line(new(x + 5, top), new(x + 5, bottom), "edge");
            return;
        }
        svg.Box(x, top, 11, bottom - top, "no-line", svg.Fill("hatch"));
        svg.Line(new(x, top), new(x, bottom), "edge");
        svg.Line(new(x, top), new(x + 11, top), "thin");
        svg.Line(new(x, bottom), new(x + 11, bottom), "thin");
    }

    // Thin sheet is drawn solid, as sections of sheet are; thick board is hatched.
    private static void DrawPanel(SvgWriter svg, PositionDrawing drawing, SectionScale scale, SectionPaper paper)
    {
        var thickness = SectionGeometry.Known(drawing.PanelThickness);
        var width = Math.Max(2.4, (thickness ?? 1) * scale.PerMm);
        var known = thickness is not null && scale.HoleRadius is not null;
        var style = !known ? "edge dashed" : width < 7 ? "edge solid" : "edge";
        var fill = known && width >= 7 ? svg.Fill("hatch") : null;
        var hole = scale.DashedHole;
        svg.Box(paper.X(0), paper.Top, width, paper.Y(hole) - paper.Top, style, fill);
        svg.Box(paper.X(0), paper.Y(-hole), width, paper.Bottom - paper.Y(-hole), style, fill);
    }

    private static void DrawDriver(SvgWriter svg, PositionDrawing drawing, SectionGeometry geometry, SectionScale scale, SectionPaper paper)
    {
        if (geometry.Body.Count > 0)
        {
            svg.Shape(paper.At(geometry.Body), drawing.BodyIsAssumed ? "edge body assumed" : "edge body");
        }
        else
        {
            Mm[] guess = [geometry.Place(0, scale.DashedHole * 0.9), geometry.Place(scale.Rear, scale.DashedHole * 0.5),
                geometry.Place(scale.Rear, -scale.DashedHole * 0.5), geometry.Place(0, -scale.DashedHole * 0.9)];
            svg.Shape(paper.At(guess), "edge dashed");
        }
        if (geometry.Travel.Count > 0)
            svg.Shape(paper.At(geometry.Travel), "thin dashed", closed: false);
        if (geometry.Front.Count > 0)
            svg.Shape(paper.At(geometry.Front), "thin front");
        if (geometry.Flange.Count > 0)
            svg.Shape(paper.At(geometry.Flange), "edge flange");
    }

    private static void DrawGrille(SvgWriter svg, SectionScale scale, SectionPaper paper)
    {
        if (!scale.GrilleShown)
            return;
        var x = paper.X(scale.Grille);
        svg.Line(new(x, paper.Top), new(x, paper.Bottom), scale.GrilleKnown ? "grille" : "thin dashed");
        if (scale.GrilleKnown)
            svg.Line(new(x - 3, paper.Top), new(x - 3, paper.Bottom), "thin");
    }

    private static void DrawAxes(SvgWriter svg, PositionDrawing drawing, SectionGeometry geometry, SectionScale scale, SectionPaper paper)
    {
        var (from, to) = (scale.From - (6 / scale.PerMm), scale.To - (6 / scale.PerMm));
        svg.Line(paper.At(new Mm(from, 0)), paper.At(new Mm(to, 0)), "axis");
        if (drawing.TiltDeg == 0)
            return;
        var cos = Math.Cos(drawing.TiltDeg * Math.PI / 180);
        svg.Line(
            paper.At(geometry.Place((from + drawing.AdapterThickness) / cos, 0)),
            paper.At(geometry.Place((to + drawing.AdapterThickness) / cos, 0)),
            "axis");
    }
}
