using FitCheck.Drawings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>A hole pattern at full size, in millimetres of paper, with a ruler that proves it.</summary>
internal static class HoleTemplate
{
    // What A4 and Letter both have between margins of 10 mm, less a hair, so that no printer makes it smaller.
    private const double Width = 189, Centre = Width / 2, LongestRadius = 94, RulerLength = 100, Head = 18;

    public static bool FitsOnPaper(HolePlace place) => Radius(place) is > 0 and <= LongestRadius;

    /// <summary>The page for places of one pattern.</summary>
    public static TemplateView Of(string id, string number, string name, IReadOnlyList<HolePlace> places)
    {
        var (face, radius) = (places[0].Face, Radius(places[0]));
        var middle = new Spot(Centre, Head + radius + 1);
        using var svg = new SvgWriter($"{id}-drawing", "template-drawing", Width, middle.Y + radius + 2,
            $"Hole and screw template of {name}, full size", null, "mm");
        DrawRuler(svg);
        DrawAxes(svg, middle, radius);
        if (!face.IsOval)
        {
            Ring(svg, middle, face.SpacerRadius, "outline");
            Ring(svg, middle, face.CutoutRadius, "there");
        }
        if (!face.IsDriverOval)
            Ring(svg, middle, places[0].HoleNeeded / 2, places[0].Grows ? "cut" : "needed");
        foreach (var hole in face.Driver)
            DrawHole(svg, middle, hole, 2.5, null);
        foreach (var hole in face.Panel)
            DrawHole(svg, middle, hole, 4, face.PanelScrew / 2);
        var aims = places.Where(p => p.Face.AimHour is not null).Select(p => (p.Name, Hour: p.Face.AimHour!.Value)).ToList();
        for (var i = 0; i < aims.Count; i++)
            DrawThickSide(svg, middle, radius, aims[i].Hour, i);
        return new TemplateView(id, number, name, svg.Finish(), [.. Legend(places[0], aims)]);
    }

    /// <summary>Hours on a clock face: `1:30, 4:30`.</summary>
    public static string Hours(IEnumerable<DrawnHole> holes) =>
        string.Join(", ", holes.Select(h => Turned(h.AngleDeg)).Order().Select(d => FacePlan.Clock(d / 30)));

    /// <summary>Degrees from 0 to below 360.</summary>
    public static double Turned(double degrees)
    {
        var turned = Math.Round(degrees - (Math.Floor(degrees / 360) * 360), 3);
        return turned >= 360 ? 0 : turned;
    }

    private static double Radius(HolePlace place)
    {
        var face = place.Face;
        double?[] round = face.IsOval ? [] : [face.SpacerRadius, face.CutoutRadius];
        double?[] all = [.. round, face.IsDriverOval ? null : place.HoleNeeded / 2,
            .. face.Panel.Concat(face.Driver).Select(h => h.Radius + 4)];
        return Array.TrueForAll(all, r => r is null || double.IsFinite(r.Value)) ? all.Max() ?? double.NaN : double.NaN;
    }

    private static IEnumerable<string> Legend(HolePlace place, List<(string Name, double Hour)> aims)
    {
        var face = place.Face;
        yield return $"Large crosses: screw holes of the panel, circle of {Figures.Show(2 * face.Panel[0].Radius, "mm")}, at "
            + $"{Hours(face.Panel)}{(face.PanelScrew is { } screw ? $", for screws of {Figures.Sized(screw, orMore: true)}" : "")}.";
        if (face.Driver.Count > 0)
            yield return $"Small crosses: screw holes of the driver on the face of the spacer, circle of "
                + $"{Figures.Show(2 * face.Driver[0].Radius, "mm")}, at {Hours(face.Driver)}.";
        foreach (var (what, holes) in new[] { ("panel", face.Panel), ("driver", face.Driver) })
        {
            if (holes.Where(h => !h.Meets).ToList() is { Count: > 0 } missed)
                yield return $"With a square: no hole of the other part lies there; drill a pilot hole for the {what}'s screws at "
                    + $"{Hours(missed)}.";
        }
        if (face.IsOval)
            yield return "Hole or spacer is oval: take its outline from the part, not from this sheet.";
        else if (face.CutoutRadius is { } there)
            yield return $"Dashed: the hole that is there, {Figures.Show(2 * there, "mm")}."
                + $"{(face.SpacerRadius is { } spacer ? $" Outer line: rim of the spacer, {Figures.Show(2 * spacer, "mm")}." : "")}";
        if (!face.IsDriverOval && place.HoleNeeded is { } needed)
            yield return $"{(place.Grows ? "Thick: cut the hole to" : "Thin: the driver needs")} {Figures.Sized(needed, orMore: true)}.";
        for (var i = 0; i < aims.Count; i++)
            yield return $"Arrow {Letter(i)}: thick side of the spacer, {aims[i].Name}, at {FacePlan.Clock(Opposite(aims[i].Hour))}.";
    }

    private static void DrawRuler(SvgWriter svg)
    {
        const double Left = (Width - RulerLength) / 2, Line = 12;
        svg.Line(new(Left, Line), new(Left + RulerLength, Line), "ruler");
        for (var mm = 0; mm <= RulerLength; mm += 5)
            svg.Line(new(Left + mm, Line), new(Left + mm, Line - (mm % 50 == 0 ? 4 : mm % 10 == 0 ? 3 : 1.5)), "tick");
        for (var inches = 1; inches <= 3 && Lengths.Told != LengthUnits.Millimetre; inches++)
        {
            var at = Left + (inches * Lengths.Inch * 1000);
            svg.Line(new(at, Line), new(at, Line + 3), "tick");
            svg.Text(new(at, Line + 7), $"{Figures.Whole(inches)} in", "scale", Anchor.Middle);
        }
        foreach (var mm in (ReadOnlySpan<int>)[0, 50, 100])
            svg.Text(new(Left + mm, Line - 5.5), mm == 100 ? "100 mm" : Figures.Whole(mm), "scale", Anchor.Middle);
    }

    private static void DrawAxes(SvgWriter svg, Spot middle, double radius)
    {
        svg.Line(new(middle.X - radius, middle.Y), new(middle.X + radius, middle.Y), "axis");
        svg.Line(new(middle.X, middle.Y - radius), new(middle.X, middle.Y + radius), "axis");
        for (var hour = 3; hour <= 12; hour += 3)
        {
            var spot = At(middle, hour * 30, radius * 0.42);
            svg.Text(new(spot.X + 1.5, spot.Y - 1.5), hour == 12 ? "12 (top)" : Figures.Whole(hour), "scale");
        }
    }

    private static void DrawHole(SvgWriter svg, Spot middle, DrawnHole hole, double arm, double? screw)
    {
        var at = At(middle, hole.AngleDeg, hole.Radius);
        svg.Line(new(at.X - arm, at.Y), new(at.X + arm, at.Y), "cross");
        svg.Line(new(at.X, at.Y - arm), new(at.X, at.Y + arm), "cross");
        Ring(svg, at, screw, "outline");
        if (!hole.Meets)
            svg.Box(at.X - arm, at.Y - arm, 2 * arm, 2 * arm, "drill");
    }

    private static void DrawThickSide(SvgWriter svg, Spot middle, double radius, double aim, int index)
    {
        var (sin, cos) = Math.SinCos(Opposite(aim) * Math.PI / 6);
        var (from, tip) = (At(middle, Opposite(aim) * 30, radius * 0.18), At(middle, Opposite(aim) * 30, radius * 0.55));
        svg.Line(from, tip, "cross");
        svg.Arrow(tip, sin, -cos, "arrow");
        var beyond = At(middle, Opposite(aim) * 30, radius * 0.6);
        svg.Text(new(beyond.X - 1, beyond.Y + 2.5), Letter(index), "scale");
    }

    private static void Ring(SvgWriter svg, Spot middle, double? radius, string style)
    {
        if (radius is > 0 and { } known && double.IsFinite(known))
            svg.Dot(middle, known, style);
    }

    private static Spot At(Spot middle, double degrees, double radius)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(middle.X + (radius * sin), middle.Y - (radius * cos));
    }

    private static double Opposite(double hour) => hour >= 6 ? hour - 6 : hour + 6;

    private static string Letter(int index) => ((char)('A' + index)).ToString();
}
