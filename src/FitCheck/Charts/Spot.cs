using FitCheck.Builds;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;

namespace FitCheck.Charts;

/// <summary>
/// A driver, what carries it and a place, as one thread walks through them: facts in brief, from what was worked out before where it can be. Each formula
/// here is a difference of what is there and what is needed; what is needed comes from the classes of facts, and tests hold all of it to them.
/// </summary>
internal sealed class Spot(IReadOnlySet<string> accepts)
{
    private static readonly HashSet<string> PlaceNames = new(PlaceFacts.Declarations.Select(d => d.Name), StringComparer.Ordinal);

    /// <summary>The facts by name that take geometry, so that it is worth while to ask for others first.</summary>
    public static readonly IReadOnlySet<string> Slow = new HashSet<string>(StringComparer.Ordinal)
    {
        "depth_margin", "glass_margin", "hole_margin", "largest_hole_margin", "panel_holes_meeting", "driver_holes_meeting", "off_axis_loss",
    };

    /// <summary>The numbers by name that are what a place has less what a driver needs on what carries it.</summary>
    public static readonly IReadOnlyDictionary<string, (Func<PlaceSide, Term> There, Func<Mated, Term> Needed)> Spares =
        new Dictionary<string, (Func<PlaceSide, Term>, Func<Mated, Term>)>(StringComparer.Ordinal) { ["front_margin"] = (p => p.GrilleGap, m => m.FrontNeeded()) };

    private readonly ScrewHoles _holes = new();
    private FactSheet? _place;
    private FactTable? _whole;

    public DriverSide Driver { get; set; } = null!;
    public MountSide? Mount { get; private set; }
    public PlaceSide Place { get; private set; } = null!;
    public Mated Mated { get; private set; } = null!;

    public void Set(PlaceSide place, MountSide? mount, Mated mated)
    {
        (Place, Mount, Mated) = (place, mount, mated);
        (_place, _whole) = (null, null);
    }

    /// <summary>The numbers by name that are worked out here, straight on the panel, on a spacer, and in a cup.</summary>
    public static readonly IReadOnlyDictionary<string, Func<Spot, Term>> OnPanel = new Dictionary<string, Func<Spot, Term>>(StringComparer.Ordinal)
    {
        ["depth_margin"] = s => s.DepthMargin(),
        ["glass_margin"] = s => s.GlassMargin(),
        ["front_margin"] = s => Term.Difference(s.Place.GrilleGap, s.Mated.FrontNeeded()),
        ["hole_margin"] = s => s.HoleMargin(s.Hole),
        ["largest_hole_margin"] = s => s.Place.LargestCutout.IsMissing ? Term.Missing : s.HoleMargin(s.Place.LargestCutout),
        ["flange_margin"] = s => Term.Difference(s.Place.Recess, s.Driver.Flange),
        ["flange_overlap"] = s => Term.Difference(s.Driver.Flange, s.Place.Cutout, 0.5),
        ["panel_holes"] = s => s.PanelHoles().Total,
        ["panel_holes_meeting"] = s => s.PanelHoles().Meeting,
    };

    public static readonly IReadOnlyDictionary<string, Func<Spot, Term>> OnSpacer = new Dictionary<string, Func<Spot, Term>>(OnPanel, StringComparer.Ordinal)
    {
        ["flange_overlap"] = s => Term.Difference(s.Driver.Flange, s.Mount!.Opening, 0.5),
        ["opening_margin"] = s => Term.Difference(s.Mount!.Opening, s.Driver.Cutout),
        ["tab_margin"] = s => s.TabMargin(),
        ["adapter_recess_margin"] = s => Term.Difference(s.Place.Recess, s.Mount!.Outer),
        ["adapter_overlap"] = s => Term.Difference(s.Mount!.Outer, s.Place.Cutout, 0.5),
        ["driver_holes"] = s => s.DriverHoles().Total,
        ["driver_holes_meeting"] = s => s.DriverHoles().Meeting,
    };

    public static readonly IReadOnlyDictionary<string, Func<Spot, Term>> InCup = new Dictionary<string, Func<Spot, Term>>(StringComparer.Ordinal)
    {
        ["cup_hole_gap"] = s => Term.Difference(s.Mount!.Opening, s.Driver.Cutout),
        ["cup_wall_left"] = s => Term.Difference(s.Mount!.Outer, s.Driver.Cutout, 0.5),
        ["cup_depth_margin"] = s => Term.Difference(s.Mount!.Depth, s.Driver.Depth),
        ["cup_grille_margin"] = s => Term.Difference(s.Mount!.GrilleGap, s.Driver.FrontHeight),
    };

    /// <summary>A fact that is no number of these: what comes up most is looked up, the rest is what the classes of facts find, the slow way.</summary>
    public static Func<Spot, Brief> Other(string fact) => fact switch
    {
        "role_fits" => s => Brief.Of(PlaceFacts.Suits(s.Driver.Driver.Type, s.Place.Position.Role), unsure: false),
        "has_glass" => s => s.Mount?.Cup is null ? Brief.Of(s.Place.Moving.Length > 0, unsure: false) : s.Slowly(fact),
        "off_axis_loss" => s => s.OffAxis(),
        "spacer_blank" => s => s.Mount?.Adapter is { } spacer ? Brief.Of(spacer is { VehicleHoles: null } or { DriverHoles.Count: 0 }, unsure: false) : Brief.Unknown,
        "adapter_hand_fits" => s => s.Mount?.Adapter is { } spacer ? Brief.Of(spacer.Handed == "no" || spacer.Handed == s.Place.Position.Side, unsure: false) : Brief.Unknown,
        // What is charted is made for the place.
        "adapter_fits_here" => s => s.Mount?.Adapter is null ? Brief.Unknown : Brief.Of(true, unsure: false),
        "cup_fits_here" => s => s.Mount?.Cup is null ? Brief.Unknown : Brief.Of(true, unsure: false),
        "cup_cuttable" => s => s.Mount?.Cup is { } cup ? cup.Cuttable is { } cuttable ? Brief.Of(cuttable, unsure: false) : Brief.Unknown : s.Slowly(fact),
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

    private Term DepthMargin()
    {
        var least = new LeastMargin();
        least.Add(Term.Difference(Place.Behind.Depth, Mated.DepthNeeded(Place.Behind)));
        foreach (ref readonly var thing in Place.Fixed.AsSpan())
            least.Add(Term.Difference(thing.Depth, Mated.DepthNeeded(thing)));
        return least.Value;
    }

    private Term GlassMargin()
    {
        var least = new LeastMargin();
        foreach (ref readonly var thing in Place.Moving.AsSpan())
            least.Add(Term.Difference(thing.Depth, Mated.DepthNeeded(thing)));
        return least.Value;
    }

    // A round body in an oval hole is held by the short axis.
    private Term Hole => Driver.CutoutMinor.IsMissing && !Place.CutoutMinor.IsMissing ? Place.CutoutMinor : Place.Cutout;

    private Term HoleMargin(in Term hole)
    {
        var margin = Term.Difference(hole, Mount is null ? Driver.Cutout : Mated.HoleNeeded(Place));
        if (Driver.CutoutMinor.IsMissing)
            return margin;
        var least = new LeastMargin();
        least.Add(margin);
        least.Add(Term.Difference(Place.CutoutMinor.IsMissing ? Place.Cutout : Place.CutoutMinor, Driver.CutoutMinor));
        return least.Value;
    }

    private Term TabMargin()
    {
        if (Mount!.Tabs is not { } tabs)
            return Term.Missing;
        var radius = Term.Of(tabs);
        return Term.Difference(radius with { Si = 2 * radius.Si, HalfWidth = 2 * radius.HalfWidth }, Driver.Cutout);
    }

    private Holes PanelHoles() => _holes.OnPanel(this);

    private Holes DriverHoles() => _holes.OnSpacer(this);

    private Brief OffAxis() => Place.Angle is { } angle && Driver.Radius is { } radius && Driver.Driver.IsTweeter
        ? Brief.Of(Physics.Quantities.Uncertain.Exact(-PistonDirectivity.Db(10_000, radius, Math.Min(angle, Math.PI / 2))), Place.AngleIsGuess)
        : Driver.Driver.IsTweeter ? Brief.Unknown : Slowly("off_axis_loss");
}
