using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>Whether the screws find their holes: spacer (or driver) on the panel, and driver on the spacer.</summary>
internal static class HoleFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact PanelHoles = Declarations.Number(
        "panel_holes", Dimension.One, "Screw holes that the vehicle has here.",
        Reads.Mounted.Itself, Reads.Adapter["handed", "tilt"], Reads.Place.Itself,
        Reads.OnPanel["adapter.vehicle_holes", "driver.holes"]);
    public static readonly NumberFact PanelHolesMeeting = Declarations.Number(
        "panel_holes_meeting", Dimension.One, "Screw holes of the vehicle that meet a hole of what is mounted on them.",
        Reads.Mounted.Itself, Reads.Adapter["handed", "tilt", "vehicle_holes.angles", "vehicle_holes.circle", "vehicle_holes.slot"],
        Reads.Place["mounting.holes.angles", "mounting.holes.circle"], Reads.OnPanel["adapter.vehicle_holes", "driver.holes"]);
    public static readonly WordFact PanelHolesMissedAt = Declarations.Word(
        "panel_holes_missed_at", "Where, on the clock face, the vehicle's screw holes meet none: `1:30, 4:30`.",
        Reads.Mounted.Itself, Reads.Adapter["handed", "tilt", "vehicle_holes.angles", "vehicle_holes.circle", "vehicle_holes.slot"],
        Reads.Place["mounting.holes.angles", "mounting.holes.circle"], Reads.OnPanel["adapter.vehicle_holes", "driver.holes"]);
    public static readonly WordFact PanelPart = Declarations.Word(
        "panel_part", "What is mounted on the panel: the spacer's or the driver's name.",
        Reads.Mounted.Itself, Reads.Adapter.Itself, Reads.Cup.Itself);
    public static readonly WordFact PanelTurn = Declarations.Word(
        "panel_turn", "How what is mounted on the panel has to be turned.",
        Reads.Mounted.Itself, Reads.Adapter["handed", "tilt", "vehicle_holes.angles", "vehicle_holes.circle", "vehicle_holes.slot"],
        Reads.Place.Itself);
    public static readonly TruthFact SpacerBlank = Declarations.Truth(
        "spacer_blank", "The spacer has no holes on one of its faces; they are for the fitter to drill.",
        Reads.Mounted.Itself, Reads.Adapter["driver_holes", "vehicle_holes"])
        .Saying("spacer has holes", "spacer without holes");
    public static readonly WordFact SpacerBlankFace = Declarations.Word(
        "spacer_blank_face", "The face on which the spacer has no holes.",
        Reads.Mounted.Itself, Reads.Adapter["driver_holes", "vehicle_holes"]);
    public static readonly NumberFact DriverHoles = Declarations.Number(
        "driver_holes", Dimension.One, "Screw holes in the driver's flange.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter["driver_holes"]);
    public static readonly NumberFact DriverHolesMeeting = Declarations.Number(
        "driver_holes_meeting", Dimension.One, "Screw holes of the driver that meet one of the spacer.",
        Reads.Mounted.Itself, Reads.Driver["holes.angles", "holes.circle"], Reads.Adapter["driver_holes"]);
    public static readonly WordFact DriverHolesMissedAt = Declarations.Word(
        "driver_holes_missed_at", "Where, on the clock face, the driver's screw holes meet none in the spacer.",
        Reads.Mounted.Itself, Reads.Driver["holes.angles", "holes.circle"],
        Reads.Adapter["driver_holes", "handed", "tilt", "vehicle_holes"],
        Reads.Place.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is null || c.Cup is not null || c.Driver.IsTweeter)
            return;
        if (c.Adapter is { } adapter)
            Blank(adapter, sheet);
        sheet.Set(PanelPart, c.Adapter?.Name ?? c.Driver.Name);
        if (c.Adapter is not { HasVehicleHoles: false })
            OnPanel(c, sheet);
        if (c.Adapter is { HasDriverHoles: not false })
            OnSpacer(c, sheet);
    }

    /// <inheritdoc cref="PanelFit(Position, Adapter, Driver, Practice)"/>
    public static HoleFit? PanelFit(PositionContext c) => PanelFit(c.Position, c.Adapter, c.Driver, c.Practice);

    /// <summary>Spacer, or driver without one, on the panel; null when a pattern is missing.</summary>
    public static HoleFit? PanelFit(Position position, Adapter? adapter, Driver? driver, Practice practice) =>
        IsTurnKnown(position, adapter) && position.Mounting.Holes is { } holes
            && (adapter is null ? driver?.Holes : adapter.VehicleHoles) is { } mounted
            ? new HoleFit(holes, mounted, practice.ScrewHoleClearance, Turns(position, adapter, driver)) : null;

    /// <inheritdoc cref="DriverFit(Adapter, Driver, Practice)"/>
    public static HoleFit? DriverFit(PositionContext c) => DriverFit(c.Adapter, c.Driver, c.Practice);

    /// <summary>
    /// The driver on the spacer's best pattern: the first of the fit is the spacer's, so that hours are the spacer's own; null when a
    /// pattern is missing.
    /// </summary>
    public static HoleFit? DriverFit(Adapter? adapter, Driver? driver, Practice practice)
    {
        if (adapter is not { DriverHoles: { Count: > 0 } patterns } || driver?.Holes is not { } holes)
            return null;
        HoleFit? best = null;
        foreach (var pattern in patterns)
        {
            var fit = new HoleFit(pattern, holes, practice.ScrewHoleClearance, driver.Oval ? [0, Math.PI] : null);
            if (best is null || fit.Meeting > best.Meeting)
                best = fit;
        }
        return best;
    }

    // Which way a spacer is turned hangs on its hand, and where it has none on its tilt.
    private static bool IsTurnKnown(Position position, Adapter? adapter) =>
        adapter is null or { Handed: "left" or "right" }
            || (adapter is { Handed: "no", Tilt: { } tilt } && (tilt.Si == 0 || position.Mounting.AimClock is not null));

    // A handed spacer is drawn as it goes into its door; an angled one, drawn with its tilt toward the top, is turned until it looks at the
    // listener; an oval part fits as it is and upside down. Anything else may be turned freely.
    private static double[]? Turns(Position position, Adapter? adapter, Driver? driver)
    {
        if (adapter is not null && adapter.Handed != "no")
            return [0];
        if (Aimed(position, adapter) is { } aim)
            return [aim];
        var oval = position.Mounting.CutoutMinor is not null || (adapter is null ? driver?.Oval == true : adapter.OpeningMinor is not null);
        return oval ? [0, Math.PI] : null;
    }

    // The turn that an angled spacer of no hand needs, radians; null when there is none or nobody says where to aim.
    private static double? Aimed(Position position, Adapter? adapter) =>
        adapter is { Handed: "no", Tilt.Si: not 0 } && position.Mounting.AimClock is { } hour ? hour * Math.PI / 6 : null;

    /// <summary>Whether a face of the spacer has no holes; null when that is not recorded.</summary>
    public static bool? IsBlank(Adapter adapter) => (adapter.HasVehicleHoles, adapter.HasDriverHoles) switch
    {
        (false, _) or (_, false) => true,
        (null, _) or (_, null) => null,
        _ => false,
    };

    private static void Blank(Adapter adapter, FactSheet sheet)
    {
        var (panel, driver) = (adapter.HasVehicleHoles == false, adapter.HasDriverHoles == false);
        sheet.Set(SpacerBlank, IsBlank(adapter) is { } blank
            ? FactValue.Of(blank) with { Data = [new Datum($"holes of {adapter.Name}", adapter.At)] }
            : FactValue.Unknown(FactType.Truth, new Unsure($"screw holes of {adapter.Name}",
                "Look at both of its faces and measure the circles of their holes; a face without any is `none`.", Estimated: false)
            { Key = DatumKey.In(adapter, "vehicle_holes") }));
        sheet.Set(SpacerBlankFace, (panel, driver) switch
        {
            (true, true) => "either face",
            (true, false) => "the panel's face",
            (false, true) => "the driver's face",
            _ => "no face",
        });
    }

    private static void OnPanel(PositionContext c, FactSheet sheet)
    {
        var part = c.Adapter?.Name ?? c.Driver!.Name;
        if (PanelFit(c) is not { } fit)
        {
            var (holes, there) =
                (c.Position.Mounting.Holes is not null, (c.Adapter is { } spacer ? spacer.VehicleHoles : c.Driver!.Holes) is not null);
            var missing = !holes ? c.AtPosition("screw holes in the panel")
                : there ? $"hand and tilt of {part}, and where it is to be aimed (`aim_clock`)" : c.OfDriver("screw holes in the flange");
            sheet.Set(PanelHolesMeeting, Unknown(missing, $"Lay {part} on the panel and mark which holes meet.",
                !holes ? c.Here("mounting.holes") : there ? null : DatumKey.In(c.Driver, "holes")));
            return;
        }
        sheet.Set(PanelHoles, fit.Total);
        sheet.Set(PanelHolesMeeting,
            Count(fit, $"Lay {part} on the panel and mark which holes meet.",
                fit.First is { AreAnglesTakenOver: true, Circle.IsEstimated: false }
                    ? (c.AtPosition("number of the screw holes in the panel"), c.Here("mounting.holes.count"))
                    : (c.AtPosition("screw holes in the panel"), c.Here("mounting.holes.circle")),
                ($"screw holes of {part}", DatumKey.In(c.Adapter, "vehicle_holes") ?? DatumKey.In(c.Driver, "holes"))));
        sheet.Set(PanelHolesMissedAt, HoleFit.Hours(fit.Missed()));
        sheet.Set(PanelTurn, Turn(c, fit));
    }

    private static string Turn(PositionContext c, HoleFit fit)
    {
        if (Aimed(c.Position, c.Adapter) is not { } aim)
            return c.Adapter is { Handed: not "no" } ? "as it is drawn for this side" : "turned until most holes meet";
        var at = $"with the sound aimed at {HoleFit.Clock(HoleFit.Hour(aim * 180 / Math.PI))}";
        var free = fit.Freely(aim);
        return free.Meeting > fit.Meeting
            ? $"{at} (aimed at {HoleFit.Clock(HoleFit.Hour(free.Rotation * 180 / Math.PI))} instead, "
                + $"{QuantityText.Number(free.Meeting, 0)} would meet)" : at;
    }

    private static void OnSpacer(PositionContext c, FactSheet sheet)
    {
        if (DriverFit(c) is not { } fit)
        {
            sheet.Set(DriverHolesMeeting,
                Unknown(c.OfDriver("screw holes in the flange"), "Lay the driver on the spacer and mark which holes meet.",
                    DatumKey.In(c.Driver, "holes")));
            return;
        }
        sheet.Set(DriverHoles, fit.Second.Angles.Count);
        sheet.Set(DriverHolesMeeting,
            Count(fit, "Lay the driver on the spacer and mark which holes meet.",
                ("screw holes of the spacer", DatumKey.In(c.Adapter, "driver_holes")),
                (c.OfDriver("screw holes in the flange"), DatumKey.In(c.Driver, "holes"))));
        sheet.Set(DriverHolesMissedAt, HoleFit.Hours(DrillAt(c, fit)));
    }

    /// <summary>The hours, seen from the listener with everything mounted, at which the spacer has no hole for the driver's.</summary>
    public static List<double> DrillAt(PositionContext c, HoleFit fit)
    {
        var turn = DriverTurn(c, fit);
        var hours = new List<double>();
        for (var i = 0; i < fit.Second.Angles.Count; i++)
        {
            if (!fit.Match.Used[i])
                hours.Add(HoleFit.Hour(fit.Second.Angles[i] + (turn * 180 / Math.PI)));
        }
        hours.Sort();
        return hours;
    }

    /// <summary>
    /// How far the driver is turned from its drawing with everything mounted, radians clockwise: by its spacer, and on it.
    /// </summary>
    public static double DriverTurn(PositionContext c, HoleFit fit) =>
        (PanelFit(c)?.Match.Rotation ?? Aimed(c.Position, c.Adapter) ?? 0) + fit.Match.Rotation;

    private static FactValue Count(HoleFit fit, string how, (string What, DatumKey? Key) first,
        (string What, DatumKey? Key) second) => FactValue.Of(Dimension.One, fit.Meeting) with
        {
            Data = [new Datum(first.What, fit.First.At), new Datum(second.What, fit.Second.At)],
            Unsure = fit.IsEstimated ? [Guessed(fit.First.Circle.IsEstimated || fit.First.AreAnglesTakenOver ? first : second, how)] : [],
        };

    private static Unsure Guessed((string What, DatumKey? Key) face, string how) =>
        new(face.What, how, Estimated: true) { Key = face.Key };

    private static FactValue Unknown(string what, string how, DatumKey? key) =>
        FactValue.Unknown(FactType.Number(Dimension.One), new Unsure(what, how, Estimated: false) { Key = key });
}
