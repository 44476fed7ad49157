using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// The gasket ring between the flange's front and the back of the door card. The card stands at a gap G before the panel; the ring's foot is the front of
/// the flange, at the radius R of its rim: t + f·cosθ ∓ R·sinθ before the panel, t being the spacer's thickness at its centre and f the flange's. So the
/// gap left for the ring runs from G − t − f·cosθ − R·sinθ, where the spacer is thick, to G − t − f·cosθ + R·sinθ, where it is thin; without tilt both are
/// one. What stands before the flange (surround, bridge) lies inside the ring and takes nothing from it. The ring has to be higher than the widest gap,
/// and must not be pressed below its compressed height in the narrowest. It has to stand on the flange, and outside of what moves: Sd is the area of a
/// piston as wide as the cone with half of its surround.
/// </summary>
internal static class GasketFacts
{
    private const string Calliper = "Measure with a calliper.";
    private const string Clay = "Put lumps of modelling clay on the flange, fit the door card, take it off again and measure their height.";

    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Truth(Subject.Position, "gasket_listed", "A gasket ring is on the list of the build."),
        Declare.Word(Subject.Position, "gasket_name", "Name of the gasket ring."),
        Length("gasket_free", "Height of the gasket ring before it is pressed."),
        Length("gasket_gap_widest", "Widest gap between the flange and the door card."),
        Length("gasket_gap_narrowest", "Narrowest gap between the flange and the door card."),
        Length("gasket_reach", "Height by which the gasket ring exceeds the widest gap; negative when it does not touch the door card."),
        Length("gasket_room", "Height that the narrowest gap exceeds the fully compressed ring; negative when the ring holds the door card off."),
        Declare.Truth(Subject.Position, "gasket_on_oval", "The flange under the gasket ring is oval."),
        Length("gasket_rest", "Width over which the gasket ring stands on the flange; negative when it lies outside of it."),
        Length("gasket_cone_clearance", "Distance from the gasket ring to the cone with half of its surround; negative when the ring lies on it."),
    ];

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { IsTweeter: false } || c.Cup is not null)
            return;
        var ring = c.Placed.Sundries.Find(s => s.Part.Type == "gasket-ring")?.Part;
        sheet.Set("gasket_listed", ring is not null);
        if (ring is null)
            return;
        sheet.Set("gasket_name", ring.Name);
        sheet.Set("gasket_free", Dimension.Metre, ring.FreeHeight?.Si);
        var widest = new Stack(Dimension.Metre);
        sheet.Set("gasket_gap_widest", widest.Of(Gap(c, widest, 1)));
        var narrowest = new Stack(Dimension.Metre);
        sheet.Set("gasket_gap_narrowest", narrowest.Of(Gap(c, narrowest, -1)));
        var reach = new Stack(Dimension.Metre);
        var (free, wide) = (reach.Need($"free height of {ring.Name}", Calliper, ring.FreeHeight), Gap(c, reach, 1));
        sheet.Set("gasket_reach", reach.Of(v => v[free] - wide(v)));
        var room = new Stack(Dimension.Metre);
        var (pressed, narrow) = (room.Need($"compressed height of {ring.Name}", "Press it between two boards and measure.", ring.CompressedHeight), Gap(c, room, -1));
        sheet.Set("gasket_room", room.Of(v => narrow(v) - v[pressed]));
        // Whether a round ring goes on an oval flange is for the eye.
        sheet.Set("gasket_on_oval", c.Driver.Oval);
        if (c.Driver.Oval)
            return;
        sheet.Set("gasket_rest", Rest(c, ring));
        sheet.Set("gasket_cone_clearance", ConeClearance(c, ring));
    }

    private static FactValue Rest(PositionContext c, Sundry ring)
    {
        var stack = new Stack(Dimension.Metre);
        var (inner, outer) = (stack.Need($"inner diameter of {ring.Name}", Calliper, ring.Inner), stack.Need($"outer diameter of {ring.Name}", Calliper, ring.Outer));
        var flange = stack.Need(c.OfDriver("flange diameter"), Calliper, c.Size?.Flange);
        return stack.Of(v => (Math.Min(v[outer], v[flange]) - v[inner]) / 2);
    }

    private static FactValue ConeClearance(PositionContext c, Sundry ring)
    {
        var stack = new Stack(Dimension.Metre);
        var inner = stack.Need($"inner diameter of {ring.Name}", Calliper, ring.Inner);
        if (c.Driver?.Parameters?.Sd is { Si: > 0 } piston)
        {
            var area = stack.Need(c.OfDriver("effective area"), Calliper, piston);
            return stack.Of(v => (v[inner] / 2) - Math.Sqrt(v[area] / Math.PI));
        }
        var moving = stack.Need(c.OfDriver("diameter of the cone with half of its surround"), Calliper, null);
        return stack.Of(v => (v[inner] - v[moving]) / 2);
    }

    private static Func<double[], double> Gap(PositionContext c, Stack stack, int side)
    {
        var card = stack.Need(c.AtPosition("gap from the panel to the back of the door card"), Clay, c.Position.Mounting.DoorCardGap);
        var thickness = c.Adapter is { } adapter ? stack.Need("thickness of the spacer", Calliper, adapter.Thickness) : stack.Optional("", Calliper, null, 0);
        var flange = stack.Need(c.OfDriver("flange thickness"), Calliper, c.Size?.FlangeThickness);
        if (c.Adapter?.Tilt is not { Si: not 0 } angle)
            return v => v[card] - v[thickness] - v[flange];
        var tilt = stack.Need("tilt of the spacer", Calliper, angle);
        var rim = stack.Need(c.OfDriver("flange diameter"), Calliper, c.Size?.Flange);
        return v => v[card] - v[thickness] - (v[flange] * Math.Cos(v[tilt])) + (side * v[rim] / 2 * Math.Sin(Math.Abs(v[tilt])));
    }

    private static FactDeclaration Length(string name, string meaning) => Declare.Number(Subject.Position, name, Dimension.Metre, meaning);
}
