using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether the sizes on a driver's drawing agree with each other and with the class it is sold in.</summary>
internal static class DriverSizeFacts
{
    public static readonly FactGroup Declarations = new(Subject.Driver);

    public static readonly NumberFact Size = Declarations.Number(
        "size", Dimension.Metre, "Size class that the driver is sold in; of a tweeter its dome.",
        Reads.Driver["size"]);
    public static readonly NumberFact Flange = Declarations.Number(
        "flange", Dimension.Metre, "Flange diameter.",
        Reads.Driver["dimensions.flange"]);
    public static readonly NumberFact Cutout = Declarations.Number(
        "cutout", Dimension.Metre, "Cutout diameter.",
        Reads.Driver["dimensions.cutout"]);
    public static readonly NumberFact Depth = Declarations.Number(
        "depth", Dimension.Metre, "Mounting depth.",
        Reads.Driver["dimensions.depth"]);
    public static readonly NumberFact MagnetHeight = Declarations.Number(
        "magnet_height", Dimension.Metre, "Height of the magnet.",
        Reads.Driver["dimensions.magnet_height"]);
    public static readonly NumberFact HoleCircle = Declarations.Number(
        "hole_circle", Dimension.Metre, "Diameter of the circle of screw holes in the flange.",
        Reads.Driver["holes.circle"]);
    public static readonly NumberFact FlangeOverCutout = Declarations.Number(
        "flange_over_cutout", Dimension.Metre, "Flange diameter less cutout diameter.",
        Reads.Driver["dimensions.cutout", "dimensions.flange"]);
    public static readonly NumberFact DepthOverMagnet = Declarations.Number(
        "depth_over_magnet", Dimension.Metre, "Mounting depth less magnet height.",
        Reads.Driver["dimensions.depth", "dimensions.magnet_height"]);
    public static readonly NumberFact CutoutToSize = Declarations.Number(
        "cutout_to_size", Dimension.One, "Cutout diameter over the driver's size class.",
        Reads.Driver["dimensions.cutout", "size"]);
    public static readonly NumberFact FlangeToSize = Declarations.Number(
        "flange_to_size", Dimension.One, "Flange diameter over the driver's size class.",
        Reads.Driver["dimensions.flange", "size"]);
    public static readonly NumberFact DepthToSize = Declarations.Number(
        "depth_to_size", Dimension.One, "Mounting depth over the driver's size class.",
        Reads.Driver["dimensions.depth", "size"]);
    public static readonly NumberFact CircleToSize = Declarations.Number(
        "circle_to_size", Dimension.One, "Circle of screw holes over the driver's size class.",
        Reads.Driver["holes.circle", "size"]);
    public static readonly NumberFact CutoutAsInches = Declarations.Number(
        "cutout_as_inches", Dimension.Metre, "What the cutout would be if its number were inches.",
        Reads.Driver["dimensions.cutout"]);
    public static readonly NumberFact FlangeAsInches = Declarations.Number(
        "flange_as_inches", Dimension.Metre, "What the flange would be if its number were inches.",
        Reads.Driver["dimensions.flange"]);
    public static readonly NumberFact DepthAsInches = Declarations.Number(
        "depth_as_inches", Dimension.Metre, "What the mounting depth would be if its number were inches.",
        Reads.Driver["dimensions.depth"]);
    public static readonly NumberFact CircleAsInches = Declarations.Number(
        "circle_as_inches", Dimension.Metre, "What the circle of screw holes would be if its number were inches.",
        Reads.Driver["holes.circle"]);

    public static void Compute(Driver driver, FactSheet sheet)
    {
        var d = driver.Dimensions;
        DriverFacts.Against(sheet, FlangeOverCutout, (Cutout, "cutout", d?.Cutout), (Flange, "flange", d?.Flange),
            (cutout, flange) => flange - cutout);
        DriverFacts.Against(sheet, DepthOverMagnet, (Depth, "mounting depth", d?.Depth), (MagnetHeight, "magnet height", d?.MagnetHeight),
            (depth, magnet) => depth - magnet);
        var size = (Size, "size class", driver.Size);
        foreach (var (fact, what, ratio, inches, figure) in new[] { (Cutout, "cutout", CutoutToSize, CutoutAsInches, d?.Cutout),
            (Flange, "flange", FlangeToSize, FlangeAsInches, d?.Flange),
            (Depth, "mounting depth", DepthToSize, DepthAsInches, d?.Depth),
            (HoleCircle, "circle of screw holes", CircleToSize, CircleAsInches, driver.Holes?.Circle) })
        {
            DriverFacts.Against(sheet, ratio, (fact, what, figure), size, (part, whole) => part / whole);
            if (figure is not null)
                sheet.Set(inches, figure.Quantity.Written * Unit.Find("in")!.Factor);
        }
    }
}
