using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Html;
using FitCheck.Reports.Telling;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The load of one output over frequency. Both axes are logarithmic: the dips that decide stay readable beside resonance peaks ten times as high.
/// </summary>
internal static class LoadPlot
{
    private const double Height = 190;

    public static SafeHtml Draw(string id, LoadCurve load)
    {
        var points = load.Points.Where(p => FrequencyAxis.Covers(p.Hz) && double.IsFinite(p.Ohm) && p.Ohm > 0).ToList();
        var axis = new FrequencyAxis(20, Height);
        using var svg = new SvgWriter(id, "plot", FrequencyAxis.Width, axis.Foot, $"Load of {load.Name} over frequency", Say(load));
        var (from, to) = Range(load, points);

        svg.Hatch("refused", 7, "hatch");
        axis.Draw(svg);
        for (var ohm = from; ohm <= to; ohm *= 2)
            FrequencyAxis.DrawLevel(svg, Y(ohm), Figures.Bare(ohm, "ohm"));
        svg.Text(new(4, 12), "|Z| in ohm", "tick");
        if (load.AllowedOhm is { } allowed)
            DrawAllowed(svg, axis, load, Y(allowed));
        axis.DrawFrame(svg);
        svg.Shape(points.Select(p => new Spot(FrequencyAxis.X(p.Hz), Y(p.Ohm))), load.Estimated ? "curve dashed" : "curve", closed: false);
        DrawLowest(svg, load, Y(load.LowestOhm));
        return svg.Finish();

        double Y(double ohm) => axis.Bottom - (Math.Log(Math.Clamp(ohm, from, to) / from) / Math.Log(to / from) * Height);
    }

    private static (double From, double To) Range(LoadCurve load, List<(double Hz, double Ohm, double PhaseDeg)> points)
    {
        var low = Math.Min(load.LowestOhm > 0 ? load.LowestOhm : 1, load.AllowedOhm ?? double.MaxValue);
        var high = points.Count > 0 ? points.Max(p => p.Ohm) : low;
        // The limit keeps some room below it for what is refused.
        var from = Math.Pow(2, Math.Floor(Math.Log2(Math.Max(low, 0.05) * 0.8)));
        var to = Math.Pow(2, Math.Ceiling(Math.Log2(Math.Clamp(high * 1.1, from * 4, from * 256))));
        return (from, to);
    }

    private static void DrawAllowed(SvgWriter svg, FrequencyAxis axis, LoadCurve load, double y)
    {
        svg.Box(FrequencyAxis.Start, y, FrequencyAxis.End - FrequencyAxis.Start, axis.Bottom - y, "no-line refused", svg.Fill("refused"));
        svg.Line(new(FrequencyAxis.Start, y), new(FrequencyAxis.End, y), "limit-line");
        // At the end of the plot that the minimum is not at.
        var left = load.LowestHz > 600;
        svg.Text(new(left ? FrequencyAxis.Start + 6 : FrequencyAxis.End - 6, y + 14), $"allowed from {Figures.Show(load.AllowedOhm!.Value, "ohm")}", "figure", left ? Anchor.Start : Anchor.End);
    }

    private static void DrawLowest(SvgWriter svg, LoadCurve load, double y)
    {
        var x = FrequencyAxis.X(load.LowestHz);
        var text = $"lowest {Figures.Show(load.LowestOhm, "ohm")} at {Figures.Hertz(load.LowestHz)}";
        svg.Dot(new(x, y), 4.5, "point");
        var half = SvgWriter.WidthOf(text, SectionPaper.TextSize) / 2;
        svg.Line(new(x, y - 6), new(x, y - 20), "thin");
        svg.Text(new(Math.Clamp(x, FrequencyAxis.Start + half + 4, FrequencyAxis.End - half - 4), y - 24), text, "figure", Anchor.Middle);
    }

    private static string Say(LoadCurve load)
    {
        var text = $"The load is lowest at {Figures.Hertz(load.LowestHz)}, with {Figures.Show(load.LowestOhm, "ohm")}";
        text += load.AllowedOhm is { } allowed
            ? $"; the output allows {Figures.Show(allowed, "ohm")} and more"
            : "; what the output allows is not known";
        if (load.RatedLoad is { } rated)
            text += $", which is 80 % of its lowest rated load of {Figures.Show(rated, "ohm")}";
        return $"{text}. Status: {load.Status.Word()}.{(load.Estimated ? " The curve is estimated." : "")}";
    }
}
