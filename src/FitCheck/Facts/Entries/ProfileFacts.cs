using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether the body that a sheet draws is the one whose depth and hole it states.</summary>
internal static class ProfileFacts
{
    public static readonly FactGroup Declarations = new(Subject.Driver);

    public static readonly NumberFact ProfileDepth = Declarations.Number(
        "profile_depth", Dimension.Metre, "How far the drawn body reaches behind the flange.",
        Reads.Driver["dimensions.profile"]);
    public static readonly NumberFact ProfileOverDepth = Declarations.Number(
        "profile_over_depth", Dimension.Metre, "Depth of the drawn body less the stated mounting depth.",
        Reads.Driver["dimensions.profile", "dimensions.depth"]);
    public static readonly NumberFact ProfileWidth = Declarations.Number(
        "profile_width", Dimension.Metre, "Widest diameter of the drawn body.",
        Reads.Driver["dimensions.profile"]);
    public static readonly NumberFact ProfileOverCutout = Declarations.Number(
        "profile_over_cutout", Dimension.Metre, "Widest diameter of the drawn body less the stated cutout.",
        Reads.Driver["dimensions.profile", "dimensions.cutout"]);

    public static void Compute(Driver driver, FactSheet sheet)
    {
        if (driver.Dimensions is not { Profile: { Count: > 0 } profile } d)
            return;
        var (deepest, widest) = (profile.Max(p => p.Z), 2 * profile.Max(p => p.R));
        sheet.Set(ProfileDepth, deepest);
        sheet.Set(ProfileWidth, widest);
        Over(sheet, ProfileOverDepth, deepest, "mounting depth", d.Depth, d);
        // Which axis of an oval the drawing shows is not told.
        if (!driver.Oval)
            Over(sheet, ProfileOverCutout, widest, "cutout", d.Cutout, d);
    }

    private static void Over(FactSheet sheet, NumberFact fact, double drawn, string what, Figure? stated, DriverDimensions d)
    {
        if (stated is not null)
            sheet.Set(fact, FactValue.Of(Dimension.Metre, drawn - stated.Si) with
            {
                Data = [new Datum(what, stated), new Datum("profile", d.ProfileAt)],
            });
    }
}
