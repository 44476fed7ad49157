using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>The driver's body behind its flange as a solid of revolution, made from the figures on its sheet.</summary>
internal static class BodyFacts
{
    private const string OnSheet = "Read it from the maker's drawing, or measure the driver with a depth gauge.";

    /// <summary>
    /// Adds the inputs of the body to a stack and returns a function from the stack's values to the profile. A drawn profile is stretched
    /// with its depth's tolerance; a sheet with three numbers gives a cone and a magnet. A body is the larger the wider, the deeper and the
    /// shorter its magnet is (behind a cone that is wider), so that these move together.
    /// </summary>
    /// <param name="size">The driver's.</param>
    /// <param name="named">How a figure of the driver is named to a person.</param>
    /// <param name="stack">What they are added to.</param>
    /// <param name="acrossShortAxis">Of an oval: the body as it is across its short axis.</param>
    /// <param name="driver">The driver, where a reading may be asked for.</param>
    public static Func<double[], BodyProfile> Inputs(DriverDimensions? size, Func<string, string> named, Stack stack,
        bool acrossShortAxis = false, Driver? driver = null)
    {
        if (size?.Profile is { Count: >= 2 } points && BodyProfile.WhatIsWrong(points) is null)
        {
            var end = points[^1].Z;
            stack.Cite(named("drawn profile"), size.ProfileAt);
            var drawn = stack.Optional(named("mounting depth"), OnSheet, DepthOf(size, end), end, DatumKey.In(driver, "dimensions.depth"));
            var narrow = acrossShortAxis ? stack.Need(named("short axis of the cutout"), OnSheet, size.CutoutMinor,
                DatumKey.In(driver, "dimensions.cutout_minor")) : -1;
            stack.MoveTogether(narrow < 0 ? [(drawn, 1)] : [(drawn, 1), (narrow, 1)]);
            return v => BodyProfile.Of(Stretched(points, v[drawn], end, narrow < 0 ? double.PositiveInfinity : v[narrow] / 2));
        }
        var cutout = acrossShortAxis ? stack.Need(named("short axis of the cutout"), OnSheet, size?.CutoutMinor,
            DatumKey.In(driver, "dimensions.cutout_minor"))
            : stack.Need(named("cutout diameter"), OnSheet, size?.Cutout, DatumKey.In(driver, "dimensions.cutout"));
        var depth = stack.Need(named("mounting depth"), OnSheet, size?.Depth, DatumKey.In(driver, "dimensions.depth"));
        // The worst that a magnet can be is as wide as the hole and as long as the driver is deep: that is what FromSheet assumes without
        // figures.
        var magnet = size?.MagnetDiameter is { } d ? stack.Need(named("magnet diameter"), OnSheet, d,
            DatumKey.In(driver, "dimensions.magnet_diameter")) : -1;
        var height = size?.MagnetHeight is { } h ? stack.Need(named("magnet height"), OnSheet, h,
            DatumKey.In(driver, "dimensions.magnet_height")) : -1;
        stack.MoveTogether((cutout, 1), (depth, 1));
        if (magnet >= 0)
            stack.MoveTogether((magnet, 1));
        if (height >= 0)
            stack.MoveTogether((height, -1));
        return v => BodyProfile.FromSheet(v[cutout] / 2, v[depth],
            magnet < 0 ? null : Math.Min(v[magnet], v[cutout]) / 2, height < 0 || magnet < 0 ? null : Math.Min(v[height], v[depth]));
    }

    // A drawing that ends deeper than the sheet says, by more than the sheet's tolerance, contradicts it: the drawing counts, for it is the
    // worse, and the depth has to be measured. Once it is, the drawing is stretched to the reading.
    private static Figure? DepthOf(DriverDimensions size, double drawn) => size.Depth is { IsReading: false } stated
        && drawn > stated.Si + stated.HalfWidth
            ? stated with { Quantity = stated.Quantity with { Si = drawn }, Provenance = Provenance.Estimated } : size.Depth;

    private static (double Z, double R)[] Stretched(IReadOnlyList<(double Z, double R)> points, double depth, double drawn, double widest)
    {
        var stretched = new (double Z, double R)[points.Count];
        for (var i = 0; i < stretched.Length; i++)
            stretched[i] = (drawn > 0 ? points[i].Z * depth / drawn : points[i].Z, Math.Min(points[i].R, widest));
        return stretched;
    }
}
