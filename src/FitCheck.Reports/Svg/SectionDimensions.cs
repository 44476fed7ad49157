using FitCheck.Drawings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The dimension lines: depths one a row below the section, gaps at the hole and the flange in place. Each carries a letter and its value;
/// the legend says the rest.
/// </summary>
internal sealed class SectionDimensions
{
    private const double RowHeight = 19;
    private const double ArrowRoom = 24;

    private readonly List<Depth> _rows = [];
    private readonly List<Gap> _gaps = [];
    private readonly double _bottom;

    private SectionDimensions(double bottom) => _bottom = bottom;

    // From (x, y): the driver; to x: what it must not touch.
    private sealed record Depth(string Letter, Clearance Clearance, Spot From, double To);

    private sealed record Gap(string Letter, Clearance Clearance, double X, double From, double To, int Side);

    public double Height => (_rows.Count * RowHeight) + 8;

    /// <summary>A for the first clearance, B for the second, and so on.</summary>
    public static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : Figures.Whole(index + 1);

    public static SectionDimensions Of(PositionDrawing drawing, SectionGeometry geometry, SectionScale scale, SectionPaper paper)
    {
        var result = new SectionDimensions(paper.Bottom);
        for (var i = 0; i < drawing.Clearances.Count; i++)
        {
            var clearance = drawing.Clearances[i];
            switch (clearance.Kind)
            {
                case "back" or "glass":
                    result.AddBehind(Letter(i), clearance, geometry, scale, paper);
                    break;
                case "front":
                    var foremost = paper.At(geometry.Foremost ?? new Mm(scale.FrontEnd, 0));
                    result.AddDepth(Letter(i), clearance, foremost, paper.X(scale.Grille), scale.PerMm);
                    break;
                case "hole" when scale.HoleRadius is { } hole:
                    var width = Math.Max(2.4, (SectionGeometry.Known(drawing.PanelThickness) ?? 1) * scale.PerMm);
                    result.AddGap(Letter(i), clearance, paper.X(0) + width + 9, paper.Y(-hole), -scale.PerMm, 1);
                    break;
                case "flange" when geometry.FlangeEdge is { } edge:
                    result.AddGap(Letter(i), clearance, paper.X(edge.Z) - 9, paper.Y(edge.R), scale.PerMm, -1);
                    break;
                default:
                    break;
            }
        }
        // Rightmost first: the lines that lead down to lower rows then pass left of the figures above.
        result._rows.Sort((a, b) => b.To.CompareTo(a.To));
        return result;
    }

    public void Draw(SvgWriter svg)
    {
        for (var i = 0; i < _rows.Count; i++)
            DrawExtensions(svg, _rows[i], RowY(i));
        for (var i = 0; i < _rows.Count; i++)
            DrawDepth(svg, _rows[i], RowY(i));
        foreach (var gap in _gaps)
            DrawGap(svg, gap);
    }

    private double RowY(int row) => _bottom + 20 + (row * RowHeight);

    private void AddBehind(string letter, Clearance clearance, SectionGeometry geometry, SectionScale scale, SectionPaper paper)
    {
        var moving = clearance.Kind == "glass";
        var nearest = scale.Drawn.Where(o => o.Moving == moving).MinBy(o => o.Depth);
        if (nearest is null && clearance.Value is not null)
            return;
        var deepest = paper.At(geometry.Deepest ?? new Mm(scale.Rear, 0));
        AddDepth(letter, clearance, deepest, paper.X(nearest?.Depth ?? scale.DashedDepth), -scale.PerMm);
    }

    // The line has the length of the value, so that it says the same as the figure even where another point of the body is the nearest.
    private void AddDepth(string letter, Clearance clearance, Spot driver, double obstacle, double perMm) =>
        _rows.Add(new(letter, clearance, clearance.Value is { } value ? driver with { X = obstacle + (value * perMm) } : driver, obstacle));

    private void AddGap(string letter, Clearance clearance, double x, double from, double perMm, int side) =>
        _gaps.Add(new(letter, clearance, x, from, from + ((clearance.Value ?? 0) * perMm), side));

    private void DrawExtensions(SvgWriter svg, Depth row, double y)
    {
        var style = row.Clearance.Value is null ? "thin dashed" : "thin";
        svg.Line(row.From, new(row.From.X, y + 5), style);
        svg.Line(new(row.To, row.Clearance.Value is null ? _bottom - 40 : _bottom), new(row.To, y + 5), style);
    }

    private static void DrawDepth(SvgWriter svg, Depth row, double y)
    {
        var (left, right) = row.From.X <= row.To ? (row.From.X, row.To) : (row.To, row.From.X);
        var (line, head) = Style(row.Clearance);
        var outside = right - left < ArrowRoom;
        if (outside)
        {
            svg.Line(new(left - 18, y), new(right + 18, y), line);
            svg.Arrow(new(left, y), 1, 0, head);
            svg.Arrow(new(right, y), -1, 0, head);
        }
        else
        {
            svg.Line(new(left, y), new(right, y), line);
            svg.Arrow(new(left, y), -1, 0, head);
            svg.Arrow(new(right, y), 1, 0, head);
        }
        var text = Figure(row.Clearance);
        var start = right + (outside ? 22 : 6);
        if (start + 20 + Lettering.WidthOf(text, Lettering.Figure, bold: true) <= SectionPaper.Width)
            DrawFigure(svg, row.Letter, text, start, y, 1);
        else
            DrawFigure(svg, row.Letter, text, left - (outside ? 22 : 6), y, -1);
    }

    private static void DrawGap(SvgWriter svg, Gap gap)
    {
        var (upper, lower) = gap.From <= gap.To ? (gap.From, gap.To) : (gap.To, gap.From);
        var (line, head) = Style(gap.Clearance);
        if (gap.Clearance.Value is not null)
        {
            svg.Line(new(gap.X - (gap.Side * 9), gap.From), new(gap.X + 4, gap.From), "thin");
            svg.Line(new(gap.X - (gap.Side * 9), gap.To), new(gap.X + (gap.Side * 4), gap.To), "thin");
            svg.Line(new(gap.X, upper - 14), new(gap.X, lower + 22), line);
            svg.Arrow(new(gap.X, upper), 0, 1, head);
            svg.Arrow(new(gap.X, lower), 0, -1, head);
        }
        DrawFigure(svg, gap.Letter, Figure(gap.Clearance), gap.X + (gap.Side * 6), lower + 18, gap.Side);
    }

    private static void DrawFigure(SvgWriter svg, string letter, string text, double x, double y, int side)
    {
        svg.Dot(new(x + (side * 7), y), 7, "key");
        svg.Text(new(x + (side * 7), y + 4), letter, "key-letter", Anchor.Middle);
        svg.Text(new(x + (side * 18), y + 4), text, "figure", side > 0 ? Anchor.Start : Anchor.End);
    }

    private static string Figure(Clearance clearance) =>
        clearance.Value is { } value ? Figures.Show(value, "mm") : Sentences.Unknown;

    private static (string Line, string Head) Style(Clearance clearance) => clearance switch
    {
        { Value: null } => ("thin dashed", "head"),
        { Value: < 0 } => ("clash", "head clash-head"),
        _ => ("thin", "head"),
    };
}
