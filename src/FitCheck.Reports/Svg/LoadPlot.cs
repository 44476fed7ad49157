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
    private const double KeyLine = 18;

    public static SafeHtml Draw(string id, LoadCurve load)
    {
        var points = load.Points.Where(p => FrequencyAxis.Covers(p.Hz) && double.IsFinite(p.Ohm) && p.Ohm > 0).ToList();
        var axis = new FrequencyAxis(20, Height);
        using var svg = new SvgWriter(id, "plot", FrequencyAxis.Width, axis.Foot + (KeyLine * (load.Estimated ? 3 : 2)) + 4, $"Load of {load.Name} over frequency", Say(load));
        var (from, to) = Range(load, points);

        svg.Hatch("refused", 7, "hatch");
        axis.Draw(svg);
        for (var ohm = from; ohm <= to; ohm *= 2)
            FrequencyAxis.DrawLevel(svg, Y(ohm), Figures.Bare(ohm, "ohm"));
        svg.Text(new(4, 12), "|Z| in ohm", "tick");
        if (load.AllowedOhm is { } allowed)
            DrawAllowed(svg, axis, Y(allowed));
        axis.DrawFrame(svg);
        svg.Shape(points.Select(p => new Spot(FrequencyAxis.X(p.Hz), Y(p.Ohm))), load.Estimated ? "curve dashed" : "curve", closed: false);
        if (IsKnown(load))
            svg.Dot(new(FrequencyAxis.X(load.LowestHz), Y(load.LowestOhm)), 4.5, "point");
        DrawKey(svg, axis, load);
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

    private static void DrawAllowed(SvgWriter svg, FrequencyAxis axis, double y)
    {
        svg.Box(FrequencyAxis.Start, y, FrequencyAxis.End - FrequencyAxis.Start, axis.Bottom - y, "no-line refused", svg.Fill("refused"));
        svg.Line(new(FrequencyAxis.Start, y), new(FrequencyAxis.End, y), "limit-line");
    }

    // Below the plot, where no curve can run through the words.
    private static void DrawKey(SvgWriter svg, FrequencyAxis axis, LoadCurve load)
    {
        var y = axis.Foot + 8;
        svg.Dot(new(21, y), 4.5, "point");
        svg.Text(new(42, y + 4), IsKnown(load) ? $"lowest: {Lowest(load)}" : $"lowest: {Wording.Unknown}", "figure");
        y += KeyLine;
        if (load.AllowedOhm is { } allowed)
        {
            svg.Line(new(8, y), new(34, y), "limit-line");
            svg.Text(new(42, y + 4), $"allowed from {Figures.Show(allowed, "ohm")}{Rated(load)}", "label");
        }
        else
        {
            svg.Text(new(42, y + 4), $"lowest load of the output: {Wording.Unknown}", "label");
        }
        if (load.Estimated)
        {
            svg.Line(new(8, y + KeyLine), new(34, y + KeyLine), "curve dashed");
            svg.Text(new(42, y + KeyLine + 4), "estimated: the driver's impedance is not known well enough", "label");
        }
    }

    private static bool IsKnown(LoadCurve load) => double.IsFinite(load.LowestOhm) && double.IsFinite(load.LowestHz);

    private static string Lowest(LoadCurve load) => $"{Figures.Show(load.LowestOhm, "ohm")} at {Figures.Hertz(load.LowestHz)}";

    private static string Rated(LoadCurve load) =>
        load.RatedLoad is { } rated ? $", which is 80 % of its rated {Figures.Show(rated, "ohm")}" : "";

    private static string Say(LoadCurve load)
    {
        var text = IsKnown(load) ? $"The load falls to {Lowest(load)}" : "The load is not known";
        text += load.AllowedOhm is { } allowed
            ? $"; the output allows {Figures.Show(allowed, "ohm")} and more"
            : "; what the output allows is not known";
        return $"{text}{(load.AllowedOhm is null ? "" : Rated(load))}. Status: {load.Status.Word()}.{(load.Estimated ? " The curve is estimated." : "")}";
    }
}
