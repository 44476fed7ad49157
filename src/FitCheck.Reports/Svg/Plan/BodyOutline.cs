namespace FitCheck.Reports.Svg.Plan;

/// <summary>
/// A vehicle as a scheme: rounded outlines of body and cabin, the front seats, the steering wheel, the point between the heads.
/// </summary>
internal static class BodyOutline
{
    private const double SeatAside = 0.37;

    public static void Draw(SvgWriter svg, PlanPaper paper, IReadOnlyList<PlanPlace> places, string? steering, bool arrowAside)
    {
        var half = PlanPaper.HalfBody;
        svg.Shape(Rounded(PlanPaper.Middle, (paper.Top + paper.Bottom) / 2, half, paper.Length / 2, 3.6), "edge hollow");
        var (from, to) = (paper.Y(paper.Windscreen), paper.Bottom - 9);
        svg.Shape(Rounded(PlanPaper.Middle, (from + to) / 2, half - 5, (to - from) / 2, 5), "thin body");
        DrawFront(svg, paper, arrowAside ? PlanPaper.Middle + 24 : PlanPaper.Middle);
        DrawSeat(svg, paper, SeatAside, 0.26);
        DrawSeat(svg, paper, -SeatAside, 0.26);
        if (places.Any(p => p.Place == "shelf") || places.Count(p => p.Place == "door") > 2)
            DrawBench(svg, paper);
        if (steering is "left" or "right")
        {
            var wheel = steering == "left" ? SeatAside : -SeatAside;
            svg.Line(paper.At(0.56, wheel - 0.19), paper.At(0.56, wheel + 0.19), "wheel");
            svg.Line(paper.At(0.56, wheel), paper.At(0.72, wheel), "edge");
        }
        DrawEars(svg, paper);
    }

    private static void DrawFront(SvgWriter svg, PlanPaper paper, double x)
    {
        var tip = paper.Top + 6;
        svg.Line(new(x, tip + 4), new(x, tip + 11), "edge");
        svg.Arrow(new(x, tip), 0, -1, "head");
        svg.Text(new(x, tip + 21), "front", "tick", Anchor.Middle);
    }

    private static void DrawSeat(SvgWriter svg, PlanPaper paper, double left, double half)
    {
        svg.Shape(Block(paper, 0.2, left, 0.26, half), "thin hollow");
        svg.Shape(Block(paper, -0.13, left, 0.08, half), "thin hollow");
    }

    private static void DrawBench(SvgWriter svg, PlanPaper paper)
    {
        svg.Shape(Block(paper, -0.68, 0, 0.22, 0.58), "thin hollow");
        svg.Shape(Block(paper, -0.97, 0, 0.07, 0.6), "thin hollow");
    }

    // The point from which places are measured.
    private static void DrawEars(SvgWriter svg, PlanPaper paper)
    {
        var at = paper.At(0, 0);
        svg.Line(new(at.X - 5, at.Y), new(at.X + 5, at.Y), "thin");
        svg.Line(new(at.X, at.Y - 5), new(at.X, at.Y + 5), "thin");
    }

    private static IEnumerable<Spot> Block(PlanPaper paper, double forward, double left, double halfLength, double halfWidth)
    {
        var (centre, corner) = (paper.At(forward, left), paper.At(forward - halfLength, left - halfWidth));
        return Rounded(centre.X, centre.Y, corner.X - centre.X, corner.Y - centre.Y, 4.5);
    }

    // |x/a|^n + |y/b|^n = 1: an ellipse that is the nearer to a rectangle the larger n is.
    private static IEnumerable<Spot> Rounded(double x, double y, double halfWidth, double halfHeight, double n)
    {
        const int Steps = 72;
        for (var i = 0; i < Steps; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / Steps);
            yield return new(x + (halfWidth * Math.Sign(cos) * Math.Pow(Math.Abs(cos), 2 / n)),
                y + (halfHeight * Math.Sign(sin) * Math.Pow(Math.Abs(sin), 2 / n)));
        }
    }
}
