using System.Globalization;

namespace FitCheck.Physics.Geometry;

/// <summary>Where the shape of a driver's body comes from.</summary>
internal enum BodyOrigin
{
    /// <summary>Points from a drawing.</summary>
    Drawn,
    /// <summary>A basket cone and a magnet cylinder through the figures of a sheet.</summary>
    ConeAndMagnet,
    /// <summary>The magnet is not known: a cylinder as wide as the cutout, which no usual body exceeds.</summary>
    Cylinder,
}

/// <summary>
/// The body of a driver behind its flange: a stepped solid of revolution, given by points (Z, R) joined by straight lines. Z runs in metres
/// from the flange's underside to the back of the magnet (≥ 0, never falling; two points with one Z are a step), R is the radius in metres
/// (≥ 0). Immutable.
/// </summary>
internal sealed class BodyProfile
{
    private BodyProfile((double Z, double R)[] corners, BodyOrigin origin)
    {
        Corners = corners;
        Origin = origin;
    }

    /// <summary>The corners, from the flange to the back, in metres.</summary>
    public IReadOnlyList<(double Z, double R)> Points => Corners;

    /// <summary>Whether it was drawn or made up from sheet figures.</summary>
    public BodyOrigin Origin { get; }

    /// <summary>How far the body reaches behind the flange, in metres.</summary>
    public double Depth => Corners[^1].Z;

    /// <summary>The corners as an array, in metres, for computations that run through them often.</summary>
    internal (double Z, double R)[] Corners { get; }

    /// <summary>A body through drawn points, in metres.</summary>
    /// <exception cref="ArgumentException">The points are no body: ask <see cref="WhatIsWrong"/> first when they come from a
    /// file.</exception>
    public static BodyProfile Of(IReadOnlyList<(double Z, double R)> points) =>
        WhatIsWrong(points) is { } problem ? throw new ArgumentException(problem, nameof(points)) : new(Copied(points), BodyOrigin.Drawn);

    /// <summary>
    /// The usual body from sheet figures, in metres: a cone from the cutout's radius at z = 0 to the magnet's radius at depth − magnet
    /// height, then a cylinder to the depth (derived: it is how such a driver is built). When the magnet's radius or height is null, a
    /// cylinder as wide as the cutout or the magnet: conservative. Figures must be finite; a negative one counts as 0 and a magnet higher
    /// than the depth as being that high, so that a figure may be varied over its tolerance.
    /// </summary>
    public static BodyProfile FromSheet(double cutoutRadius, double depth, double? magnetRadius = null, double? magnetHeight = null)
    {
        if (!double.IsFinite(cutoutRadius + depth + (magnetRadius ?? 0) + (magnetHeight ?? 0)))
            throw new ArgumentException("Sheet figures must be finite.", nameof(depth));
        var rim = Math.Max(0, cutoutRadius);
        var end = Math.Max(0, depth);
        var magnet = Math.Max(0, magnetRadius ?? 0);
        if (magnetRadius is null || magnetHeight is null)
            return new([(0, Math.Max(rim, magnet)), (end, Math.Max(rim, magnet))], BodyOrigin.Cylinder);
        return new([(0, rim), (end - Math.Clamp(magnetHeight.Value, 0, end), magnet), (end, magnet)], BodyOrigin.ConeAndMagnet);
    }

    /// <summary>What keeps these points from being a body, as a sentence; null when they are one.</summary>
    public static string? WhatIsWrong(IReadOnlyList<(double Z, double R)> points)
    {
        if (points.Count < 2)
            return "A body profile needs at least two points.";
        var widest = 0.0;
        for (var i = 0; i < points.Count; i++)
        {
            var (z, r) = points[i];
            widest = Math.Max(widest, r);
            if (!double.IsFinite(z) || !double.IsFinite(r) || z < 0 || r < 0)
                return Of(i, "has a distance or a radius below zero");
            if (i > 0 && z < points[i - 1].Z)
                return Of(i, "lies nearer to the flange than the one before it");
        }
        return widest == 0 ? "A body profile needs a radius above zero." : null;

        static string Of(int index, string what) =>
            string.Create(CultureInfo.InvariantCulture, $"Point {index + 1} of the body profile {what}.");
    }

    /// <summary>
    /// The radius in metres at a distance z (metres) behind the flange: straight between two points, the larger one on a step, 0 outside
    /// the body.
    /// </summary>
    public double RadiusAt(double z)
    {
        var radius = 0.0;
        for (var i = 1; i < Corners.Length; i++)
        {
            var (from, to) = (Corners[i - 1], Corners[i]);
            if (z < from.Z || z > to.Z)
                continue;
            var here = to.Z == from.Z ? Math.Max(from.R, to.R) : from.R + ((to.R - from.R) * (z - from.Z) / (to.Z - from.Z));
            radius = Math.Max(radius, here);
        }
        return radius;
    }

    private static (double Z, double R)[] Copied(IReadOnlyList<(double Z, double R)> points)
    {
        var copy = new (double Z, double R)[points.Count];
        for (var i = 0; i < copy.Length; i++)
            copy[i] = points[i];
        return copy;
    }
}
