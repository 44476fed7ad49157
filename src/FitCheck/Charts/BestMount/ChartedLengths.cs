using FitCheck.Facts.Fitting;

namespace FitCheck.Charts.BestMount;

/// <summary>The lengths of a driver, what carries it and a place as bare numbers, from what was worked out before.</summary>
internal readonly struct ChartedLengths(PlacedPairFacts pair) : IMountedPair<LengthTerm, ObstacleBehind>, ICuppedTweeter<LengthTerm>
{
    public bool IsOval => pair.Driver.Driver.Oval;
    public LengthTerm Flange => pair.Driver.Flange;
    public LengthTerm FlangeMinor => pair.Driver.FlangeMinor;
    public LengthTerm Cutout => pair.Driver.Cutout;
    public LengthTerm CutoutMinor => pair.Driver.CutoutMinor;

    public bool IsOnSpacer => pair.Mount is not null;
    public LengthTerm Opening => pair.Mount!.Opening;
    public LengthTerm OpeningMinor => pair.Mount!.OpeningMinor;
    public LengthTerm SpacerOuter => pair.Mount!.Outer;
    public LengthTerm SpacerOuterMinor => pair.Mount!.OuterMinor;
    public LengthTerm Tabs => pair.Mount!.Tabs;

    public LengthTerm Recess => pair.Place.Recess;
    public LengthTerm RecessMinor => pair.Place.RecessMinor;
    public LengthTerm GrilleGap => pair.Place.GrilleGap;
    public LengthTerm Hole => pair.Place.Cutout;
    public LengthTerm HoleMinor => pair.Place.CutoutMinor;
    public LengthTerm LargestHole => pair.Place.LargestCutout;

    public ObstacleBehind Behind => pair.Place.Behind;
    public ReadOnlySpan<ObstacleBehind> Fixed => pair.Place.Fixed;
    public ReadOnlySpan<ObstacleBehind> Moving => pair.Place.Moving;
    public LengthTerm DepthTo(in ObstacleBehind thing) => thing.Depth;
    public bool IsAside(in ObstacleBehind thing) => thing.IsAside;
    public LengthTerm BeginOf(in ObstacleBehind thing) => thing.FromRadius;
    public LengthTerm ReachBehind(in ObstacleBehind thing) => pair.DriverOnMount.ReachBehind(thing);

    public bool AreThingsRecorded => pair.Place.Position.Mounting.AreObstructionsRecorded;

    public LengthTerm ToUnrecorded =>
        DepthNeeded(Behind) is var needed && needed.High <= 0 ? LengthTerm.Difference(LengthTerm.Exactly(0), needed)
            : LengthTerm.Missing;

    public LengthTerm DepthNeeded(in ObstacleBehind thing) => pair.DriverOnMount.DepthNeeded(thing);
    public LengthTerm FrontNeeded => pair.DriverOnMount.FrontNeeded();
    public LengthTerm HoleOfBody => pair.DriverOnMount.HoleOfBody(pair.Place);
    public LengthTerm HoleOfBodyMinor => pair.DriverOnMount.HoleOfBodyMinor(pair.Place);

    public LengthTerm Body => pair.Driver.Cutout;
    public LengthTerm Depth => pair.Driver.Depth;
    public LengthTerm FrontHeight => pair.Driver.FrontHeight;
    public LengthTerm CupHole => pair.Mount!.Opening;
    public LengthTerm CupOuter => pair.Mount!.Outer;
    public LengthTerm CupDepth => pair.Mount!.Depth;
    public LengthTerm CupGrilleGap => pair.Mount!.GrilleGap;
    public LengthTerm CupRecess => pair.Mount!.Recess;
    public LengthTerm CupCutout => pair.Mount!.Cutout;
    public bool IsCupMadeHere => CupPlaceFacts.IsMadeFor(pair.Mount!.Cup!, pair.Place.Vehicle.Id, pair.Place.Position.Id);
    public LengthTerm PlaceDepth => pair.Place.Behind.Depth;

    public LengthTerm DriverCircle => pair.Driver.Circle;
    public LengthTerm DriverScrew => pair.Driver.Screw;
    public LengthTerm PanelCircle => pair.Mount is { } spacer ? spacer.Circle : pair.Driver.Circle;
    public LengthTerm PanelScrew => pair.Mount is { } spacer ? spacer.Screw : pair.Driver.Screw;
}
