using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The load of one output over frequency, and its phase as a thin line. Both main axes are logarithmic: the dips that decide stay readable
/// beside resonance peaks ten times as high.
/// </summary>
internal static class LoadPlot
{
    private const double Height = 140;

    public static SafeHtml Draw(string id, LoadCurve load)
    {
        var points = load.Points.Where(p => FrequencyAxis.Covers(p.Hz) && double.IsFinite(p.Ohm) && p.Ohm > 0).ToList();
        var axis = new FrequencyAxis(20, Height);
        var key = Key(load, points);
        using var svg = new SvgWriter(id, "plot", FrequencyAxis.Width, axis.Foot + key.Height, $"Load of {load.Name} over frequency",
            Say(load, points));
        var (from, to) = Range(load, points);

        svg.Hatch("refused", 7, "hatch");
        axis.Draw(svg);
        for (var ohm = from; ohm <= to; ohm *= 2)
            FrequencyAxis.DrawLevel(svg, Y(ohm), Figures.Bare(ohm, "ohm"));
        svg.Text(new(2, 12), "|Z| in ohm", "tick");
        if (load.AllowedOhm is { } allowed)
            DrawAllowed(svg, axis, Y(allowed));
        axis.DrawFrame(svg);
        if (LargestPhase(points) is not null)
            DrawPhase(svg, axis, points);
        svg.Shape(points.Select(p => new Spot(FrequencyAxis.X(p.Hz), Y(p.Ohm))), load.Estimated ? "curve dashed" : "curve", closed: false);
        if (IsKnown(load))
            svg.Dot(new(FrequencyAxis.X(load.LowestHz), Y(load.LowestOhm)), 4.5, "point");
        key.Draw(svg, axis.Foot);
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

    // From -90 degrees at the foot to 90 at the top, with its figures on the right.
    private static void DrawPhase(SvgWriter svg, FrequencyAxis axis, List<(double Hz, double Ohm, double PhaseDeg)> points)
    {
        for (var deg = -90; deg <= 90; deg += 45)
            svg.Text(new(FrequencyAxis.End + 5, Y(deg) + 4), Figures.Whole(deg), "tick");
        svg.Text(new(FrequencyAxis.Width - 2, 12), "phase in deg", "tick", Anchor.End);
        svg.Shape(points.Where(p => double.IsFinite(p.PhaseDeg)).Select(p => new Spot(FrequencyAxis.X(p.Hz), Y(p.PhaseDeg))), "phase",
            closed: false);

        double Y(double deg) => axis.Top + ((90 - Math.Clamp(deg, -90, 90)) / 180 * Height);
    }

    private static PlotKey Key(LoadCurve load, List<(double Hz, double Ohm, double PhaseDeg)> points)
    {
        var key = new PlotKey();
        key.Add("point", $"lowest: {(IsKnown(load) ? Lowest(load) : Sentences.Unknown)}", "figure");
        if (IsKnown(load))
            key.Add(null, Equivalent(load));
        if (load.AllowedOhm is { } allowed)
            key.Add("limit-line", $"allowed from {Figures.Show(allowed, "ohm")}{Rated(load)}");
        else
            key.Add(null, $"lowest load of the output: {Sentences.Unknown}");
        if (LargestPhase(points) is { } phase)
            key.Add("phase", $"largest phase: {Phase(phase)} (right axis)");
        if (load.Estimated)
            key.Add("curve dashed", "estimated: the impedance is not known well");
        return key;
    }

    private static (double Hz, double Deg)? LargestPhase(List<(double Hz, double Ohm, double PhaseDeg)> points)
    {
        var finite = points.Where(p => double.IsFinite(p.PhaseDeg)).ToList();
        if (finite.Count == 0)
            return null;
        var largest = finite.MaxBy(p => Math.Abs(p.PhaseDeg));
        return (largest.Hz, largest.PhaseDeg);
    }

    private static string Phase((double Hz, double Deg) phase) => $"{QuantityText.Number(phase.Deg, 0)} deg at {Figures.Hertz(phase.Hz)}";

    // A driver may fall to 80 % of its rated impedance, so a dip stands for a rating a quarter higher (IEC 60268-5).
    private static string Equivalent(LoadCurve load) => $"as low as a load rated {Figures.Show(load.LowestOhm / 0.8, "ohm")} may fall";

    private static bool IsKnown(LoadCurve load) => double.IsFinite(load.LowestOhm) && double.IsFinite(load.LowestHz);

    private static string Lowest(LoadCurve load) => $"{Figures.Show(load.LowestOhm, "ohm")} at {Figures.Hertz(load.LowestHz)}";

    private static string Rated(LoadCurve load) =>
        load.RatedLoad is { } rated ? $": 80 % of its rated {Figures.Show(rated, "ohm")}" : "";

    private static string Say(LoadCurve load, List<(double Hz, double Ohm, double PhaseDeg)> points)
    {
        var text = IsKnown(load) ? $"The load falls to {Lowest(load)}, {Equivalent(load)}" : "The load is not known";
        text += load.AllowedOhm is { } allowed
            ? $"; the output allows {Figures.Show(allowed, "ohm")} and more"
            : "; what the output allows is not known";
        text += LargestPhase(points) is { } phase ? $". The largest phase is {Phase(phase)}" : "";
        return $"{text}. Status: {load.Status.Word()}.{(load.Estimated ? " The curve is estimated." : "")}";
    }
}
