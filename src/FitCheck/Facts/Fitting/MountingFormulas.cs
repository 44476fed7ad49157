using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Fitting;

/// <summary>The lengths of a driver, of what carries it and of a place, as the formulas of the mounting ask for them.</summary>
/// <typeparam name="T">How they are worked with.</typeparam>
/// <typeparam name="TThing">How a thing behind the panel is told.</typeparam>
internal interface IMountedPair<T, TThing> where T : ILength<T>
{
    /// <summary>True when the driver has a long and a short axis.</summary>
    bool IsOval { get; }
    T Flange { get; }
    /// <summary>The short axis of an oval one.</summary>
    T FlangeMinor { get; }
    T Cutout { get; }
    /// <summary>The short axis of an oval one.</summary>
    T CutoutMinor { get; }

    bool IsOnSpacer { get; }
    T Opening { get; }
    /// <summary>The short axis of an oval one.</summary>
    T OpeningMinor { get; }
    T SpacerOuter { get; }
    /// <summary>The short axis of an oval one.</summary>
    T SpacerOuterMinor { get; }
    /// <summary>The radius between the spacer's inner tabs.</summary>
    T Tabs { get; }

    T Recess { get; }
    /// <summary>The short axis of an oval one.</summary>
    T RecessMinor { get; }
    T GrilleGap { get; }
    T Hole { get; }
    /// <summary>The short axis of an oval one.</summary>
    T HoleMinor { get; }
    T LargestHole { get; }

    /// <summary>Diameter of the circle on which the driver's screws stand, and of these screws.</summary>
    T DriverCircle { get; }
    T DriverScrew { get; }
    /// <summary>The same of what is screwed to the panel: the spacer, or the driver without one.</summary>
    T PanelCircle { get; }
    T PanelScrew { get; }

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
    /// <summary>True when a thing begins at a radius, so that something of the driver may stand beside it.</summary>
    bool IsAside(in TThing thing);
    /// <summary>That radius.</summary>
    T BeginOf(in TThing thing);
    /// <summary>How far the driver reaches out where it is deeper than a thing begins; see
    /// <see cref="BodyFormulas.ReachBehind"/>.</summary>
    T ReachBehind(in TThing thing);

    /// <summary>How deep the driver reaches where a thing stands; see <see cref="ObstructionReach"/>.</summary>
    T DepthNeeded(in TThing thing);
    /// <summary>See <see cref="MountingFormulas.FrontNeeded"/>.</summary>
    T FrontNeeded { get; }
    /// <summary>The hole that the body needs on its spacer; see <see cref="BodyFormulas.HoleNeeded"/>.</summary>
    T HoleOfBody { get; }
    /// <summary>The same across the short axis of an oval one.</summary>
    T HoleOfBodyMinor { get; }
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

        public static bool Rises(int input) => input != 1;
    }

    /// <summary>From a radius to its diameter.</summary>
    internal readonly struct Twice : ILengthFormula
    {
        public static double Of(ReadOnlySpan<double> v) => 2 * v[0];

        public static bool Rises(int input) => true;
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

    /// <summary>Beside the driver to anything that begins at a radius, fixed or moving.</summary>
    public static void SideMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        Beside(pair, pair.Fixed, ref margins);
        Beside(pair, pair.Moving, ref margins);
    }

    /// <summary>Straight on the panel, the maker's cutout is what the hole must have, whatever the body behind it looks like.</summary>
    public static T HoleNeeded(in TPair pair) => pair.IsOnSpacer ? pair.HoleOfBody : pair.Cutout;

    /// <summary>A round body in an oval hole is held by the short axis.</summary>
    public static T HoleAvailable(in TPair pair) => !pair.IsOval && !pair.HoleMinor.IsMissing ? pair.HoleMinor : pair.Hole;

    public static void HoleMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        if (pair.IsOval || pair.HoleMinor.IsMissing)
            margins.Add(T.Difference(pair.Hole, HoleNeeded(pair)));
        if (!pair.HoleMinor.IsMissing)
            margins.Add(T.Difference(pair.HoleMinor, pair.IsOval ? HoleNeededMinor(pair) : HoleNeeded(pair)));
    }

    /// <summary>
    /// With the hole enlarged as far as the panel allows, an oval one to both sides; none where nobody says how far.
    /// </summary>
    public static void LargestHoleMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        var largest = pair.LargestHole;
        if (largest.IsMissing)
            return;
        var isOvalInOval = pair.IsOval && !pair.HoleMinor.IsMissing;
        margins.Add(T.Difference(isOvalInOval ? pair.Hole : largest, HoleNeeded(pair)));
        if (isOvalInOval)
            margins.Add(T.Difference(largest, HoleNeededMinor(pair)));
    }

    public static void OpeningMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T> =>
        Around(pair.Opening, pair.OpeningMinor, pair.IsOval, pair.Cutout, pair.CutoutMinor, ref margins);

    public static T TabMargin(in TPair pair) => T.Difference(T.Of<MountingFormulas.Twice>([pair.Tabs]), pair.Cutout);

    /// <summary>Width on which the flange rests, half of what the diameters differ.</summary>
    public static void FlangeOverlaps<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        if (pair.IsOnSpacer)
            Over(pair.IsOval, pair.Flange, pair.FlangeMinor, pair.Opening, pair.OpeningMinor, ref margins);
        else
            Over(pair.IsOval, pair.Flange, pair.FlangeMinor, pair.Hole, pair.HoleMinor, ref margins);
    }

    public static void SpacerOverlaps<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T> =>
        Over(!pair.SpacerOuterMinor.IsMissing, pair.SpacerOuter, pair.SpacerOuterMinor, pair.Hole, pair.HoleMinor, ref margins);

    public static void FlangeMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T> =>
        Around(pair.Recess, pair.RecessMinor, pair.IsOval, pair.Flange, pair.FlangeMinor, ref margins);

    public static void SpacerRecessMargins<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T> =>
        Around(pair.Recess, pair.RecessMinor, !pair.SpacerOuterMinor.IsMissing, pair.SpacerOuter, pair.SpacerOuterMinor, ref margins);

    /// <summary>
    /// Material between a screw in the panel and the edge of its hole, as it is and as the driver needs it; none is told beside an oval
    /// hole, whose edge is nearer at one hour than at another.
    /// </summary>
    public static void PanelMaterials<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        var edge = T.Difference(pair.PanelCircle, pair.PanelScrew);
        if (pair.HoleMinor.IsMissing)
            margins.Add(T.Difference(edge, pair.Hole, 0.5));
        if (!pair.IsOval)
            margins.Add(T.Difference(edge, HoleNeeded(pair), 0.5));
    }

    /// <summary>Material between a screw of the driver in the spacer and its opening, and its rim; none is told of an oval one.</summary>
    public static void SpacerMaterials<TMargins>(in TPair pair, ref TMargins margins) where TMargins : IMargins<T>
    {
        if (pair.OpeningMinor.IsMissing)
            margins.Add(T.Difference(T.Difference(pair.DriverCircle, pair.DriverScrew), pair.Opening, 0.5));
        if (pair.SpacerOuterMinor.IsMissing)
            margins.Add(T.Difference(T.Difference(pair.SpacerOuter, pair.DriverScrew), pair.DriverCircle, 0.5));
    }

    private static T Spare(in TPair pair, in TThing thing) => T.Difference(pair.DepthTo(thing), pair.DepthNeeded(thing));

    private static T HoleNeededMinor(in TPair pair) => pair.IsOnSpacer ? pair.HoleOfBodyMinor : pair.CutoutMinor;

    private static void Beside<TMargins>(in TPair pair, ReadOnlySpan<TThing> things, ref TMargins margins) where TMargins : IMargins<T>
    {
        foreach (ref readonly var thing in things)
        {
            if (pair.IsAside(thing))
                margins.Add(T.Difference(pair.BeginOf(thing), pair.ReachBehind(thing)));
        }
    }

    // What is to go into something with one axis or two. A round thing is as wide across the short axis as along the other one; an oval
    // thing in a round one is held by its long axis.
    private static void Around<TMargins>(in T there, in T thereMinor, bool isOval, in T needed, in T neededMinor, ref TMargins margins)
        where TMargins : IMargins<T>
    {
        if (isOval || thereMinor.IsMissing)
            margins.Add(T.Difference(there, needed));
        if (!thereMinor.IsMissing)
            margins.Add(T.Difference(thereMinor, isOval ? neededMinor : needed));
    }

    // What is to reach over a hole: a round thing has to reach over the long axis, an oval one's short axis over the short one, or over a
    // round hole.
    private static void Over<TMargins>(bool isOval, in T upper, in T upperMinor, in T hole, in T holeMinor, ref TMargins margins)
        where TMargins : IMargins<T>
    {
        if (!isOval || !holeMinor.IsMissing)
            margins.Add(T.Difference(upper, hole, 0.5));
        if (isOval)
            margins.Add(T.Difference(upperMinor, holeMinor.IsMissing ? hole : holeMinor, 0.5));
    }
}
