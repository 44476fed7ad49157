using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The supply as a single line from the battery down: main fuse, cable, block, and a leg with fuse, amplifier and ground for each
/// amplifier.
/// </summary>
internal static class SupplyDrawing
{
    private const double Width = SectionPaper.Width, Trunk = 24, Label = 44, BoxStart = 176, BoxEnd = Width - 2, Padding = 8, Line = 15.5;
    private const double Head = 34, MainHeight = 82, BlockHeight = 32, LegHeight = 116, Wire = 30;

    public static SafeHtml Draw(string id, SupplyDiagram supply)
    {
        var foot = Head + (supply.Main is null ? 0 : MainHeight + BlockHeight) + (supply.Legs.Count * LegHeight);
        using var svg = new SvgWriter(id, "plot", Width, foot, "Supply of the amplifiers", Say(supply));
        svg.Line(new(Trunk, 30), new(Trunk, foot - LegHeight + Wire), "edge");
        svg.Box(2, 4, 104, 26, "key");
        svg.Text(new(10, 21), "Battery +", "figure");
        var y = Head;
        if (supply.Main is { } main)
            y = DrawMain(svg, y, main, supply.Distribution);
        foreach (var leg in supply.Legs)
        {
            DrawLeg(svg, y, leg, supply.Main is null);
            y += LegHeight;
        }
        return svg.Finish();
    }

    private static double DrawMain(SvgWriter svg, double y, SupplyLeg main, string? block)
    {
        if (main.FuseA is not null)
            DrawFuse(svg, new(Trunk, y + 16), upright: true);
        svg.Text(new(Label, y + 13), Cut($"main fuse: {Fuse(main)}", BoxEnd - Label, bold: true), "figure");
        svg.Text(new(Label, y + 29), Cut(Distance(main), BoxEnd - Label), "label");
        svg.Text(new(Label, y + 50), Cut($"{Cable(main)}, carries {Show(main.DemandA, "A")}", BoxEnd - Label), "label");
        y += MainHeight;
        var lines = Lettering.Lines(block ?? "no distribution block", 2, BoxEnd - Label - Padding, Lettering.Figure, bold: true);
        if (block is not null)
            svg.Box(2, y - 20, BoxEnd - 2, 40, "key");
        for (var i = 0; i < lines.Count; i++)
            svg.Text(new(Label, y + 4 + (Line * (i - ((lines.Count - 1) / 2.0)))), lines[i], "figure");
        return y + BlockHeight;
    }

    private static void DrawLeg(SvgWriter svg, double y, SupplyLeg leg, bool fromBattery)
    {
        var line = y + Wire;
        svg.Line(new(Trunk, line), new(BoxStart, line), leg.Gauge is null ? "edge dashed" : "edge");
        if (leg.FuseA is not null)
            DrawFuse(svg, new(Trunk + 36, line), upright: false);
        svg.Text(new(Label, line - 12),
            Cut(leg.FuseA is null && !fromBattery ? "no own fuse" : $"fuse: {Fuse(leg)}", BoxStart - Label - 4, bold: true), "figure");
        string[] below = [.. Lettering.Lines(Cable(leg), 2, BoxStart - Label - 4, Lettering.Label),
            .. fromBattery ? Lettering.Lines(Distance(leg), 2, BoxStart - Label - 4, Lettering.Label) : []];
        for (var i = 0; i < below.Length; i++)
            svg.Text(new(Label, line + 19 + (i * Line)), below[i], "label");
        DrawAmplifier(svg, y, leg);
        DrawGround(svg, new(BoxStart + 20, y + 80), leg);
    }

    private static void DrawAmplifier(SvgWriter svg, double y, SupplyLeg leg)
    {
        var room = BoxEnd - BoxStart - (2 * Padding);
        svg.Box(BoxStart, y, BoxEnd - BoxStart, 80, "key");
        List<(string Text,
            string Style)> lines = [.. Lettering.Lines(Names.Short(leg.Name), 3, room, Lettering.Figure, bold: true)
                .Select(l => (l, "figure")), (Cut(Current(leg), room), "label"), (Cut($"loses {Show(leg.DropV, "V")}", room), "label")];
        for (var i = 0; i < lines.Count; i++)
            svg.Text(new(BoxStart + Padding, y + 44 + (Line * (i - ((lines.Count - 1) / 2.0)))), lines[i].Text, lines[i].Style);
    }

    private static void DrawFuse(SvgWriter svg, Spot at, bool upright)
    {
        var (width, height) = upright ? (12.0, 28.0) : (28.0, 12.0);
        svg.Box(at.X - (width / 2), at.Y - (height / 2), width, height, "key");
        svg.Line(upright ? new(at.X, at.Y - 14) : new(at.X - 14, at.Y), upright ? new(at.X, at.Y + 14) : new(at.X + 14, at.Y), "thin");
    }

    private static void DrawGround(SvgWriter svg, Spot at, SupplyLeg leg)
    {
        svg.Line(at, new(at.X, at.Y + 12), leg.GroundGauge is null ? "edge dashed" : "edge");
        for (var i = 0; i < 3; i++)
            svg.Line(new(at.X - 12 + (4 * i), at.Y + 12 + (4 * i)), new(at.X + 12 - (4 * i), at.Y + 12 + (4 * i)), "edge");
        var text = leg.GroundGauge is null ? "no ground cable" : $"ground {leg.GroundGauge}, {Show(leg.GroundLengthM, "m")}";
        svg.Text(new(at.X + 18, at.Y + 19), Cut(text, BoxEnd - at.X - 18), "label");
    }

    private static string Fuse(SupplyLeg leg) => leg.FuseA is { } amperes ? Figures.Show(amperes, "A") : "none";

    private static string Distance(SupplyLeg leg) =>
        leg.FuseA is null ? ""
            : leg.FuseDistanceMm is { } mm ? $"{Figures.Show(mm, "mm")} from the battery" : "as near to the battery as can be";

    private static string Cable(SupplyLeg leg) =>
        leg.Gauge is null ? "no power cable" : $"{leg.Gauge}{(leg.CopperClad ? " copper-clad" : "")}, {Show(leg.LengthM, "m")}";

    private static string Current(SupplyLeg leg) => $"draws {Show(leg.DemandA, "A")}";

    private static string Show(double? value, string unit) => value is { } known ? Figures.Show(known, unit) : $"? {unit}";

    private static string Cut(string text, double room, bool bold = false) =>
        Lettering.Cut(text, room, bold ? Lettering.Figure : Lettering.Label, bold);

    private static string Say(SupplyDiagram supply)
    {
        var text = supply.Main is { } main
            ? $"From the battery through a main fuse ({Fuse(main)}) and {Cable(main)} to {supply.Distribution ?? "no distribution block"}. "
            : "Each amplifier has its own cable from the battery. ";
        return text + string.Join(' ', supply.Legs.Select(l =>
            $"{l.Name}: fuse {Fuse(l)}, {Cable(l)}, {Current(l)}, loses {Show(l.DropV, "V")}, ground {l.GroundGauge ?? "none"}. Status: "
                + $"{l.Status.Word()}."));
    }
}
