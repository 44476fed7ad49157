using FitCheck.Facts;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using Formulas = FitCheck.Facts.Fitting.MountingFormulas<FitCheck.Charts.ChartedLengths, FitCheck.Charts.LengthTerm, FitCheck.Charts.ObstacleBehind>;
using OfCup = FitCheck.Facts.Fitting.CupFormulas<FitCheck.Charts.ChartedLengths, FitCheck.Charts.LengthTerm>;

namespace FitCheck.Charts;

/// <summary>
/// The facts of a driver, what carries it and a place, in brief, as one thread walks through them: from what was worked out before where
/// it can be, by
/// the formulas of the classes of facts.
/// </summary>
internal sealed class PlacedPairFacts(IReadOnlySet<string> accepts)
{
    private static readonly HashSet<string> PlaceNames = new(PlaceFacts.Declarations.Select(d => d.Name), StringComparer.Ordinal);

    /// <summary>The facts by name that take geometry, so that it is worth while to ask for others first.</summary>
    public static readonly IReadOnlySet<string> Slow = new HashSet<string>(StringComparer.Ordinal)
    {
        "depth_margin", "glass_margin", "hole_margin", "largest_hole_margin", "panel_holes_meeting", "driver_holes_meeting",
            "off_axis_loss",
    };

    /// <summary>The numbers by name that are what a place has less what a driver needs on what carries it.</summary>
    public static readonly IReadOnlyDictionary<string, (Func<ChartedPlace, LengthTerm> There, Func<DriverOnMount,
        LengthTerm> Needed)> Spares =
        new Dictionary<string, (Func<ChartedPlace, LengthTerm>, Func<DriverOnMount,
            LengthTerm>)>(StringComparer.Ordinal)
        { ["front_margin"] = (p => p.GrilleGap, m => m.FrontNeeded()) };

    private readonly ScrewHoles _holes = new();
    private FactSheet? _place;
    private FactTable? _whole;

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
    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> OnPanel = new Dictionary<string,
        Func<PlacedPairFacts, LengthTerm>>(StringComparer.Ordinal)
    {
        ["depth_margin"] = s => Least(s, Formulas.DepthMargins),
        ["glass_margin"] = s => Least(s, Formulas.GlassMargins),
        ["front_margin"] = s => Formulas.FrontMargin(new(s)),
        ["hole_margin"] = s => Least(s, Formulas.HoleMargins),
        ["largest_hole_margin"] = s => Least(s, Formulas.LargestHoleMargins),
        ["flange_margin"] = s => Formulas.FlangeMargin(new(s)),
        ["flange_overlap"] = s => Formulas.FlangeOverlap(new(s)),
        ["panel_holes"] = s => s.PanelHoles().Total,
        ["panel_holes_meeting"] = s => s.PanelHoles().Meeting,
    };

    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> OnSpacer = new Dictionary<string,
        Func<PlacedPairFacts, LengthTerm>>(OnPanel, StringComparer.Ordinal)
    {
        ["opening_margin"] = s => Formulas.OpeningMargin(new(s)),
        ["tab_margin"] = s => Formulas.TabMargin(new(s)),
        ["adapter_recess_margin"] = s => Formulas.SpacerRecessMargin(new(s)),
        ["adapter_overlap"] = s => Formulas.SpacerOverlap(new(s)),
        ["driver_holes"] = s => s.DriverHoles().Total,
        ["driver_holes_meeting"] = s => s.DriverHoles().Meeting,
    };

    public static readonly IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> InCup = new Dictionary<string,
        Func<PlacedPairFacts, LengthTerm>>(StringComparer.Ordinal)
    {
        ["cup_hole_gap"] = s => OfCup.HoleGap(new(s)),
        ["cup_wall_left"] = s => OfCup.WallLeft(new(s)),
        ["cup_depth_margin"] = s => OfCup.DepthMargin(new(s)),
        ["cup_grille_margin"] = s => OfCup.GrilleMargin(new(s)),
    };

    /// <summary>
    /// A fact that is no number of these: what comes up most is looked up, the rest is what the classes of facts find, the slow way.
    /// </summary>
    public static Func<PlacedPairFacts, Brief> Other(string fact) => fact switch
    {
        "role_fits" => s => Brief.Of(PlaceFacts.Suits(s.Driver.Driver.Type, s.Place.Position.Role)),
        "has_glass" => s => s.Mount?.Cup is null ? Brief.Of(s.Place.Moving.Length > 0) : s.Slowly(fact),
        "off_axis_loss" => s => s.Driver.Driver.IsTweeter ? s.OffAxis() : s.Slowly(fact),
        "spacer_blank" => s => s.Mount?.Adapter is { } spacer ? Brief.Of(HoleFacts.IsBlank(spacer)) : Brief.Unknown,
        "adapter_hand_fits" => s => s.Mount?.Adapter is { } spacer ? Brief.Of(PlaceFacts.HandFits(spacer, s.Place.Position))
            : Brief.Unknown,
        // What is charted is made for the place.
        "adapter_fits_here" => s => s.Mount?.Adapter is null ? Brief.Unknown : Brief.Of(true),
        "cup_fits_here" => s => s.Mount?.Cup is null ? Brief.Unknown : Brief.Of(true),
        "cup_cuttable" => s => s.Mount?.Cup is { } cup ? cup.Cuttable is { } cuttable ? Brief.Of(cuttable) : Brief.Unknown : s.Slowly(fact),
        _ => s => s.Slowly(fact),
    };

    // What is simply so of place and parts, or what all the classes of facts find.
    private Brief Slowly(string fact)
    {
        if (PlaceNames.Contains(fact))
        {
            if (_place is null)
            {
                _place = new FactSheet();
                var build = new Pair(Place.Vehicle, Place.Position, Driver.Driver, Mount?.Part).Build(accepts);
                PlaceFacts.Compute(new PositionContext(build, build.Placed[0], null), _place);
            }
            return Brief.Of(_place.Values.GetValueOrDefault(fact));
        }
        _whole ??= new Pair(Place.Vehicle, Place.Position, Driver.Driver, Mount?.Part).Facts(accepts);
        return Brief.Of(_whole.Values.GetValueOrDefault(fact));
    }

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
