using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Fitting;

/// <summary>The driver's body behind its flange as a solid of revolution, made from the figures on its sheet.</summary>
internal static class BodyFacts
{
    private const string OnSheet = "Read it from the maker's drawing, or measure the driver with a depth gauge.";

    /// <summary>
    /// Adds the inputs of the body to a stack and returns a function from the stack's values to the profile. A drawn profile is stretched
    /// with its depth's tolerance; a sheet with three numbers gives a cone and a magnet.
    /// </summary>
    /// <param name="size">The driver's.</param>
    /// <param name="named">How a figure of the driver is named to a person.</param>
    /// <param name="stack">What they are added to.</param>
    public static Func<double[], BodyProfile> Inputs(DriverDimensions? size, Func<string, string> named, Stack stack)
    {
        if (size?.Profile is { Count: >= 2 } points && BodyProfile.WhatIsWrong(points) is null)
        {
            var end = points[^1].Z;
            stack.Cite(named("drawn profile"), size.ProfileAt);
            var drawn = stack.Optional(named("mounting depth"), OnSheet, size.Depth, end);
            return v => BodyProfile.Of(Stretched(points, v[drawn], end));
        }
        var cutout = stack.Need(named("cutout diameter"), OnSheet, size?.Cutout);
        var depth = stack.Need(named("mounting depth"), OnSheet, size?.Depth);
        // The worst that a magnet can be is as wide as the hole and as long as the driver is deep: that is what FromSheet assumes without
        // figures.
        var magnet = size?.MagnetDiameter is { } d ? stack.Need(named("magnet diameter"), OnSheet, d) : -1;
        var height = size?.MagnetHeight is { } h ? stack.Need(named("magnet height"), OnSheet, h) : -1;
        return v => BodyProfile.FromSheet(v[cutout] / 2, v[depth],
            magnet < 0 ? null : Math.Min(v[magnet], v[cutout]) / 2, height < 0 || magnet < 0 ? null : Math.Min(v[height], v[depth]));
    }

    private static (double Z, double R)[] Stretched(IReadOnlyList<(double Z, double R)> points, double depth, double drawn)
    {
        var stretched = new (double Z, double R)[points.Count];
        for (var i = 0; i < stretched.Length; i++)
            stretched[i] = (drawn > 0 ? points[i].Z * depth / drawn : points[i].Z, points[i].R);
        return stretched;
    }
}
