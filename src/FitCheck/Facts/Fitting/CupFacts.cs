using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using Formulas = FitCheck.Facts.Fitting.CupFormulas<FitCheck.Facts.Fitting.PositionLengths, FitCheck.Facts.Fitting.StackedLength>;

namespace FitCheck.Facts.Fitting;

/// <summary>The tweeter in its cup: hole, wall, depth, grille, and room for the crossover module.</summary>
internal static class CupFacts
{
    private const string Calliper = "Measure with a calliper.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact CupHoleGap = Declarations.Number(
        "cup_hole_gap", Dimension.Metre,
        "Diameter that the cup's hole has to spare around the tweeter's body; negative when it must be enlarged.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Cup["hole"]);
    public static readonly NumberFact CupWallLeft = Declarations.Number(
        "cup_wall_left", Dimension.Metre, "Wall that is left of the cup when its hole is enlarged to the tweeter's body.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Cup["outer"]);
    public static readonly TruthFact CupCuttable = Declarations.Truth(
        "cup_cuttable", "The cup is of a material that can be cut or filed.",
        Reads.Cup["cuttable"], Reads.DriverThere.Itself)
        .Saying("cup can't be cut", "cup can be cut");
    public static readonly NumberFact CupDepthMargin = Declarations.Number(
        "cup_depth_margin", Dimension.Metre, "Depth that the cup has to spare behind the tweeter.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.depth"], Reads.Cup["depth"]);
    public static readonly NumberFact CupGrilleMargin = Declarations.Number(
        "cup_grille_margin", Dimension.Metre, "Clearance between the tweeter's front and the cup's grille.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.front_height"], Reads.Cup["grille_gap"]);
    public static readonly TruthFact HasModule = Declarations.Truth(
        "has_module", "A crossover module is to lie at this position.",
        Reads.Module.Itself)
        .Saying("no crossover module here");
    public static readonly NumberFact ModuleRoomMargin = Declarations.Number(
        "module_room_margin", Dimension.Metre, "Least length to spare around the crossover module with its cable bend.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Cup["module_room"], Reads.Place.Itself, Reads.Module["box"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        sheet.Set(HasModule, c.Placed.Module is not null);
        if (c.Placed.Module is { } module)
            sheet.Set(ModuleRoomMargin, ModuleRoom(c, module.Part));
        if (c.Cup is not { } cup || c.Driver is null)
            return;
        var lengths = new PositionLengths(c);
        sheet.Set(CupHoleGap, Formulas.HoleGap(lengths).ToFact());
        sheet.Set(CupWallLeft, Formulas.WallLeft(lengths).ToFact());
        sheet.Set(CupCuttable, cup.Cuttable,
            new Unsure("material of the cup", "Ask the maker whether the cup may be cut, or look for the mark on its back.",
                Estimated: false)
            { Key = DatumKey.In(cup, "cuttable") });
        sheet.Set(CupDepthMargin, Formulas.DepthMargin(lengths).ToFact());
        sheet.Set(CupGrilleMargin, Formulas.GrilleMargin(lengths).ToFact());
    }

    // Both boxes turned so that their longest sides lie along each other: if they don't fit so, they fit no other way square on.
    private static FactValue ModuleRoom(PositionContext c, Crossover module)
    {
        var room = c.Cup is { ModuleRoom.Count: 3 } cup ? cup.ModuleRoom : c.Position.Mounting.ModuleRoom;
        var stack = new Stack(Dimension.Metre);
        var how = "Measure length, width and height of the free space beside the tweeter.";
        var there = Enumerable.Range(0, 3)
            .Select(i =>
            stack.Need(c.AtPosition("room for the crossover module"), how,
                room.Count == 3 ? room.OrderByDescending(r => r.Si).ElementAt(i) : null)).ToArray();
        var box = Enumerable.Range(0, 3)
            .Select(i =>
            stack.Need($"size of {module.Name}", Calliper,
                module.Box.Count == 3 ? module.Box.OrderByDescending(r => r.Si).ElementAt(i) : null)).ToArray();
        return stack.Of(v => Enumerable.Range(0, 3).Min(i => v[there[i]] - v[box[i]] - (i == 0 ? c.Practice.CableBend : 0)));
    }
}
