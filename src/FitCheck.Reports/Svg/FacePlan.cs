using FitCheck.Drawings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg;

/// <summary>
/// The face of one position seen from the listener: clock ticks around it, the screw holes that meet as filled dots, those to drill as
/// crosses, and an arrow toward the hour to which a tilted spacer looks.
/// </summary>
internal static class FacePlan
{
    private const double Face = 70;
    private const double Centre = Face + 28;
    private const double Words = 2 * Centre + 8;
    private const double LineHeight = 14.5;

    /// <summary>The drawing; null when it would show no hole.</summary>
    public static SafeHtml? Draw(string id, PositionDrawing position)
    {
        if (position.Face is not { Panel.Count: > 0 } face || Largest(face) is not (> 0 and < 1e4 and var largest))
            return null;
        var scale = Face / largest;
        var sentences = Legend(position, face).ToList();
        string[] legend = [.. Lettering.Lines(string.Join(' ', sentences), SectionPaper.Width - Words - 2, Lettering.Label)];
        var height = Math.Max(2 * Centre, (legend.Length * LineHeight) + 8);
        using var svg = new SvgWriter(id, "drawing", SectionPaper.Width, height, $"Screw holes of {position.Name}, seen from the listener",
            string.Join(" ", sentences));
        foreach (var (radius, style, _) in Rings(face))
            Ring(svg, radius * scale, style);
        DrawClock(svg);
        DrawAim(svg, face);
        foreach (var hole in face.Driver)
            DrawHole(svg, hole, scale, 3);
        foreach (var hole in face.Panel)
            DrawHole(svg, hole, scale, 5);
        for (var i = 0; i < legend.Length; i++)
            svg.Text(new(Words, (height / 2) + 4 + (LineHeight * (i - ((legend.Length - 1) / 2.0)))), legend[i], "label");
        return svg.Finish();
    }

    private static double Largest(FaceDrawing face)
    {
        var holes = face.Panel.Max(h => h.Radius) * 1.06;
        return Rings(face).Select(r => r.Radius).Append(double.IsFinite(holes) ? holes : 0).Max();
    }

    // What is round. The way in which an oval lies is in no catalog.
    private static IEnumerable<(double Radius, string Style, string Told)> Rings(FaceDrawing face)
    {
        (double? Radius, string Style, string Told)[] all =
        [
            (face.IsOval ? null : face.SpacerRadius, "edge", "full line: spacer"),
            (face.IsDriverOval ? null : face.FlangeRadius, "thin", "thin: flange"),
            (face.IsOval ? null : face.CutoutRadius, "thin dashed", "dashed: hole in the panel"),
        ];
        foreach (var (radius, style, told) in all)
        {
            if (radius is > 0 and < 1e4 and { } known)
                yield return (known, style, told);
        }
    }

    private static IEnumerable<string> Legend(PositionDrawing position, FaceDrawing face)
    {
        var part = position.AdapterName is null ? "driver" : "spacer";
        yield return Line($"Large: the panel's {Count(face.Panel.Count)}", face.Panel, part);
        if (face.Driver.Count > 0)
            yield return Line($"Small: the driver's {Count(face.Driver.Count)}", face.Driver, "spacer");
        if (face.AimHour is { } hour && double.IsFinite(hour))
            yield return $"Arrow: the sound is aimed at {Clock(hour)}, {Figures.Show(face.TiltDeg, "deg")} off the panel; the thick "
                + $"edge is opposite.";
        var rings = string.Join("; ", Rings(face).Select(r => r.Told));
        yield return $"{(rings.Length > 0 ? $"{char.ToUpperInvariant(rings[0])}{rings[1..]}. " : "")}As seen by the listener.";
        if (face.IsOval || face.IsDriverOval)
            yield return "Oval outlines are not drawn.";
    }

    private static string Line(string what, IReadOnlyList<DrawnHole> holes, string part)
    {
        var missed = holes.Where(h => !h.Meets).Select(h => Degrees(h.AngleDeg)).Order().ToList();
        return missed.Count == 0 ? $"{what}, all meet the {part}."
            : $"{what}; crosses meet none in the {part}: {string.Join(", ", missed.Select(d => Clock(d / 30)))}.";
    }

    private static string Count(int holes) => holes == 1 ? "hole" : $"{Figures.Whole(holes)} holes";

    private static void DrawClock(SvgWriter svg)
    {
        for (var hour = 1; hour <= 12; hour++)
        {
            svg.Line(At(hour * 30, Face + 4), At(hour * 30, Face + (hour % 3 == 0 ? 11 : 8)), "thin");
            if (hour % 3 == 0)
            {
                var spot = At(hour * 30, Face + 19);
                svg.Text(new(spot.X, spot.Y + 4), Figures.Whole(hour), "tick", Anchor.Middle);
            }
        }
        svg.Line(At(0, 6), At(180, 6), "thin");
        svg.Line(At(90, 6), At(270, 6), "thin");
    }

    private static void DrawAim(SvgWriter svg, FaceDrawing face)
    {
        if (face.AimHour is not { } hour || !double.IsFinite(hour))
            return;
        var (sin, cos) = Math.SinCos(hour * Math.PI / 6);
        svg.Line(new(Centre, Centre), At(hour * 30, 40), "edge");
        svg.Arrow(At(hour * 30, 46), sin, -cos, "head");
    }

    private static void DrawHole(SvgWriter svg, DrawnHole hole, double scale, double size)
    {
        if (!double.IsFinite(hole.AngleDeg) || !double.IsFinite(hole.Radius))
            return;
        var spot = At(hole.AngleDeg, hole.Radius * scale);
        if (hole.Meets)
        {
            svg.Dot(spot, size, "edge solid");
            return;
        }
        svg.Line(new(spot.X - size, spot.Y - size), new(spot.X + size, spot.Y + size), "clash");
        svg.Line(new(spot.X - size, spot.Y + size), new(spot.X + size, spot.Y - size), "clash");
    }

    // A circle as a ring of short lines: a dot would be filled.
    private static void Ring(SvgWriter svg, double radius, string style) =>
        svg.Shape(Enumerable.Range(0, 72).Select(i => At(i * 5, radius)), style);

    private static Spot At(double degrees, double radius)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(Centre + (radius * sin), Centre - (radius * cos));
    }

    private static double Degrees(double angle) => angle - (Math.Floor(angle / 360) * 360);

    /// <summary>An hour as it is read off a clock face: `10:30`.</summary>
    public static string Clock(double hour)
    {
        var minutes = (int)Math.Round(hour * 60, MidpointRounding.AwayFromZero) % 720;
        return $"{Figures.Whole(minutes < 60 ? 12 : minutes / 60)}:{Figures.Whole(minutes % 60).PadLeft(2, '0')}";
    }
}
