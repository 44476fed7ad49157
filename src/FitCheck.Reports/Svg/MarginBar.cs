using FitCheck.Findings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// A finding's value against its limit on one line: a diamond for the value, a whisker for its worst cases, a thick bar on the good side.
/// </summary>
internal static class MarginBar
{
    private const double Width = 230;
    private const double Height = 50;
    private const double Pad = 12;
    private const double Axis = 26;

    /// <summary>Null when value or limit is missing.</summary>
    public static SafeHtml? Draw(string id, Finding finding)
    {
        if (finding.Value is not { } value || finding.Limit is not { } limit || !double.IsFinite(value.Value) || !double.IsFinite(limit))
            return null;
        var (low, high) = (Finite(value.Low, value.Value), Finite(value.High, value.Value));
        var span = Math.Max(Math.Max(high, limit) - Math.Min(low, limit), Math.Max(Math.Abs(limit), Math.Abs(value.Value)) * 0.1);
        if (span <= 0)
            span = 1;
        var from = Math.Min(low, limit) - (span * 0.3);
        var to = Math.Max(high, limit) + (span * 0.3);

        var good = Figures.GoodSide(finding);
        using var svg = new SvgWriter(id, "bar", Width, Height, Say(finding, good), null);
        svg.Line(new(Pad, Axis), new(Width - Pad, Axis), "thin");
        if (good != 0)
            DrawGoodSide(svg, X(limit), good);
        svg.Line(new(X(limit), Axis - 9), new(X(limit), Axis + 9), "limit");
        DrawLabels(svg, finding, X(limit), good);
        if (high > low)
        {
            svg.Line(new(X(low), Axis), new(X(high), Axis), "whisker");
            svg.Line(new(X(low), Axis - 5), new(X(low), Axis + 5), "whisker");
            svg.Line(new(X(high), Axis - 5), new(X(high), Axis + 5), "whisker");
        }
        var x = X(value.Value);
        svg.Shape([new(x - 6, Axis), new(x, Axis - 6), new(x + 6, Axis), new(x, Axis + 6)], $"mark mark-{finding.Status.Word()}");
        return svg.Finish();

        double X(double v) => Pad + ((v - from) / (to - from) * (Width - (2 * Pad)));
    }

    private static void DrawGoodSide(SvgWriter svg, double limit, int good)
    {
        var end = good > 0 ? Width - Pad : Pad;
        svg.Line(new(limit, Axis), new(end, Axis), "good");
    }

    // The limit's figure stands above its line, the word "good" below the good side: neither can meet the other.
    private static void DrawLabels(SvgWriter svg, Finding finding, double x, int good)
    {
        var text = $"limit {Figures.Show(finding.Limit!.Value, finding.Unit)}";
        var half = Lettering.WidthOf(text, Lettering.Tick) / 2;
        svg.Text(new(Math.Clamp(x, half, Width - half), 11), text, "tick", Anchor.Middle);
        if (good > 0)
            svg.Text(new(Width - Pad, Axis + 21), "good →", "tick", Anchor.End);
        else if (good < 0)
            svg.Text(new(Pad, Axis + 21), "← good", "tick");
    }

    private static string Say(Finding finding, int good) => Figures.Row(finding) + good switch
    {
        > 0 => "; more is better",
        < 0 => "; less is better",
        _ => "",
    };

    private static double Finite(double value, double otherwise) => double.IsFinite(value) ? value : otherwise;
}
