using FitCheck.Drawings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The wires of one channel with their signs: the output, what stands in the line, and each driver. What each wire runs through is told
/// below.
/// </summary>
internal static class WiringDrawing
{
    private const double Width = SectionPaper.Width, Line = 15, KeyLine = 15.5, Top = 4;
    private const double OutputStart = 2, OutputEnd = 90, FilterStart = 108, FilterEnd = 192, Bus = 202, DriverStart = 228, DriverEnd =
        Width - 2;

    public static SafeHtml Draw(string id, WiringDiagram wiring)
    {
        var output = new Named(OutputStart, OutputEnd, wiring.Output, $"output {string.Join('+', wiring.Terminals)}", "key");
        var filter = Filter(wiring);
        // Where a driver is stands with its number below the drawing.
        var drivers =
            wiring.Ends.Select(
                (e, i) => new Named(DriverStart, DriverEnd, $"{Figures.Whole(i + 1)} {e.Driver}", "", e.IsFactory ? "key dashed" : "key"))
                    .ToList();
        var key = wiring.Ends.SelectMany(
            (e, i) => Lettering.Lines($"{Figures.Whole(i + 1)} {e.Position}: {e.Path}", Width - 8, Lettering.Label)).ToList();
        var row = Math.Max(48, drivers.Select(d => d.Height).DefaultIfEmpty(0).Max()) + 4;
        var bottom = Top + Math.Max(Math.Max(1, drivers.Count) * row, Math.Max(output.Height, filter?.Height ?? 0) + 4);
        var middle = (Top + bottom) / 2;
        var ys = drivers.Select((_, i) => middle + ((i - ((drivers.Count - 1) / 2.0)) * row)).ToList();

        using var svg = new SvgWriter(id, "plot", Width, bottom + (key.Count * KeyLine) + 8, $"Wiring of {wiring.Name}", Say(wiring));
        svg.Line(new(OutputEnd, middle - 9), new(Bus, middle - 9), "edge");
        svg.Line(new(OutputEnd, middle + 9), new(Bus + 10, middle + 9), "edge");
        DrawSigns(svg, OutputEnd + 4, middle);
        output.Draw(svg, middle);
        filter?.Draw(svg, middle);
        if (drivers.Count > 1)
            DrawBus(svg, middle, ys[0], ys[^1]);
        for (var i = 0; i < drivers.Count; i++)
            DrawDriver(svg, drivers[i], ys[i], wiring.Ends[i].IsFactory ? "edge dashed" : "edge");
        for (var i = 0; i < key.Count; i++)
            svg.Text(new(4, bottom + 12 + (i * KeyLine)), key[i], "label");
        return svg.Finish();
    }

    private static Named? Filter(WiringDiagram wiring)
    {
        string[] parts = [.. wiring.InLine, .. wiring.Crossover is { } crossover ? new[] { crossover } : []];
        return parts.Length == 0 ? null
            : new(FilterStart, FilterEnd, parts[^1], parts.Length > 1 ? $"and {Figures.Whole(parts.Length - 1)} more" : "", "key");
    }

    private static void DrawBus(SvgWriter svg, double middle, double first, double last)
    {
        svg.Line(new(Bus, first - 9), new(Bus, last - 9), "edge");
        svg.Dot(new(Bus, middle - 9), 3, "solid");
        svg.Dot(new(Bus + 10, middle + 9), 3, "solid");
        svg.Line(new(Bus + 10, first + 9), new(Bus + 10, last + 9), "edge");
    }

    private static void DrawDriver(SvgWriter svg, Named driver, double y, string line)
    {
        svg.Line(new(Bus, y - 9), new(DriverStart, y - 9), line);
        svg.Line(new(Bus + 10, y + 9), new(DriverStart, y + 9), line);
        DrawSigns(svg, DriverStart - 12, y);
        driver.Draw(svg, y);
    }

    private static void DrawSigns(SvgWriter svg, double x, double y)
    {
        svg.Text(new(x, y - 13), "+", "figure");
        svg.Text(new(x, y + 22), "−", "figure");
    }

    private static string Say(WiringDiagram wiring)
    {
        var between = wiring.Crossover is { } crossover ? $" through {crossover}" : "";
        return $"From {wiring.Output}{between}, plus to plus and minus to minus: {string.Join("; ", wiring.Ends.Select(e => $""
            + $"{e.Position}, {e.Driver}: {e.Path}"))}.";
    }

    /// <summary>A box with a name and a word below it, as high as its lines.</summary>
    private sealed class Named
    {
        private const double Padding = 6;
        private const int Most = 8;

        private readonly List<(string Text, string Style)> _lines;
        private readonly (double Left, double Right) _box;
        private readonly string _style;

        public Named(double left, double right, string name, string below, string style)
        {
            (_box, _style) = ((left, right), style);
            var room = right - left - (2 * Padding);
            _lines = [.. Lettering.Lines(Names.Short(name), Most, room, Lettering.Figure, bold: true).Select(l => (l, "figure"))];
            if (below.Length > 0)
                _lines.AddRange(Lettering.Lines(below, Most, room, Lettering.Label).Select(l => (l, "label")));
        }

        public double Height => Math.Max(40, (_lines.Count * Line) + 8);

        public void Draw(SvgWriter svg, double y)
        {
            svg.Box(_box.Left, y - (Height / 2), _box.Right - _box.Left, Height, _style);
            for (var i = 0; i < _lines.Count; i++)
                svg.Text(new(_box.Left + Padding, y + 4 + (Line * (i - ((_lines.Count - 1) / 2.0)))), _lines[i].Text, _lines[i].Style);
        }
    }
}
