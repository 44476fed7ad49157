using FitCheck.Reports.Markup;
using FitCheck.Reports.Svg;

namespace FitCheck.Reports.Measuring;

/// <summary>
/// Where the calliper goes: a place in section, a driver, a spacer and a cup from the side. Each length has a letter, which the rows of the
/// card name. The drawings are to no scale.
/// </summary>
internal static class CardFigures
{
    // What each letter is read of; a key may begin with one of these, and an oval's short axis is read at the same place.
    private static readonly (string Kind, string Of, string Letter)[] Letters =
    [
        ("position", "mounting.cutout", "A"), ("position", "mounting.largest_cutout", "A"), ("position", "mounting.recess", "B"),
        ("position", "mounting.panel_thickness", "C"), ("position", "mounting.depth", "D"), ("position", "mounting.obstructions", "E"),
        ("position", "mounting.grille_gap", "F"), ("position", "mounting.door_card_gap", "G"), ("position", "mounting.holes", "H"),
        ("position", "connector.distance", "J"),
        ("driver", "dimensions.depth", "K"), ("driver", "dimensions.flange_thickness", "P"), ("driver", "dimensions.flange", "L"),
        ("driver", "dimensions.cutout", "M"), ("driver", "dimensions.magnet_diameter", "N"), ("driver", "dimensions.front_height", "Q"),
        ("driver", "dimensions.magnet_height", "R"), ("driver", "holes", "S"),
        ("adapter", "thickness", "T"), ("adapter", "opening", "U"), ("adapter", "outer", "V"), ("adapter", "boss_depth", "W"),
        ("cup", "hole", "X"), ("cup", "depth", "Y"), ("cup", "outer", "Z"),
    ];

    /// <summary>The letter of a datum on its drawing; null where none shows it.</summary>
    public static string? LetterOf(string kind, string of) =>
        Array.Find(Letters, l => l.Kind == kind && of.StartsWith(l.Of, StringComparison.Ordinal)).Letter;

    /// <summary>The drawings that have one of these letters.</summary>
    public static IReadOnlyList<SafeHtml> With(IReadOnlySet<string> letters)
    {
        var drawings = new List<SafeHtml>();
        foreach (var (kind, draw) in new (string, Func<SafeHtml>)[] { ("position", Place), ("driver", Driver), ("adapter", Mounts) })
        {
            if (Letters.Any(l => (l.Kind == kind || (kind == "adapter" && l.Kind == "cup")) && letters.Contains(l.Letter)))
                drawings.Add(draw());
        }
        return drawings;
    }

    private static SafeHtml Place()
    {
        using var svg = new SvgWriter("place", "figure", 320, 214, "A place in section, from the cabin on the left to the outside",
            "A: hole in the panel. B: recess. C: thickness of the panel. D: free depth. E: depth to the glass. F: gap to the grille. "
                + "G: gap to the door card. H: circle of the screws. J: from the plug to the terminals.");
        svg.Hatch("metal", 4, "thin");
        // Door card with its grille, the panel with a recess around its hole, the glass and a bar behind it.
        svg.Shape([new(52, 14), new(60, 14), new(60, 56), new(52, 56)], "solid");
        svg.Shape([new(52, 156), new(60, 156), new(60, 200), new(52, 200)], "solid");
        for (var y = 60; y < 156; y += 8)
            svg.Line(new(54, y), new(54, y + 4), "solid");
        svg.Shape([new(124, 14), new(130, 14), new(130, 62), new(124, 62)], "solid", fill: svg.Fill("metal"));
        svg.Shape([new(124, 150), new(130, 150), new(130, 200), new(124, 200)], "solid", fill: svg.Fill("metal"));
        svg.Shape([new(124, 44), new(117, 44), new(117, 38), new(124, 38)], "solid");
        svg.Shape([new(124, 168), new(117, 168), new(117, 174), new(124, 174)], "solid");
        svg.Line(new(222, 14), new(222, 186), "glass");
        svg.Box(262, 118, 14, 40, "solid", svg.Fill("metal"));
        svg.Text(new(48, 10), "card and grille", "label", Anchor.Middle);
        svg.Text(new(127, 10), "panel", "label", Anchor.Middle);
        svg.Text(new(222, 10), "glass, down", "label", Anchor.Middle);
        svg.Text(new(269, 112), "bar, rail", "label", Anchor.Middle);
        Upright(svg, 140, 62, 150, "A");
        Upright(svg, 108, 44, 168, "B", before: true, high: true);
        Upright(svg, 158, 53, 159, "H");
        svg.Line(new(120, 53), new(162, 53), "axis");
        svg.Line(new(120, 159), new(162, 159), "axis");
        Level(svg, 26, 124, 130, "C", outside: true);
        Level(svg, 138, 124, 262, "D", from: 0.86);
        Level(svg, 84, 124, 222, "E", from: 0.6);
        Level(svg, 104, 55, 124, "F", from: 0.35);
        Level(svg, 186, 60, 124, "G", from: 0.45);
        svg.Shape([new(174, 197), new(162, 208), new(146, 206), new(138, 190), new(132, 152)], "cord", closed: false);
        svg.Box(174, 191, 12, 12, "solid");
        svg.Text(new(190, 202), "J", "letter");
        svg.Text(new(203, 201), "lead, pulled to the hole", "label");
        return svg.Finish();
    }

    private static SafeHtml Driver()
    {
        using var svg = new SvgWriter("driver", "figure", 230, 214, "A driver from the side",
            "K: mounting depth. L: flange. M: basket behind the flange. N: magnet. P: thickness of the flange. Q: height before it. "
                + "R: height of the magnet. S: circle of the screws.");
        svg.Shape([new(70, 30), new(77, 30), new(77, 184), new(70, 184)], "solid");
        svg.Shape([new(77, 46), new(92, 46), new(140, 74), new(140, 140), new(92, 168), new(77, 168)], "solid");
        svg.Shape([new(140, 62), new(168, 62), new(168, 152), new(140, 152)], "solid");
        svg.Shape([new(70, 92), new(58, 100), new(58, 114), new(70, 122)], "solid");
        Upright(svg, 40, 30, 184, "L", before: true);
        Upright(svg, 52, 38, 176, "S", before: true, high: true);
        svg.Line(new(50, 38), new(82, 38), "axis");
        svg.Line(new(50, 176), new(82, 176), "axis");
        Upright(svg, 84, 46, 168, "M");
        Upright(svg, 180, 62, 152, "N");
        Level(svg, 198, 77, 168, "K");
        Level(svg, 22, 70, 77, "P", outside: true);
        Level(svg, 107, 58, 70, "Q", outside: true);
        Level(svg, 54, 140, 168, "R");
        return svg.Finish();
    }

    private static SafeHtml Mounts()
    {
        using var svg = new SvgWriter("mounts", "figure", 250, 214, "A spacer and a tweeter's cup in section",
            "T: thickness of the spacer. U: opening. V: outer diameter. W: depth of its screw bosses. X: hole of the cup. Y: depth. "
                + "Z: outer diameter.");
        svg.Hatch("stuff", 4, "thin");
        svg.Shape([new(50, 24), new(74, 24), new(74, 58), new(50, 58)], "solid", fill: svg.Fill("stuff"));
        svg.Shape([new(50, 152), new(74, 152), new(74, 186), new(50, 186)], "solid", fill: svg.Fill("stuff"));
        svg.Box(50, 38, 16, 5, "gap");
        Upright(svg, 84, 58, 152, "U");
        Upright(svg, 34, 24, 186, "V", before: true);
        Level(svg, 200, 50, 74, "T");
        Level(svg, 16, 50, 66, "W");
        svg.Shape([new(150, 50), new(154, 50), new(154, 74), new(196, 74), new(196, 136), new(154, 136), new(154, 160), new(150, 160)],
            "solid", closed: false);
        Upright(svg, 164, 74, 136, "X");
        Upright(svg, 138, 50, 160, "Z", before: true);
        Level(svg, 176, 150, 196, "Y");
        return svg.Finish();
    }

    // A length that stands upright, between the jaws of a calliper.
    private static void Upright(SvgWriter svg, double x, double top, double bottom, string letter, bool before = false, bool high = false)
    {
        svg.Line(new(x, top), new(x, bottom), "dim");
        svg.Line(new(x - 5, top), new(x + 5, top), "jaw");
        svg.Line(new(x - 5, bottom), new(x + 5, bottom), "jaw");
        svg.Arrow(new(x, top), 0, -1, "arrow");
        svg.Arrow(new(x, bottom), 0, 1, "arrow");
        svg.Text(new(before ? x - 4 : x + 4, high ? top + 24 : ((top + bottom) / 2) + 4), letter, "letter",
            before ? Anchor.End : Anchor.Start);
    }

    // A length that lies level; a short one has its arrows outside.
    private static void Level(SvgWriter svg, double y, double left, double right, string letter, double from = 0.5, bool outside = false)
    {
        svg.Line(new(outside ? left - 12 : left, y), new(outside ? right + 12 : right, y), "dim");
        svg.Line(new(left, y - 5), new(left, y + 5), "jaw");
        svg.Line(new(right, y - 5), new(right, y + 5), "jaw");
        svg.Arrow(new(left, y), outside ? 1 : -1, 0, "arrow");
        svg.Arrow(new(right, y), outside ? -1 : 1, 0, "arrow");
        svg.Text(outside ? new(right + 14, y + 4) : new(left + ((right - left) * from), y - 4), letter, "letter",
            outside ? Anchor.Start : Anchor.Middle);
    }
}
