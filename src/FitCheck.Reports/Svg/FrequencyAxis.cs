namespace FitCheck.Reports.Svg;

/// <summary>The frame of a plot over the audible range, and its logarithmic axis from 20 Hz to 20 kHz.</summary>
internal sealed class FrequencyAxis(double top, double height)
{
    public const double Width = SectionPaper.Width;
    private const double Left = 36;
    // Room for the figures of a second axis; plots below one another share their ends.
    private const double Right = 32;
    private const double FirstHz = 20;
    private const double LastHz = 20_000;

    private static readonly (double Hz, string Name)[] Named =
    [
        (20, "20"), (50, "50"), (100, "100"), (200, "200"), (500, "500"), (1_000, "1k"), (2_000, "2k"), (5_000, "5k"), (10_000, "10k"),
        (20_000, "20k"),
    ];

    public const double Start = Left;

    public const double End = Width - Right;

    public double Top => top;

    public double Bottom => top + height;

    /// <summary>Everything that the plot needs, the axis' figures included.</summary>
    public double Foot => top + height + 30;

    public static double X(double hz) =>
        Left + (Math.Log(Math.Clamp(hz, FirstHz, LastHz) / FirstHz) / Math.Log(LastHz / FirstHz) * (End - Start));

    public static bool Covers(double hz) => hz is >= FirstHz * 0.999 and <= LastHz * 1.001;

    public void Draw(SvgWriter svg)
    {
        for (var decade = 10; decade <= 10_000; decade *= 10)
        {
            for (var step = 1; step <= 9; step++)
            {
                var hz = (double)decade * step;
                if (hz is > FirstHz and < LastHz)
                    svg.Line(new(X(hz), Top), new(X(hz), Bottom), step == 1 ? "grid-strong" : "grid");
            }
        }
        foreach (var (hz, name) in Named)
            svg.Text(new(X(hz), Bottom + 13), name, "tick", Anchor.Middle);
        svg.Text(new((Start + End) / 2, Bottom + 26), "frequency in Hz", "tick", Anchor.Middle);
    }

    /// <summary>A level line with its figure on the left.</summary>
    public static void DrawLevel(SvgWriter svg, double y, string figure)
    {
        svg.Line(new(Start, y), new(End, y), "grid");
        svg.Text(new(Start - 5, y + 4), figure, "tick", Anchor.End);
    }

    public void DrawFrame(SvgWriter svg) => svg.Box(Start, Top, End - Start, Bottom - Top, "frame");
}
