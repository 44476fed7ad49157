using FitCheck.Facts.Fitting;

namespace FitCheck.Charts.BestMount;

/// <summary>The lengths of a driver, what carries it and a place as bare numbers, from what was worked out before.</summary>
internal readonly struct ChartedLengths(PlacedPairFacts pair) : IMountedPair<LengthTerm, ObstacleBehind>, ICuppedTweeter<LengthTerm>
{
    public LengthTerm Flange => pair.Driver.Flange;
    public LengthTerm Cutout => pair.Driver.Cutout;
    public LengthTerm CutoutMinor => pair.Driver.CutoutMinor;

    public bool IsOnSpacer => pair.Mount is not null;
    public LengthTerm Opening => pair.Mount!.Opening;
    public LengthTerm SpacerOuter => pair.Mount!.Outer;
    public LengthTerm Tabs => pair.Mount!.Tabs;

    public LengthTerm Recess => pair.Place.Recess;
    public LengthTerm GrilleGap => pair.Place.GrilleGap;
    public LengthTerm Hole => pair.Place.Cutout;
    public LengthTerm HoleMinor => pair.Place.CutoutMinor;
    // Only a build measures.
    public bool IsHoleMeasured => false;
    public LengthTerm LargestHole => pair.Place.LargestCutout;

    public ObstacleBehind Behind => pair.Place.Behind;
    public ReadOnlySpan<ObstacleBehind> Fixed => pair.Place.Fixed;
    public ReadOnlySpan<ObstacleBehind> Moving => pair.Place.Moving;
    public LengthTerm DepthTo(in ObstacleBehind thing) => thing.Depth;

    public bool AreThingsRecorded => pair.Place.Position.Mounting.AreObstructionsRecorded;

    public LengthTerm ToUnrecorded =>
        DepthNeeded(Behind) is var needed && needed.Si + needed.HalfWidth <= 0 ? LengthTerm.Difference(LengthTerm.Exactly(0), needed)
            : LengthTerm.Missing;

    public LengthTerm DepthNeeded(in ObstacleBehind thing) => pair.DriverOnMount.DepthNeeded(thing);
    public LengthTerm FrontNeeded => pair.DriverOnMount.FrontNeeded();
    public LengthTerm HoleOfBody => pair.DriverOnMount.HoleOfBody(pair.Place);

    public LengthTerm Body => pair.Driver.Cutout;
    public LengthTerm Depth => pair.Driver.Depth;
    public LengthTerm FrontHeight => pair.Driver.FrontHeight;
    public LengthTerm CupHole => pair.Mount!.Opening;
    public LengthTerm CupOuter => pair.Mount!.Outer;
    public LengthTerm CupDepth => pair.Mount!.Depth;
    public LengthTerm CupGrilleGap => pair.Mount!.GrilleGap;
}
