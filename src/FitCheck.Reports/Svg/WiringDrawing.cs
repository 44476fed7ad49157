using FitCheck.Drawings;
using FitCheck.Reports.Html;
using FitCheck.Reports.Telling;

namespace FitCheck.Reports.Svg;

/// <summary>The wires of one channel with their signs: the output, what stands in the line, and each driver. What each wire runs through is told below.</summary>
internal static class WiringDrawing
{
    private const double Width = 470, Row = 66, Line = 17;
    private const double OutputEnd = 110, FilterStart = 134, FilterEnd = 236, Bus = 252, DriverStart = 286;
    private const int LettersInLine = 74;

    public static SafeHtml Draw(string id, WiringDiagram wiring)
    {
        var key = wiring.Ends.SelectMany((e, i) => Wrapped($"{Figures.Whole(i + 1)}  {e.Position}: {e.Path}", LettersInLine, "    ")).ToList();
        var top = 14.0;
        var bottom = top + (Math.Max(1, wiring.Ends.Count) * Row);
        var middle = (top + bottom) / 2;
        using var svg = new SvgWriter(id, "plot", Width, bottom + (key.Count * Line) + 18, $"Wiring of {wiring.Name}", Say(wiring));
        DrawOutput(svg, wiring, middle);
        DrawPair(svg, OutputEnd, Bus, middle, "edge");
        string[] between = [.. wiring.InLine, .. wiring.Crossover is { } crossover ? new[] { crossover } : []];
        if (between.Length > 0)
            DrawFilter(svg, between, middle);
        if (wiring.Ends.Count > 1)
        {
            svg.Line(new(Bus, Centre(0) - 9), new(Bus, Centre(wiring.Ends.Count - 1) - 9), "edge");
            svg.Dot(new(Bus, middle - 9), 3, "solid");
            svg.Dot(new(Bus + 10, middle + 9), 3, "solid");
            svg.Line(new(Bus + 10, Centre(0) + 9), new(Bus + 10, Centre(wiring.Ends.Count - 1) + 9), "edge");
        }
        for (var i = 0; i < wiring.Ends.Count; i++)
            DrawDriver(svg, wiring.Ends[i], i + 1, Centre(i));
        for (var i = 0; i < key.Count; i++)
            svg.Text(new(8, bottom + 16 + (i * Line)), key[i], "label");
        return svg.Finish();

        double Centre(int row) => top + (Row * (row + 0.5));
    }

    private static void DrawOutput(SvgWriter svg, WiringDiagram wiring, double y)
    {
        DrawNamed(svg, 8, OutputEnd, y, wiring.Output, $"output {string.Join('+', wiring.Terminals)}");
        svg.Text(new(OutputEnd + 6, y - 14), "+", "figure");
        svg.Text(new(OutputEnd + 6, y + 24), "−", "figure");
    }

    private static void DrawFilter(SvgWriter svg, string[] parts, double y) =>
        DrawNamed(svg, FilterStart, FilterEnd, y, parts[^1], parts.Length > 1 ? $"and {Figures.Whole(parts.Length - 1)} more" : "");

    // A name on two lines, cut at spaces, and a word below it.
    private static void DrawNamed(SvgWriter svg, double left, double right, double y, string name, string below)
    {
        var letters = (int)((right - left - 12) / 7.3);
        var lines = Wrapped(Names.Short(name), letters, "");
        svg.Box(left, y - 29, right - left, 58, "key");
        svg.Text(new(left + 7, y - 11), Cut(lines[0], letters), "figure");
        if (lines.Count > 1)
            svg.Text(new(left + 7, y + 5), Cut(lines[1], letters), "figure");
        svg.Text(new(left + 7, y + 22), Cut(below, letters + 2), "label");
    }

    private static void DrawDriver(SvgWriter svg, WireEnd end, int number, double y)
    {
        var line = end.IsFactory ? "edge dashed" : "edge";
        svg.Line(new(Bus, y - 9), new(DriverStart, y - 9), line);
        svg.Line(new(Bus + 10, y + 9), new(DriverStart, y + 9), line);
        svg.Text(new(DriverStart - 12, y - 13), "+", "figure");
        svg.Text(new(DriverStart - 12, y + 23), "−", "figure");
        svg.Box(DriverStart, y - 22, Width - 8 - DriverStart, 44, end.IsFactory ? "key dashed" : "key");
        svg.Text(new(DriverStart + 8, y - 4), Cut($"{Figures.Whole(number)}  {Names.Short(end.Driver)}", 23), "figure");
        svg.Text(new(DriverStart + 8, y + 14), Cut(end.Position, 26), "label");
    }

    private static void DrawPair(SvgWriter svg, double from, double to, double y, string style)
    {
        svg.Line(new(from, y - 9), new(to, y - 9), style);
        svg.Line(new(from, y + 9), new(to + 10, y + 9), style);
    }

    private static string Cut(string text, int letters) => text.Length <= letters ? text : text[..(letters - 1)].TrimEnd(' ', ',') + "…";

    // At spaces; an SVG can't do it.
    private static List<string> Wrapped(string text, int letters, string indent)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + word.Length >= letters)
            {
                lines.Add(line);
                line = indent + word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }
        lines.Add(line);
        return lines;
    }

    private static string Say(WiringDiagram wiring)
    {
        var between = wiring.Crossover is { } crossover ? $" through {crossover}" : "";
        return $"From {wiring.Output}{between}, plus to plus and minus to minus: {string.Join("; ", wiring.Ends.Select(e => $"{e.Position}, {e.Driver}: {e.Path}"))}.";
    }
}
