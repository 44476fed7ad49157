using FitCheck.Catalog;
using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// A length in metres that a body needs, from its profile, the tilt (radians) and thickness of its spacer, and a third figure.
/// </summary>
internal delegate double BodyFormula(BodyProfile body, double tilt, double thickness, double third);

/// <summary>How a thing behind the panel counts.</summary>
/// <param name="Reach">How deep a body reaches where it stands; the third figure is the radius from which it stands.</param>
/// <param name="FromRadius">That radius; null where it stands from the middle on.</param>
/// <param name="IsEverywhere">True when it stands at every hour and from the middle on, so that the whole depth of the driver
/// counts.</param>
/// <param name="Sector">The hours at which it stands.</param>
/// <param name="AimClock">The hour towards which the driver leans; null where nobody recorded it.</param>
internal sealed record ObstructionReach(BodyFormula Reach, Figure? FromRadius, bool IsEverywhere, ClockSector Sector, double? AimClock)
{
    private static readonly ObstructionReach Everywhere = new(static (body, tilt, thickness, _) =>
        TiltedBody.DepthNeeded(body, tilt, thickness), null, true, ClockSector.All, null);

    // Where nothing of the body is as far out as the obstruction or at its hours, the whole depth is free. A tilt whose direction nobody
    // recorded counts as pointing anywhere.
    /// <param name="position">Where it stands.</param>
    /// <param name="thing">The thing; null for all that limits the free depth.</param>
    public static ObstructionReach Of(Position position, Obstruction? thing)
    {
        var aim = position.Mounting.AimClock;
        var sector = thing is { FromClock: { } first, ToClock: { } last } && aim is not null ? new ClockSector(first, last)
            : ClockSector.All;
        if (thing?.FromRadius is not { Si: > 0 } && sector.IsWhole)
            return Everywhere;
        var lean = aim ?? 0;
        // What stays before the panel needs no depth.
        return new((body, tilt, thickness, from) =>
            Math.Max(0, TiltedBody.DepthNeededInSector(body, tilt, thickness, from, lean, sector) ?? 0),
            thing!.FromRadius, false, sector, aim);
    }
}

/// <summary>What the body needs of the panel.</summary>
internal static class BodyFormulas
{
    /// <summary>The diameter of the hole that the body needs on its spacer; the third figure is the panel's thickness.</summary>
    public static readonly BodyFormula HoleNeeded = static (body, tilt, thickness, panel) =>
        2 * TiltedBody.HoleRadiusNeeded(body, tilt, thickness, panel);

    /// <summary>How far the body reaches out, from the hole's centre line, deeper than the third figure behind the panel.</summary>
    public static readonly BodyFormula ReachBehind = static (body, tilt, thickness, depth) =>
        TiltedBody.ReachBehind(body, tilt, thickness, depth);
}
