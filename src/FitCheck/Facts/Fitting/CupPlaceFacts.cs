using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using Formulas = FitCheck.Facts.Fitting.CupFormulas<FitCheck.Facts.Fitting.PositionLengths, FitCheck.Facts.Fitting.StackedLength>;
using Mounting = FitCheck.Facts.Fitting.MountingFormulas<
    FitCheck.Facts.Fitting.PositionLengths, FitCheck.Facts.Fitting.StackedLength, FitCheck.Catalog.Obstruction?>;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// What holds a tweeter, and its cup in the place: on what its flange rests, the hole, the depth and the factory grille. A cup that
/// was made for the place is a bezel, through which the tweeter reaches into the panel; any other goes into the panel whole, or stands
/// before it. Where such a bezel leaves the tweeter no more room than the place does, the place has nothing to add.
/// </summary>
internal static class CupPlaceFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact TweeterFlangeRest = Declarations.Number(
        "tweeter_flange_rest", Dimension.Metre, "Width on which the tweeter's flange rests beyond the hole under it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.cutout", "dimensions.flange_minor", "shape"],
        Reads.Cup["hole"], Reads.Adapter["opening", "opening_minor"],
        Reads.Under["adapter.opening", "adapter.opening_minor", "cup.hole", "position.mounting.cutout", "position.mounting.cutout_minor"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly TruthFact TweeterHeld = Declarations.Truth(
        "tweeter_held", "Something holds the tweeter: a cup, a spacer, or screws through its flange.",
        Reads.Mounted.Itself, Reads.Driver["holes"], Reads.AdapterThere.Itself, Reads.CupThere.Itself,
        Reads.Screws["type"]);
    public static readonly NumberFact CupRecessMargin = Declarations.Number(
        "cup_recess_margin", Dimension.Metre, "Diameter that the cup's seat has to spare around the tweeter's flange.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange"], Reads.Cup["flange_recess"]);
    public static readonly TruthFact PlaceHoleDecides = Declarations.Truth(
        "place_hole_decides", "The hole at the position, not that of a cup that was made for it, decides what goes in.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Cup["cutout", "fits", "hole"], Reads.Place["mounting.cutout"],
        Reads.Measured["fit.measured.cutout"])
        .Saying("the hole at the position does not decide");
    public static readonly TruthFact PlaceDepthDecides = Declarations.Truth(
        "place_depth_decides", "The depth at the position, not that of a cup that was made for it, decides what goes in.",
        Reads.Mounted.Itself, Reads.Cup["cutout", "depth", "fits", "hole"], Reads.Place["mounting.depth"],
        Reads.Measured["fit.measured.depth"])
        .Saying("the depth at the position does not decide");
    public static readonly TruthFact PlaceGrilleDecides = Declarations.Truth(
        "place_grille_decides", "The factory grille is nearer to the tweeter than that of the cup.",
        Reads.Mounted.Itself, Reads.Cup["cutout", "grille_gap", "hole"], Reads.Place["mounting.grille_gap"],
        Reads.Measured["fit.measured.grille_gap"])
        .Saying("the factory grille does not decide");
    public static readonly NumberFact PlaceHoleSpare = Declarations.Number(
        "place_hole_spare", Dimension.Metre,
        "Diameter that the hole at the position has to spare around the cup, or around the tweeter behind a cup that was made for it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Cup["cutout", "fits"], Reads.Place["mounting.cutout"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact LargestPlaceHoleSpare = Declarations.Number(
        "largest_place_hole_spare", Dimension.Metre, "The same with the hole enlarged as far as the panel allows.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Cup["cutout", "fits"], Reads.Place["mounting.largest_cutout"]);
    public static readonly NumberFact CupOverHole = Declarations.Number(
        "cup_over_hole", Dimension.Metre, "Width on which the cup stands beyond the hole at the position.",
        Reads.Mounted.Itself, Reads.Cup["outer"], Reads.Place["mounting.cutout"], Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact PlaceDepthSpare = Declarations.Number(
        "place_depth_spare", Dimension.Metre,
        "Depth that the position has to spare behind the cup, or behind the tweeter in a cup that was made for it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.depth"], Reads.Cup["depth", "fits", "cutout", "hole"], Reads.Place["mounting.depth"],
        Reads.Measured["fit.measured.depth"]);
    public static readonly NumberFact PlaceGrilleSpare = Declarations.Number(
        "place_grille_spare", Dimension.Metre, "Clearance between the tweeter's front and the factory grille.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.front_height"], Reads.Cup["cutout", "hole"], Reads.Place["mounting.grille_gap"],
        Reads.Measured["fit.measured.grille_gap"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { } driver)
            return;
        var lengths = new PositionLengths(c);
        if (driver.IsTweeter)
        {
            var rests = new StackedMargins();
            if (c.Cup is null)
                Mounting.FlangeOverlaps(lengths, ref rests);
            else
                Formulas.FlangeRests(lengths, ref rests);
            sheet.Set(TweeterFlangeRest, rests.ToFact()!);
            sheet.Set(TweeterHeld, c.Cup is not null || c.Adapter is not null
                || (driver.Holes is not null && c.Placed.Sundries.Exists(s => s.Part.Type == "screws")));
        }
        if (c.Cup is not { } cup)
            return;
        sheet.Set(CupRecessMargin, Formulas.RecessMargin(lengths).ToFact());
        var (hole, depth, grille) = Decides(cup, driver, c.Position, c.Build.Vehicle.ListedAs);
        sheet.Set(PlaceHoleDecides, hole);
        sheet.Set(PlaceDepthDecides, depth);
        sheet.Set(PlaceGrilleDecides, grille, new Unsure(c.AtPosition("gap from the panel to the grille"),
            "Fit the trim and measure from the panel to the back of the grille, with modelling clay.", Estimated: false)
        { Key = c.Here("mounting.grille_gap") });
        sheet.Set(PlaceHoleSpare, Formulas.PlaceHoleSpare(lengths).ToFact());
        sheet.Set(LargestPlaceHoleSpare, Formulas.LargestPlaceHoleSpare(lengths).ToFact());
        sheet.Set(CupOverHole, Formulas.CupOverHole(lengths).ToFact());
        sheet.Set(PlaceDepthSpare, Formulas.PlaceDepthSpare(lengths).ToFact());
        sheet.Set(PlaceGrilleSpare, Formulas.PlaceGrilleSpare(lengths).ToFact());
    }

    /// <summary>
    /// Whether the place's hole, depth and grille count beside those of the cup, whose hole may be filed out to the tweeter; null where
    /// nobody measured to the factory grille.
    /// </summary>
    public static (bool Hole, bool Depth, bool? Grille) Decides(Cup cup, Driver driver, Position position, string vehicle)
    {
        var (made, m) = (IsMadeFor(cup, vehicle, position.Id), position.Mounting);
        return (!made || IsTighter(m.Cutout, cup.Hole) || IsTighter(m.Cutout, driver.Dimensions?.Cutout),
            !cup.StandsBefore && (!made || IsTighter(m.Depth, cup.Depth)),
            cup.StandsBefore ? false : m.GrilleGap is null ? null : IsTighter(m.GrilleGap, cup.GrilleGap));
    }

    private static bool IsTighter(Figure? place, Figure? cup) => place is null || cup is null || place.Si < cup.Si;

    /// <summary>True for a cup that names this place among those it fits, not for one that fits anywhere.</summary>
    public static bool IsMadeFor(Cup cup, string vehicle, string position) =>
        cup.Fits.Count > 0 && Fit.Covers(cup.Fits, vehicle, position);
}
