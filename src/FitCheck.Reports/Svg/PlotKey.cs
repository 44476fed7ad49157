namespace FitCheck.Reports.Svg;

/// <summary>What the lines and marks of a plot mean: below it, where no curve can run through the words.</summary>
internal sealed class PlotKey
{
    private const double LineHeight = 15.5;
    private const double Indent = 38;

    private readonly List<(string? Mark, string Text, string Style)> _lines = [];

    public double Height => (_lines.Count * LineHeight) + 6;

    /// <summary>A sentence behind its mark: the class of a line, `point` for a dot, or null for none.</summary>
    public void Add(string? mark, string text, string style = "label")
    {
        var figure = style == "figure";
        foreach (var line in Lettering.Lines(text, FrequencyAxis.Width - Indent - 4, figure ? Lettering.Figure : Lettering.Label, figure))
        {
            _lines.Add((mark, line, style));
            mark = null;
        }
    }

    public void Draw(SvgWriter svg, double top)
    {
        for (var i = 0; i < _lines.Count; i++)
        {
            var (mark, text, style) = _lines[i];
            var y = top + 8 + (i * LineHeight);
            if (mark == "point")
                svg.Dot(new(18, y), 4.5, mark);
            else if (mark is not null)
                svg.Line(new(4, y), new(30, y), mark);
            svg.Text(new(Indent, y + 4), text, style);
        }
    }
}
