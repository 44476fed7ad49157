using FitCheck.Builds;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using Formulas = FitCheck.Facts.Fitting.MountingFormulas<
    FitCheck.Charts.BestMount.ChartedLengths, FitCheck.Charts.BestMount.LengthTerm, FitCheck.Charts.BestMount.ObstacleBehind>;
using OfCup = FitCheck.Facts.Fitting.CupFormulas<FitCheck.Charts.BestMount.ChartedLengths, FitCheck.Charts.BestMount.LengthTerm>;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// The facts of a driver, what carries it and a place, in brief, as one thread walks through them: from what was worked out before where it
/// can be, by the formulas of the classes of facts.
/// </summary>
internal sealed class PlacedPairFacts(IReadOnlySet<string> accepts, Practice practice)
{
    private static readonly HashSet<string> PlaceNames = new(PlaceFacts.Declarations.Select(d => d.Name), StringComparer.Ordinal);

    /// <summary>The facts by name that take geometry, so that it is worth while to ask for others first.</summary>
    public static readonly IReadOnlySet<string> Slow = new HashSet<string>(StringComparer.Ordinal)
    {
        MountingFacts.DepthMargin.Name, MountingFacts.GlassMargin.Name, MountingFacts.HoleMargin.Name,
        MountingFacts.LargestHoleMargin.Name, MountingFacts.SideMargin.Name,
        HoleFacts.PanelHolesMeeting.Name, HoleFacts.DriverHolesMeeting.Name,
        AimFacts.OffAxisLoss.Name,
    };

    /// <summary>The numbers by name that are what a place has less what a driver needs on what carries it.</summary>
    public static readonly IReadOnlyDictionary<string, Spare> Spares = new Dictionary<string, Spare>(StringComparer.Ordinal)
    {
        [MountingFacts.FrontMargin.Name] = new(p => p.GrilleGap, m => m.FrontNeeded()),
    };

    private readonly ScrewHoles _holes = new();
    private FactSheet? _place;
    private FactTable? _whole;

    public Practice Practice => practice;
    public ChartedDriver Driver { get; set; } = null!;
    public ChartedMount? Mount { get; private set; }
    public ChartedPlace Place { get; private set; } = null!;
    public DriverOnMount DriverOnMount { get; private set; } = null!;

    public void Set(ChartedPlace place, ChartedMount? mount, DriverOnMount mated)
    {
        (Place, Mount, DriverOnMount) = (place, mount, mated);
        (_place, _whole) = (null, null);
    }

    /// <summary>The numbers by name that are worked out here, straight on the panel, on a spacer, and in a cup.</summary>
    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> OnPanel =
        new Dictionary<string, Func<PlacedPairFacts, LengthTerm>>(StringComparer.Ordinal)
        {
            [MountingFacts.DepthMargin.Name] = s => Least(s, Formulas.DepthMargins),
            [MountingFacts.GlassMargin.Name] = s => Least(s, Formulas.GlassMargins),
            [MountingFacts.SideMargin.Name] = s => Least(s, Formulas.SideMargins),
            [MountingFacts.FrontMargin.Name] = s => Formulas.FrontMargin(new(s)),
            [MountingFacts.HoleMargin.Name] = s => Least(s, Formulas.HoleMargins),
            [MountingFacts.LargestHoleMargin.Name] = s => Least(s, Formulas.LargestHoleMargins),
            [MountingFacts.FlangeMargin.Name] = s => Least(s, Formulas.FlangeMargins),
            [MountingFacts.FlangeOverlap.Name] = s => Least(s, Formulas.FlangeOverlaps),
            [MaterialFacts.PanelMaterialLeft.Name] = s => Material(s, Formulas.PanelMaterials),
            [MaterialFacts.DriverMass.Name] = s => s.Driver.Driver.IsTweeter ? LengthTerm.Missing : s.Driver.Mass,
            [CupPlaceFacts.TweeterFlangeRest.Name] =
                s => s.Driver.Driver.IsTweeter ? Least(s, Formulas.FlangeOverlaps) : LengthTerm.Missing,
            [HoleFacts.PanelHoles.Name] = s => s.PanelHoles().Total,
            [HoleFacts.PanelHolesMeeting.Name] = s => s.PanelHoles().Meeting,
        };

    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> OnSpacer =
        new Dictionary<string, Func<PlacedPairFacts, LengthTerm>>(OnPanel, StringComparer.Ordinal)
        {
            [MountingFacts.OpeningMargin.Name] = s => Least(s, Formulas.OpeningMargins),
            [MountingFacts.TabMargin.Name] = s => Formulas.TabMargin(new(s)),
            [MountingFacts.AdapterRecessMargin.Name] = s => Least(s, Formulas.SpacerRecessMargins),
            [MountingFacts.AdapterOverlap.Name] = s => Least(s, Formulas.SpacerOverlaps),
            [MaterialFacts.SpacerMaterialLeft.Name] = s => Material(s, Formulas.SpacerMaterials),
            [HoleFacts.DriverHoles.Name] = s => s.DriverHoles().Total,
            [HoleFacts.DriverHolesMeeting.Name] = s => s.DriverHoles().Meeting,
        };

    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> InCup =
        new Dictionary<string, Func<PlacedPairFacts, LengthTerm>>(StringComparer.Ordinal)
        {
            [CupFacts.CupHoleGap.Name] = s => OfCup.HoleGap(new(s)),
            [CupFacts.CupWallLeft.Name] = s => OfCup.WallLeft(new(s)),
            [CupFacts.CupDepthMargin.Name] = s => OfCup.DepthMargin(new(s)),
            [CupFacts.CupGrilleMargin.Name] = s => OfCup.GrilleMargin(new(s)),
            [CupPlaceFacts.TweeterFlangeRest.Name] = s => s.Driver.Driver.IsTweeter ? Least(s, OfCup.FlangeRests) : LengthTerm.Missing,
            [CupPlaceFacts.CupRecessMargin.Name] = s => OfCup.RecessMargin(new(s)),
            [CupPlaceFacts.PlaceHoleSpare.Name] = s => OfCup.PlaceHoleSpare(new(s)),
            [CupPlaceFacts.LargestPlaceHoleSpare.Name] =
                s => OfCup.LargestPlaceHoleSpare(new(s)),
            [CupPlaceFacts.CupOverHole.Name] = s => OfCup.CupOverHole(new(s)),
            [CupPlaceFacts.PlaceDepthSpare.Name] = s => OfCup.PlaceDepthSpare(new(s)),
            [CupPlaceFacts.PlaceGrilleSpare.Name] = s => OfCup.PlaceGrilleSpare(new(s)),
        };

    /// <summary>
    /// A fact that is no number of these: what comes up most is looked up, the rest is what the classes of facts find, the slow way.
    /// </summary>
    public static Func<PlacedPairFacts, Brief> Other(string fact) => Others.GetValueOrDefault(fact) ?? (s => s.Slowly(fact));

    private static readonly Dictionary<string, Func<PlacedPairFacts, Brief>> Others = new(StringComparer.Ordinal)
    {
        [PlaceFacts.RoleFits.Name] = s => Brief.Of(PlaceFacts.Suits(s.Driver.Driver.Type, s.Place.Position.Role)),
        [MountingFacts.HasGlass.Name] =
            s => s.Mount?.Cup is null ? Of(s.Place.Position.Mounting.HasMoving) : s.Slowly(MountingFacts.HasGlass.Name),
        [MountingFacts.HasThingsBeside.Name] =
            s => s.Mount?.Cup is null ? Of(s.Place.HasThingsBeside) : s.Slowly(MountingFacts.HasThingsBeside.Name),
        [AimFacts.OffAxisLoss.Name] = s => s.Driver.Driver.IsTweeter ? s.OffAxis() : s.Slowly(AimFacts.OffAxisLoss.Name),
        [HoleFacts.SpacerBlank.Name] = s => s.Mount?.Adapter is { } spacer ? Of(HoleFacts.IsBlank(spacer)) : Brief.Unknown,
        [MaterialFacts.PanelEdgeRound.Name] = s => s.Mount?.Cup is null && !s.Driver.Driver.IsTweeter
            ? Brief.Of(MaterialFacts.IsPanelRound(s.Place.Position, s.Driver.Driver)) : Brief.Unknown,
        [MaterialFacts.SpacerEdgeRound.Name] = s => s.Mount?.Adapter is { } spacer && !s.Driver.Driver.IsTweeter
            ? Brief.Of(MaterialFacts.IsSpacerRound(spacer)) : Brief.Unknown,
        [CupPlaceFacts.PlaceHoleDecides.Name] = s => Decides(s, d => d.Hole),
        [CupPlaceFacts.PlaceDepthDecides.Name] = s => Decides(s, d => d.Depth),
        [CupPlaceFacts.PlaceGrilleDecides.Name] = s => Decides(s, d => d.Grille),
        [PlaceFacts.PlasticPanel.Name] = s => Of(PlaceFacts.IsPlastic(s.Place.Position)),
        [PlaceFacts.MetalPanel.Name] = s => Of(PlaceFacts.IsMetal(s.Place.Position)),
        [PlaceFacts.PlasticSpacer.Name] = s => s.Mount?.Adapter is { } spacer ? Of(PlaceFacts.IsPlastic(spacer)) : Brief.Unknown,
        [PlaceFacts.AdapterHandFits.Name] = s => s.Mount?.Adapter is { } spacer ? Of(PlaceFacts.HandFits(spacer, s.Place.Position))
            : Brief.Unknown,
        // What is charted is made for the place, as far as anybody wrote what it is made for.
        [PlaceFacts.AdapterFitsHere.Name] =
            s => s.Mount?.Adapter is { } spacer && (spacer.Fits.Count > 0 || spacer.IsUniversal) ? Brief.Of(true) : Brief.Unknown,
        [PlaceFacts.CupFitsHere.Name] =
            s => s.Mount?.Cup is { } cup && (cup.Fits.Count > 0 || cup.IsUniversal) ? Brief.Of(true) : Brief.Unknown,
        [PlaceFacts.HasRecess.Name] = s => Of(s.Place.Position.Mounting.HasRecess),
        [PlaceFacts.HasInnerTabs.Name] = s => Of(s.Mount?.Adapter?.HasTabs),
        [PlaceFacts.HasDirection.Name] = s => Of(PlaceFacts.Faces(s.Place.Position)),
        [CupFacts.CupCuttable.Name] =
            s => s.Mount?.Cup is { } cup ? cup.Cuttable is { } cuttable ? Brief.Of(cuttable) : Brief.Unknown
                : s.Slowly(CupFacts.CupCuttable.Name),
    };

    /// <summary>True of a fact that <see cref="Other"/> need not find the slow way.</summary>
    public static bool IsLookedUp(string fact) => Others.ContainsKey(fact);

    private static Brief Of(bool? truth) => truth is { } known ? Brief.Of(known) : Brief.Unknown;

    // What is simply so of place and parts, or what all the classes of facts find.
    private Brief Slowly(string fact)
    {
        if (PlaceNames.Contains(fact))
        {
            if (_place is null)
            {
                _place = new FactSheet();
                var build = new Pair(Place.Vehicle, Place.Position, Driver.Driver, Mount?.Part).Build(accepts);
                PlaceFacts.Compute(new PositionContext(build, build.Placed[0], null, practice), _place);
            }
            return Brief.Of(_place.Values.GetValueOrDefault(fact));
        }
        _whole ??= new Pair(Place.Vehicle, Place.Position, Driver.Driver, Mount?.Part).Facts(accepts, practice);
        return Brief.Of(_whole.Values.GetValueOrDefault(fact));
    }

    private static Brief Decides(PlacedPairFacts s, Func<(bool Hole, bool Depth, bool? Grille), bool?> which) => s.Mount?.Cup is { } cup
        ? Of(which(CupPlaceFacts.Decides(cup, s.Driver.Driver, s.Place.Position, s.Place.Vehicle.Id))) : Brief.Unknown;

    private static LengthTerm Material(PlacedPairFacts pair, Margins of) =>
        pair.Driver.Driver.IsTweeter ? LengthTerm.Missing : Least(pair, of);

    private delegate void Margins(in ChartedLengths pair, ref LeastLengthTerm margins);

    private static LengthTerm Least(PlacedPairFacts pair, Margins of)
    {
        var least = new LeastLengthTerm();
        of(new ChartedLengths(pair), ref least);
        return least.Value;
    }

    private Holes PanelHoles() => _holes.OnPanel(this);

    private Holes DriverHoles() => _holes.OnSpacer(this);

    // Nothing that carries a tweeter tilts it.
    private Brief OffAxis() => Place.Angle is { } angle && AimFacts.LossOffAxis(Driver.Driver, angle) is { } loss
        ? Brief.Of(Physics.Quantities.Uncertain.Exact(loss), Place.AngleIsGuess ? Doubt.Guessed : Doubt.None) : Brief.Unknown;
}

/// <summary>What a place has, and what a driver needs of it on what carries it.</summary>
internal sealed record Spare(Func<ChartedPlace, LengthTerm> There, Func<DriverOnMount, LengthTerm> Needed);
