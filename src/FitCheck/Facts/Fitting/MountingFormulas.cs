using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Fitting;

/// <summary>The lengths of a driver, of what carries it and of a place, as the formulas of the mounting ask for them.</summary>
/// <typeparam name="T">How they are worked with.</typeparam>
/// <typeparam name="TThing">How a thing behind the panel is told.</typeparam>
internal interface IMountedPair<T, TThing> where T : ILength<T>
{
    T Flange { get; }
    T Cutout { get; }
    /// <summary>The short axis of an oval one.</summary>
    T CutoutMinor { get; }

    bool IsOnSpacer { get; }
    T Opening { get; }
    T SpacerOuter { get; }
    /// <summary>The radius between the spacer's inner tabs.</summary>
    T Tabs { get; }

    T Recess { get; }
    T GrilleGap { get; }
    T Hole { get; }
    /// <summary>The short axis of an oval one.</summary>
    T HoleMinor { get; }
    /// <summary>True when the build tells what was measured across the hole.</summary>
    bool IsHoleMeasured { get; }
    T LargestHole { get; }

    /// <summary>All that limits the free depth.</summary>
    TThing Behind { get; }
    ReadOnlySpan<TThing> Fixed { get; }
    ReadOnlySpan<TThing> Moving { get; }
    T DepthTo(in TThing thing);
    /// <summary>True when it is recorded what stands behind the panel, be it nothing.</summary>
    bool AreThingsRecorded { get; }
    /// <summary>
    /// The least clearance to a thing of which nobody knows: it may stand anywhere behind the panel, so only a driver that stays before it
    /// is clear of it for certain.
    /// </summary>
    T ToUnrecorded { get; }

    /// <summary>How deep the driver reaches where a thing stands; see <see cref="ObstructionReach"/>.</summary>
    T DepthNeeded(in TThing thing);
    /// <summary>See <see cref="MountingFormulas.FrontNeeded"/>.</summary>
    T FrontNeeded { get; }
    /// <summary>The hole that the body needs on its spacer; see <see cref="BodyFormulas.HoleNeeded"/>.</summary>
    T HoleOfBody { get; }
}

/// <summary>What the driver needs on what carries it, whatever the place.</summary>
internal static class MountingFormulas
{
    /// <summary>Height before the mounting plane.</summary>
    public static T FrontNeeded<T>(in T thickness, in T tilt, in T flangeThickness, in T frontHeight, in T flange, in T travel)
        where T : ILength<T> =>
        T.Of<Reach>([thickness, tilt, flangeThickness, frontHeight, flange, travel]);

    private readonly struct Reach : ILengthFormula
    {
        public static double Of(ReadOnlySpan<double> v) => TiltedBody.FrontReach(v[0], v[2], v[3], v[4] / 2, v[5], v[1]);
    }

    /// <summary>From a radius to its diameter.</summary>
    internal readonly struct Twice : ILengthFormula
    {
        public static double Of(ReadOnlySpan<double> v) => 2 * v[0];
    }
}

/// <summary>What there is less what is needed: every margin of a driver on a panel or a spacer, for numbers of whatever kind.</summary>
internal static class MountingFormulas<TPair, T, TThing> where T : ILength<T> where TPair : IMountedPair<T, TThing>
{
    /// <summary>Behind the driver to anything fixed.</summary>
    public static void DepthMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        margins.Add(Spare(pair, pair.Behind));
        foreach (ref readonly var thing in pair.Fixed)
            margins.Add(Spare(pair, thing));
        if (!pair.AreThingsRecorded)
            margins.Add(pair.ToUnrecorded);
    }

    /// <summary>Behind the driver to the glass.</summary>
    public static void GlassMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        foreach (ref readonly var thing in pair.Moving)
            margins.Add(Spare(pair, thing));
        if (!pair.AreThingsRecorded)
            margins.Add(pair.ToUnrecorded);
    }

    public static T FrontMargin(in TPair pair) => T.Difference(pair.GrilleGap, pair.FrontNeeded);

    /// <summary>Straight on the panel, the maker's cutout is what the hole must have, whatever the body behind it looks like.</summary>
    public static T HoleNeeded(in TPair pair) => pair.IsOnSpacer ? pair.HoleOfBody : pair.Cutout;

    /// <summary>A round body in an oval hole is held by the short axis.</summary>
    public static T HoleAvailable(in TPair pair) =>
        pair.CutoutMinor.IsMissing && !pair.IsHoleMeasured && !pair.HoleMinor.IsMissing ? pair.HoleMinor : pair.Hole;

    public static void HoleMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T> =>
        HoleMargins(pair, HoleAvailable(pair), ref margins);

    /// <summary>With the hole enlarged as far as the panel allows; none where nobody says how far.</summary>
    public static void LargestHoleMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        var largest = pair.LargestHole;
        if (!largest.IsMissing)
            HoleMargins(pair, largest, ref margins);
    }

    public static T OpeningMargin(in TPair pair) => T.Difference(pair.Opening, pair.Cutout);

    public static T TabMargin(in TPair pair) => T.Difference(T.Of<MountingFormulas.Twice>([pair.Tabs]), pair.Cutout);

    /// <summary>Width on which the flange rests, half of what the diameters differ.</summary>
    public static T FlangeOverlap(in TPair pair) => T.Difference(pair.Flange, pair.IsOnSpacer ? pair.Opening : pair.Hole, 0.5);

    public static T SpacerOverlap(in TPair pair) => T.Difference(pair.SpacerOuter, pair.Hole, 0.5);

    public static T FlangeMargin(in TPair pair) => T.Difference(pair.Recess, pair.Flange);

    public static T SpacerRecessMargin(in TPair pair) => T.Difference(pair.Recess, pair.SpacerOuter);

    private static T Spare(in TPair pair, in TThing thing) => T.Difference(pair.DepthTo(thing), pair.DepthNeeded(thing));

    // An oval's short axis is checked on its own, straight through; a flat position without a short axis is round.
    private static void HoleMargins<TMargins>(in TPair pair, in T hole, ref TMargins margins) where TMargins : IMargins<T>
    {
        margins.Add(T.Difference(hole, HoleNeeded(pair)));
        var minor = pair.CutoutMinor;
        if (!minor.IsMissing)
            margins.Add(T.Difference(pair.HoleMinor.IsMissing && !pair.Hole.IsMissing ? pair.Hole : pair.HoleMinor, minor));
    }
}
