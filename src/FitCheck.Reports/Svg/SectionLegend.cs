using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// Below the section: the scale bar, each lettered clearance with its worst case and status, and what the drawing leaves out.
/// </summary>
internal sealed class SectionLegend
{
    private const double LineHeight = 14.5;
    private const double Margin = 4;
    private const double Hang = 19;

    private readonly SectionScale _scale;
    private readonly List<(string? Letter, string Text, string Style)> _lines = [];

    private SectionLegend(SectionScale scale) => _scale = scale;

    public double Height => 30 + (_lines.Count * LineHeight);

    public static SectionLegend Of(PositionDrawing drawing, SectionGeometry geometry, SectionScale scale)
    {
        var legend = new SectionLegend(scale);
        for (var i = 0; i < drawing.Clearances.Count; i++)
            legend.Add(SectionDimensions.Letter(i), Say(drawing.Clearances[i]), "label");
        legend.Add(null, string.Join(' ', Notes(drawing, geometry, scale)), "label soft");
        return legend;
    }

    public static string Title(PositionDrawing drawing) =>
        $"Cross-section of {drawing.Name}{(drawing.DriverName is { } driver ? $" with {driver}" : "")}"
            + $"{(drawing.AdapterName is { } adapter ? $" on {adapter}" : "")}";

    /// <summary>The drawing's numbers for someone who does not see it.</summary>
    public static string Sentence(PositionDrawing drawing) =>
        drawing.Clearances.Count == 0 ? "No clearance is known." : string.Join(". ", drawing.Clearances.Select(Say)) + ".";

    public void Draw(SvgWriter svg, double top)
    {
        DrawBar(svg, top + 8);
        for (var i = 0; i < _lines.Count; i++)
        {
            var (letter, text, style) = _lines[i];
            var y = top + 32 + (i * LineHeight);
            if (letter is not null)
            {
                svg.Dot(new(Margin + 7, y), 6.5, "key");
                svg.Text(new(Margin + 7, y + 4), letter, "key-letter", Anchor.Middle);
            }
            svg.Text(new(letter is null && style.Contains("soft", StringComparison.Ordinal) ? Margin : Margin + Hang, y + 4), text, style);
        }
    }

    private void DrawBar(SvgWriter svg, double y)
    {
        var length = _scale.Bar * _scale.PerMm;
        svg.Box(Margin, y, length / 2, 5, "edge solid");
        svg.Box(Margin + (length / 2), y, length / 2, 5, "edge hollow");
        svg.Text(new(Margin + length + 8, y + 7), $"{Figures.Show(_scale.Bar, "mm")}; scale {_scale.Name} on paper", "label");
    }

    private void Add(string? letter, string text, string style)
    {
        if (text.Length == 0)
            return;
        var lines = Lettering.Lines(text, SectionPaper.Width - (2 * Margin) - (letter is null ? 0 : Hang), Lettering.Label);
        for (var i = 0; i < lines.Count; i++)
            _lines.Add((i == 0 ? letter : null, lines[i], style));
    }

    private static string Say(Clearance clearance)
    {
        if (clearance.Value is not { } value)
            return $"{clearance.Label}: {Sentences.Unknown}";
        var range = clearance is { Low: { } low, High: { } high } && low < high
            ? $" ({Figures.Bare(low, "mm")} to {Figures.Bare(high, "mm")})" : "";
        return $"{clearance.Label}: {Figures.Show(value, "mm")}{range} — {clearance.Status.Word()}";
    }

    private static IEnumerable<string> Notes(PositionDrawing drawing, SectionGeometry geometry, SectionScale scale)
    {
        if (drawing.Clearances.Any(c => c.Low < c.High))
            yield return "In brackets: the worst cases.";
        if (geometry.Body.Count == 0)
            yield return "The driver's body is not known; the dashed outline is only a place for it.";
        else if (drawing.BodyIsAssumed)
            yield return "The body is assumed: a cone and a magnet through the figures of the data sheet.";
        if (geometry.Travel.Count > 0)
            yield return "Dashed in front of the driver: the farthest travel of the cone.";
        if (drawing is { TiltDeg: not 0, AimHour: { } aim })
            yield return $"Cut through {FacePlan.Clock(aim)} (above, where the sound is aimed) and {FacePlan.Clock(aim + 6)} (below); "
                + $"each clearance counts the hours at which its thing stands.";
        foreach (var thing in scale.Drawn)
        {
            if (thing.Hours is { } hours)
                yield return $"The {thing.Name} stands only from {FacePlan.Clock(hours.From)} to {FacePlan.Clock(hours.To)}.";
        }
        foreach (var far in scale.TooFar)
            yield return double.IsFinite(far.Depth) ? $"Beyond this drawing: {far.Name} at {Figures.Show(far.Depth, "mm")}."
                : $"Depth of {far.Name}: {Sentences.Unknown}.";
    }
}
