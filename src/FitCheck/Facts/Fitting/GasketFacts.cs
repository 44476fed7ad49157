using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// The gasket ring between the flange's front and the back of the door card. The card stands at a gap G before the panel; the ring's foot
/// is the front of the flange, at the radius R of its rim: t + f·cosθ ∓ R·sinθ before the panel, t being the spacer's thickness at its
/// centre and f the flange's. So the gap left for the ring runs from G − t − f·cosθ − R·sinθ, where the spacer is thick, to G − t − f·cosθ
/// + R·sinθ, where it is thin; without tilt both are one. What stands before the flange (surround, bridge) lies inside the ring and takes
/// nothing from it. The ring has to be higher than the widest gap, and must not be pressed below its compressed height in the narrowest. It
/// has to stand on the flange, and outside of what moves: Sd is the area of a piston as wide as the cone with half of its surround.
/// </summary>
internal static class GasketFacts
{
    private const string Calliper = "Measure with a calliper.";
    private const string Clay = "Put lumps of modelling clay on the flange, fit the door card, take it off again and measure their height.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact GasketListed = Declarations.Truth(
        "gasket_listed", "A gasket ring is on the list of the build.",
        Reads.Gasket.Itself, Reads.Driver.Itself, Reads.Cup.Itself)
        .Saying("no gasket ring");
    public static readonly WordFact GasketName = Declarations.Word(
        "gasket_name", "Name of the gasket ring.",
        Reads.Gasket.Itself, Reads.Driver.Itself, Reads.Cup.Itself);
    public static readonly NumberFact GasketFree = Declarations.Number(
        "gasket_free", Dimension.Metre, "Height of the gasket ring before it is pressed.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter.Itself, Reads.Cup.Itself, Reads.Place.Itself, Reads.Gasket["free_height"]);
    public static readonly NumberFact GasketGapWidest = Declarations.Number(
        "gasket_gap_widest", Dimension.Metre, "Widest gap between the flange and the door card.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_thickness"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.door_card_gap"], Reads.Gasket.Itself);
    public static readonly NumberFact GasketGapNarrowest = Declarations.Number(
        "gasket_gap_narrowest", Dimension.Metre, "Narrowest gap between the flange and the door card.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_thickness"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.door_card_gap"], Reads.Gasket.Itself);
    public static readonly NumberFact GasketReach = Declarations.Number(
        "gasket_reach", Dimension.Metre,
        "Height by which the gasket ring exceeds the widest gap; negative when it does not touch the door card.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_thickness"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.door_card_gap"], Reads.Gasket["free_height"]);
    public static readonly NumberFact GasketRoom = Declarations.Number(
        "gasket_room", Dimension.Metre,
        "Height that the narrowest gap exceeds the fully compressed ring; negative when the ring holds the door card off.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_thickness"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.door_card_gap"], Reads.Gasket["compressed_height"]);
    public static readonly TruthFact GasketOnOval = Declarations.Truth(
        "gasket_on_oval", "The flange under the gasket ring is oval.",
        Reads.Gasket.Itself, Reads.Driver.Itself, Reads.Cup.Itself)
        .Saying("round", "oval flange");
    public static readonly NumberFact GasketRest = Declarations.Number(
        "gasket_rest", Dimension.Metre, "Width over which the gasket ring stands on the flange; negative when it lies outside of it.",
        Reads.Gasket["inner", "outer"], Reads.Driver["dimensions.flange"], Reads.Cup.Itself);
    public static readonly NumberFact GasketConeClearance = Declarations.Number(
        "gasket_cone_clearance", Dimension.Metre,
        "Distance from the gasket ring to the cone with half of its surround; negative when the ring lies on it.",
        Reads.Gasket["inner"], Reads.Driver["parameters.sd"], Reads.Cup.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { IsTweeter: false } || c.Cup is not null)
            return;
        var ring = c.Placed.Sundries.Find(s => s.Part.Type == "gasket-ring")?.Part;
        sheet.Set(GasketListed, ring is not null);
        if (ring is null)
            return;
        sheet.Set(GasketName, SpokenName.Of(ring.Name));
        sheet.Set(GasketFree, ring.FreeHeight?.Si);
        var widest = new Stack(Dimension.Metre);
        sheet.Set(GasketGapWidest, widest.Of(Gap(c, widest, 1)));
        var narrowest = new Stack(Dimension.Metre);
        sheet.Set(GasketGapNarrowest, narrowest.Of(Gap(c, narrowest, -1)));
        var reach = new Stack(Dimension.Metre);
        var (free, wide) = (reach.Need($"free height of {ring.Name}", Calliper, ring.FreeHeight,
            DatumKey.In(ring, "free_height")), Gap(c, reach, 1));
        sheet.Set(GasketReach, reach.Of(v => v[free] - wide(v)));
        var room = new Stack(Dimension.Metre);
        var (pressed, narrow) =
            (room.Need($"compressed height of {ring.Name}", "Press it between two boards and measure.", ring.CompressedHeight,
                DatumKey.In(ring, "compressed_height")),
                Gap(c, room, -1));
        sheet.Set(GasketRoom, room.Of(v => narrow(v) - v[pressed]));
        // Whether a round ring goes on an oval flange is for the eye.
        sheet.Set(GasketOnOval, c.Driver.Oval);
        if (c.Driver.Oval)
            return;
        sheet.Set(GasketRest, Rest(c, ring));
        sheet.Set(GasketConeClearance, ConeClearance(c, ring));
    }

    private static FactValue Rest(PositionContext c, Sundry ring)
    {
        var stack = new Stack(Dimension.Metre);
        var (inner, outer) =
            (stack.Need($"inner diameter of {ring.Name}", Calliper, ring.Inner, DatumKey.In(ring, "inner")),
                stack.Need($"outer diameter of {ring.Name}", Calliper, ring.Outer, DatumKey.In(ring, "outer")));
        var flange = stack.Need(c.OfDriver("flange diameter"), Calliper, c.Size?.Flange, DatumKey.In(c.Driver, "dimensions.flange"));
        return stack.Of(v => (Math.Min(v[outer], v[flange]) - v[inner]) / 2);
    }

    private static FactValue ConeClearance(PositionContext c, Sundry ring)
    {
        var stack = new Stack(Dimension.Metre);
        var inner = stack.Need($"inner diameter of {ring.Name}", Calliper, ring.Inner, DatumKey.In(ring, "inner"));
        var area = stack.Need(c.OfDriver("effective area (Sd)"),
            "Measure the cone across, with half of its surround on both sides: Sd is 0.785 times the square of that.",
            c.Driver?.Parameters?.Sd, Dimension.SquareMetre, DatumKey.In(c.Driver, "parameters.sd"));
        return stack.Of(v => (v[inner] / 2) - Math.Sqrt(v[area] / Math.PI));
    }

    private static Func<double[], double> Gap(PositionContext c, Stack stack, int side)
    {
        var card = stack.Need(c.AtPosition("gap from the panel to the back of the door card"), Clay, c.Position.Mounting.DoorCardGap,
            c.Here("mounting.door_card_gap"));
        var thickness = c.Adapter is { } adapter ? stack.Need("thickness of the spacer", Calliper, adapter.Thickness,
            DatumKey.In(adapter, "thickness"))
            : stack.Optional("", Calliper, null, 0);
        var flange = stack.Need(c.OfDriver("flange thickness"), Calliper, c.Size?.FlangeThickness,
            DatumKey.In(c.Driver, "dimensions.flange_thickness"));
        if (c.Adapter is null or { Tilt.Si: 0 })
            return v => v[card] - v[thickness] - v[flange];
        var tilt = stack.Need("tilt of the spacer", ScrewFacts.TwoHeights, c.Adapter.Tilt, Dimension.Radian,
            DatumKey.In(c.Adapter, "tilt"));
        var rim = stack.Need(c.OfDriver("flange diameter"), Calliper, c.Size?.Flange, DatumKey.In(c.Driver, "dimensions.flange"));
        return v => v[card] - v[thickness] - (v[flange] * Math.Cos(v[tilt])) + (side * v[rim] / 2 * Math.Sin(Math.Abs(v[tilt])));
    }
}
