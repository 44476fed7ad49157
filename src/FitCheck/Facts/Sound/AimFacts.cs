using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>How far the driver is from the listener, how far off its axis it is heard, and which way to turn it.</summary>
internal static class AimFacts
{
    // A coaxial throws its treble with a tweeter of its own.
    private static readonly string[] Directional = ["tweeter", "woofer", "full-range"];

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact ListenerDistance = Declarations.Number(
        "listener_distance", Dimension.Metre, "Distance from the driver to the point between the front seats' heads.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Place["location"]);
    public static readonly NumberFact ListenerAngle = Declarations.Number(
        "listener_angle", Dimension.Radian,
        "Angle between the driver's axis and the line to the listener; the panel's direction is the usual one of its place.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter["tilt"], Reads.Place["location", "mounting.aim_clock"]);
    public static readonly NumberFact OffAxisLoss = Declarations.Number(
        "off_axis_loss", Dimension.Decibel, "Level lost off the axis of a rigid piston, at 10 kHz for a tweeter and at 3 kHz for a woofer.",
        Reads.Mounted.Itself, Reads.Driver["parameters.sd", "size"], Reads.Adapter["tilt"], Reads.Place["location", "mounting.aim_clock"]);
    public static readonly NumberFact SidePathDifference = Declarations.Number(
        "side_path_difference", Dimension.Metre,
        "How much nearer the person at the wheel is to the near one of the left and right drivers.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Place["location"], Reads.Vehicle["steering"]);
    public static readonly NumberFact PairPathDifference = Declarations.Number(
        "pair_path_difference", Dimension.Metre, "How much farther the woofer is from the listener than the tweeter on the same output.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter.Itself, Reads.Cup.Itself, Reads.Place["location"], Reads.Network.Itself);
    public static readonly WordFact SpacerThickSide = Declarations.Word(
        "spacer_thick_side", "The hour towards which the thick side of a tilted spacer points, seen from inside the vehicle.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter["tilt"], Reads.Place["location", "mounting.aim_clock"]);
    public static readonly WordFact AimTowards = Declarations.Word(
        "aim_towards", "The hour towards which the driver should look, seen from inside the vehicle.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Place["location", "mounting.aim_clock"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { } driver || driver.Type == "subwoofer")
            return;
        if (Aim.Of(c.Position, c.Tilt) is not { } aim)
        {
            var unknown = FactValue.Unknown(FactType.Number(Dimension.Metre), Location(c.Position, estimated: false));
            sheet.Set(ListenerDistance, unknown);
            sheet.Set(ListenerAngle, FactValue.Unknown(FactType.Number(Dimension.Radian), [.. unknown.Unsure]));
            sheet.Set(OffAxisLoss, FactValue.Unknown(FactType.Number(Dimension.Decibel), [.. unknown.Unsure]));
            return;
        }
        IReadOnlyList<Unsure> unsure = Unsures(c.Position);
        sheet.Set(ListenerDistance, Of(Dimension.Metre, aim.Distance));
        if (aim.Angle is { } angle)
        {
            sheet.Set(ListenerAngle, Of(Dimension.Radian, angle));
            if (LossOffAxis(driver, angle) is { } loss)
                sheet.Set(OffAxisLoss, Of(Dimension.Decibel, loss));
            else if (Array.IndexOf(Directional, driver.Type) >= 0)
                sheet.Set(OffAxisLoss, FactValue.Unknown(FactType.Number(Dimension.Decibel),
                    new Unsure($"effective piston area of {driver.Name}", "Measure its cone or dome across.", Estimated: false)
                    { Key = DatumKey.In(driver, "parameters.sd") }));
        }
        if (aim.Hour is { } hour)
        {
            sheet.Set(AimTowards, HourText.Of(hour));
            if (c.Tilt > 0)
                sheet.Set(SpacerThickSide, HourText.Of(hour + 6));
        }
        Paths(c, aim, sheet);

        FactValue Of(Dimension dimension, double si) => FactValue.Of(dimension, si) with { Unsure = unsure, Data = Data(c.Position) };
    }

    /// <summary>Decibels lost at an angle (radians) off the axis; null for a driver that has no direction of its own, or no size.</summary>
    public static double? LossOffAxis(Catalog.Driver driver, double angle) =>
        Array.IndexOf(Directional, driver.Type) >= 0 && Radius(driver) is { } radius
        ? -PistonDirectivity.Db(driver.IsTweeter ? 10_000 : 3_000, radius, Math.Min(angle, Math.PI / 2)) : null;

    /// <summary>
    /// Radius of the piston: from its area, else half the dome of a tweeter, else four tenths of the size class (common practice, no
    /// source).
    /// </summary>
    public static double? Radius(Catalog.Driver driver) =>
        driver.Parameters?.Sd is { Si: > 0 } area ? Math.Sqrt(area.Si / Math.PI)
        : driver.Size is { } size ? (driver.IsTweeter ? 0.5 : 0.4) * size.Si : null;

    public static Unsure Location(Catalog.Position position, bool estimated) => new(
        $"where {position.Name} is",
        "Measure from the middle of the driver to the point between the front head restraints: forward, sideways and up.", estimated)
    { Key = new(position.Id, DatumKey.Position, "location") };

    public static IReadOnlyList<Unsure> Unsures(Catalog.Position position) =>
        Aim.IsEstimated(position) || PlaceFacts.Faces(position) is null ? [Location(position, estimated: true)] : [];

    private static void Paths(PositionContext c, Aim aim, FactSheet sheet)
    {
        if (c.Build.Vehicle.Steering is { } side && aim.Location.Y != 0)
        {
            // The head is an assumption, not a datum: good for a setting to start from, never for a pass.
            var head = new Direction(0, side == "left" ? -c.Practice.SeatOffset : c.Practice.SeatOffset, 0);
            var mirrored = aim.Location with { Y = -aim.Location.Y };
            var difference = Math.Abs((aim.Location + head).Length - (mirrored + head).Length);
            sheet.Set(SidePathDifference, FactValue.Of(Dimension.Metre, difference) with { Unsure = [Seat(c.Build)] });
        }
        if (LevelFacts.WooferBeside(c) is { } woofer && Aim.Of(woofer.Position, 0) is { } other)
            sheet.Set(PairPathDifference,
                FactValue.Of(Dimension.Metre, other.Distance - aim.Distance)
                    with
                { Unsure = [.. Unsures(c.Position), .. Unsures(woofer.Position)] });
    }

    private static Unsure Seat(Build build) =>
        new($"where the head of the person at the wheel of {build.Vehicle.Name} is", "Measure from both drivers to the head restraint.",
            Estimated: true);

    private static List<Datum> Data(Catalog.Position position) => [new Datum($"location of {position.Name}", position.Location[0].At)];
}
