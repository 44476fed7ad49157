using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether the sizes on a driver's drawing agree with each other and with the class it is sold in.</summary>
internal static class DriverSizeFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Length("size", "Size class that the driver is sold in; of a tweeter its dome."),
        Length("flange", "Flange diameter."),
        Length("cutout", "Cutout diameter."),
        Length("depth", "Mounting depth."),
        Length("magnet_height", "Height of the magnet."),
        Length("hole_circle", "Diameter of the circle of screw holes in the flange."),
        Length("flange_over_cutout", "Flange diameter less cutout diameter."),
        Length("depth_over_magnet", "Mounting depth less magnet height."),
        Ratio("cutout_to_size", "Cutout diameter over the driver's size class."),
        Ratio("flange_to_size", "Flange diameter over the driver's size class."),
        Ratio("depth_to_size", "Mounting depth over the driver's size class."),
        Ratio("circle_to_size", "Circle of screw holes over the driver's size class."),
        Length("cutout_as_inches", "What the cutout would be if its number were inches."),
        Length("flange_as_inches", "What the flange would be if its number were inches."),
        Length("depth_as_inches", "What the mounting depth would be if its number were inches."),
        Length("circle_as_inches", "What the circle of screw holes would be if its number were inches."),
    ];

    public static void Compute(Driver driver, FactSheet sheet)
    {
        var d = driver.Dimensions;
        DriverFacts.Against(sheet, "flange_over_cutout", Dimension.Metre, ("cutout", "cutout", d?.Cutout), ("flange", "flange", d?.Flange), (cutout, flange) => flange - cutout);
        DriverFacts.Against(sheet, "depth_over_magnet", Dimension.Metre, ("depth", "mounting depth", d?.Depth), ("magnet_height", "magnet height", d?.MagnetHeight), (depth, magnet) => depth - magnet);
        var size = ("size", "size class", driver.Size);
        foreach (var (fact, what, ratio, figure) in new[] { ("cutout", "cutout", "cutout_to_size", d?.Cutout), ("flange", "flange", "flange_to_size", d?.Flange),
            ("depth", "mounting depth", "depth_to_size", d?.Depth), ("hole_circle", "circle of screw holes", "circle_to_size", driver.Holes?.Circle) })
        {
            DriverFacts.Against(sheet, ratio, Dimension.One, (fact, what, figure), size, (part, whole) => part / whole);
            if (figure is not null)
                sheet.Set(ratio.Replace("to_size", "as_inches", StringComparison.Ordinal), Dimension.Metre, figure.Quantity.Written * Unit.Find("in")!.Factor);
        }
    }

    private static FactDeclaration Length(string name, string meaning) => Declare.Number(Subject.Driver, name, Dimension.Metre, meaning);

    private static FactDeclaration Ratio(string name, string meaning) => Declare.Number(Subject.Driver, name, Dimension.One, meaning);
}
