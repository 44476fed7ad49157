using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Html;
using FitCheck.Reports.Telling;

namespace FitCheck.Reports.Svg;

/// <summary>The supply as a single line from the battery down: main fuse, cable, block, and a leg with fuse, amplifier and ground for each amplifier.</summary>
internal static class SupplyDrawing
{
    private const double Width = 470, Trunk = 34, Label = 60, BoxStart = 236, BoxEnd = Width - 8;
    private const double Head = 44, MainHeight = 84, BlockHeight = 46, LegHeight = 104;

    public static SafeHtml Draw(string id, SupplyDiagram supply)
    {
        var foot = Head + (supply.Main is null ? 0 : MainHeight + BlockHeight) + (supply.Legs.Count * LegHeight);
        using var svg = new SvgWriter(id, "plot", Width, foot + 4, "Supply of the amplifiers", Say(supply));
        svg.Line(new(Trunk, 36), new(Trunk, foot - LegHeight + 32), "edge");
        svg.Box(8, 8, 130, 28, "key");
        svg.Text(new(18, 27), "Battery +", "figure");
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
            DrawFuse(svg, new(Trunk, y + 18), upright: true);
        svg.Text(new(Label, y + 14), $"main fuse: {Fuse(main)}", "figure");
        svg.Text(new(Label, y + 31), Distance(main), "label");
        svg.Text(new(Label, y + 56), $"{Cable(main)}, carries {Show(main.DemandA, "A")}", "label");
        y += MainHeight;
        if (block is not null)
            svg.Box(8, y - 12, BoxEnd - 8, 30, "key");
        svg.Text(new(Label, y + 7), block is null ? "no distribution block" : Cut(block, 60), "figure");
        return y + BlockHeight;
    }

    private static void DrawLeg(SvgWriter svg, double y, SupplyLeg leg, bool fromBattery)
    {
        var line = y + 32;
        svg.Line(new(Trunk, line), new(BoxStart, line), leg.Gauge is null ? "edge dashed" : "edge");
        if (leg.FuseA is not null)
            DrawFuse(svg, new(Trunk + 40, line), upright: false);
        svg.Text(new(Label, line - 14), leg.FuseA is null && !fromBattery ? "no fuse of its own" : $"fuse: {Fuse(leg)}", "figure");
        svg.Text(new(Label, line + 20), Cable(leg), "label");
        if (fromBattery)
            svg.Text(new(Label, line + 37), Distance(leg), "label");
        svg.Box(BoxStart, y + 6, BoxEnd - BoxStart, 54, "key");
        svg.Text(new(BoxStart + 10, y + 27), Cut(Names.Short(leg.Name), 32), "figure");
        svg.Text(new(BoxStart + 10, y + 47), $"{Current(leg)}, loses {Show(leg.DropV, "V")}", "label");
        DrawGround(svg, new(BoxStart + 24, y + 60), leg);
    }

    private static void DrawFuse(SvgWriter svg, Spot at, bool upright)
    {
        var (width, height) = upright ? (12.0, 28.0) : (28.0, 12.0);
        svg.Box(at.X - (width / 2), at.Y - (height / 2), width, height, "key");
        svg.Line(upright ? new(at.X, at.Y - 14) : new(at.X - 14, at.Y), upright ? new(at.X, at.Y + 14) : new(at.X + 14, at.Y), "thin");
    }

    private static void DrawGround(SvgWriter svg, Spot at, SupplyLeg leg)
    {
        svg.Line(at, new(at.X, at.Y + 14), leg.GroundGauge is null ? "edge dashed" : "edge");
        for (var i = 0; i < 3; i++)
            svg.Line(new(at.X - 12 + (4 * i), at.Y + 14 + (4 * i)), new(at.X + 12 - (4 * i), at.Y + 14 + (4 * i)), "edge");
        svg.Text(new(at.X + 22, at.Y + 20), leg.GroundGauge is null ? "no ground cable" : $"ground {leg.GroundGauge}, {Show(leg.GroundLengthM, "m")}", "label");
    }

    private static string Fuse(SupplyLeg leg) => leg.FuseA is { } amperes ? Figures.Show(amperes, "A") : "none";

    private static string Distance(SupplyLeg leg) =>
        leg.FuseA is null ? "" : leg.FuseDistanceMm is { } mm ? $"{Figures.Show(mm, "mm")} from the battery" : "as near to the battery as can be";

    private static string Cable(SupplyLeg leg) =>
        leg.Gauge is null ? "no power cable" : $"{leg.Gauge}{(leg.CopperClad ? " copper-clad" : "")}, {Show(leg.LengthM, "m")}";

    private static string Current(SupplyLeg leg) => $"draws {Show(leg.DemandA, "A")}";

    private static string Show(double? value, string unit) => value is { } known ? Figures.Show(known, unit) : $"? {unit}";

    private static string Cut(string text, int letters) => text.Length <= letters ? text : text[..(letters - 1)] + "…";

    private static string Say(SupplyDiagram supply)
    {
        var text = supply.Main is { } main
            ? $"From the battery through a main fuse ({Fuse(main)}) and {Cable(main)} to {supply.Distribution ?? "no distribution block"}. "
            : "Each amplifier has its own cable from the battery. ";
        return text + string.Join(' ', supply.Legs.Select(l =>
            $"{l.Name}: fuse {Fuse(l)}, {Cable(l)}, {Current(l)}, loses {Show(l.DropV, "V")}, ground {l.GroundGauge ?? "none"}. Status: {l.Status.Word()}."));
    }
}
