using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>
/// The way that a supply cable has to take in this vehicle, from where it begins to where the amplifier or the block sits.
/// </summary>
internal static class WayFacts
{
    public const string Cargo = "cargo", Seat = "under-seat", Dash = "dash";

    public static readonly FactGroup OfRun = new(Subject.Device);

    public static readonly NumberFact PlannedWay = OfRun.Number(
        "planned_way", Dimension.Metre,
        "Length of the power cable that the build plans with; where it gives none, a guess from the vehicle's route to the cargo space.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact PlannedGround = OfRun.Number(
        "planned_ground", Dimension.Metre,
        "Length of the ground cable that the build plans with; where it gives none, a guess.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly WordFact EndPlace = OfRun.Word(
        "end_place", "Where the power cable ends, in words.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact PlaceWay = OfRun.Number(
        "place_way", Dimension.Metre,
        "Route in this vehicle from where the power cable begins to where it ends; within what it can be where that place is not written.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact EngineWay = OfRun.Number(
        "engine_way", Dimension.Metre,
        "Way from a battery in the engine space to the cargo space; nothing for a battery elsewhere and for a cable from a block.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);

    private static readonly FactType Metres = FactType.Number(Dimension.Metre);

    public static void Compute(SupplyRunContext c, FactSheet sheet)
    {
        sheet.Set(PlannedWay, c.Length() is { } way ? Planned(way.Metres, c.Run.Length, way.Datum, c.LengthUnsure(true, null))
            : FactValue.Unknown(Metres, c.LengthUnsure(false, null)));
        if (c.Run.Ground is not null)
            sheet.Set(PlannedGround, Planned(c.GroundLength.Metres, c.Run.GroundLength,
                c.Run.GroundLength is { } ground ? new Datum($"length of the ground cable of {c.Name}: {ground}", ground.At) : null,
                c.GroundUnsure()));
        sheet.Set(EndPlace, Called(c.Run.Place?.Value));
        sheet.Set(PlaceWay, c.StartsAtBattery ? FromBattery(c) : FromBlock(c));
        sheet.Set(EngineWay, FromEngineSpace(c));
    }

    private static FactValue Planned(double metres, Figure? written, Datum? datum, Unsure unsure) =>
        FactValue.Of(Dimension.Metre, metres) with
        {
            Data = datum is null ? [] : [datum],
            Unsure = written is null || written.IsEstimated ? [unsure] : [],
        };

    private static string Called(string? place) => place switch
    {
        Cargo => "in the cargo space",
        Seat => "under the front seat",
        Dash => "behind the dashboard",
        _ => "at a place that the build does not name",
    };

    private static FactValue FromBattery(SupplyRunContext c)
    {
        if (c.Run.Place is { } place)
        {
            return Of(c.Build.Vehicle, place.Value) is { } way
                ? FactValue.Of(Dimension.Metre, way.Si) with { Data = [Cited(place.Value, way)], Unsure = Guessed(c, place.Value) }
                : FactValue.Unknown(Metres, Missing(c.Build.Vehicle, place.Value));
        }
        return Longest(c.Build.Vehicle) is { } longest
            ? Within(Shortest(c.Build.Vehicle), longest, [Place(c.Name), .. GuessedWays(c.Build.Vehicle)],
                [.. Ways(c.Build.Vehicle).Where(w => w.Way is not null).Select(w => Cited(w.Place, w.Way!))])
            : FactValue.Unknown(Metres, Place(c.Name) with { IsBounded = false });
    }

    // Between two places there is at least the difference of their ways from the battery.
    private static FactValue FromBlock(SupplyRunContext c)
    {
        var (from, to) = (c.Build.Supply.Main?.Place, c.Run.Place);
        if (from is not null && from.Value == to?.Value)
            return FactValue.Of(Dimension.Metre, 0) with { Data = [new Datum($"place of the block: {from.Value}", from.At)] };
        if (from is not null && to is not null)
        {
            return Of(c.Build.Vehicle, from.Value) is { } a && Of(c.Build.Vehicle, to.Value) is { } b
                ? FactValue.Of(Dimension.Metre, Math.Abs(a.Si - b.Si)) with
                {
                    Data = [Cited(from.Value, a), Cited(to.Value, b)],
                    Unsure = [.. Guessed(c, from.Value), .. Guessed(c, to.Value)],
                }
                : FactValue.Unknown(Metres, Missing(c.Build.Vehicle, Of(c.Build.Vehicle, from.Value) is null ? from.Value : to.Value));
        }
        Unsure[] open =
        [
            .. from is null ? [Place("the block")] : Array.Empty<Unsure>(), .. to is null ? [Place(c.Name)] : Array.Empty<Unsure>(),
        ];
        return Longest(c.Build.Vehicle) is { } longest
            ? Within(0, longest - Shortest(c.Build.Vehicle), [.. open, .. GuessedWays(c.Build.Vehicle)], [])
            : FactValue.Unknown(Metres, [.. open.Select(u => u with { IsBounded = false })]);
    }

    private static FactValue FromEngineSpace(SupplyRunContext c)
    {
        var (vehicle, battery) = (c.Build.Vehicle, c.Build.Vehicle.Battery);
        if (!c.StartsAtBattery || battery?.Value is "cabin" or "cargo")
            return FactValue.Of(Dimension.Metre, 0);
        var unsure = new Unsure($"place of the battery of {vehicle.Name}", "Look under the bonnet, under the seats and in the boot.",
            Estimated: false)
        { Key = DatumKey.In(vehicle, "supply.battery"), IsBounded = true };
        if (vehicle.BatteryToCargo is not { } way)
            return FactValue.Unknown(Metres, Missing(c.Build.Vehicle, Cargo));
        return battery is null ? Within(0, way.Si, [unsure, .. Guessed(c, Cargo)], [])
            : FactValue.Of(Dimension.Metre, way.Si) with { Data = [Cited(Cargo, way)], Unsure = Guessed(c, Cargo) };
    }

    private static IEnumerable<(string Place, Figure? Way)> Ways(Vehicle vehicle) =>
        [(Cargo, vehicle.BatteryToCargo), (Seat, vehicle.BatteryToSeat), (Dash, vehicle.BatteryToDash)];

    // A way that nobody recorded may be the shortest one.
    private static double Shortest(Vehicle vehicle) => Ways(vehicle).Min(w => w.Way?.Si ?? 0);

    // No place is farther from the engine space than the cargo space.
    private static double? Longest(Vehicle vehicle) => Ways(vehicle).All(w => w.Way is not null) ? Ways(vehicle).Max(w => w.Way!.Si)
        : vehicle.Battery?.Value == "engine-space" ? vehicle.BatteryToCargo?.Si : null;

    /// <summary>The route from the battery to a place; null where nobody measured it.</summary>
    public static Figure? Of(Vehicle vehicle, string place) => Ways(vehicle).FirstOrDefault(w => w.Place == place).Way;

    private static FactValue Within(double low, double high, IReadOnlyList<Unsure> open, IReadOnlyList<Datum> data) =>
        FactValue.Of(Dimension.Metre, new Uncertain(low, low, high, (high - low) / 2)) with
        {
            Unsure = open,
            Data = data,
            Shown = $"{QuantityText.Format(low, Dimension.Metre)} to {QuantityText.Format(high, Dimension.Metre)}",
        };

    public static Datum Cited(string place, Figure way) => new($"route from the battery to {Goal(place)}: {way}", way.At);

    private static string Goal(string place) =>
        place switch { Seat => "under a front seat", Dash => "behind the dashboard", _ => "the cargo space" };

    public static Unsure Place(string whose) =>
        new($"place of {whose}", "Write where it sits: `place: cargo`, `under-seat` or `dash`.", Estimated: false) { IsBounded = true };

    public static Unsure Missing(Vehicle vehicle, string place) =>
        new($"route from the battery to {Goal(place)} in {vehicle.Name}",
            "Lay a string along the route that a cable takes, and measure it.", Estimated: false)
        { Key = DatumKey.In(vehicle, $"supply.battery_to_{place switch { Seat => "seat", Dash => "dash", _ => "cargo" }}") };

    private static Unsure[] Guessed(SupplyRunContext c, string place) =>
        Of(c.Build.Vehicle, place) is { IsEstimated: true } ? [Missing(c.Build.Vehicle, place) with { Estimated = true }] : [];

    // Bounds that are guesses bound nothing.
    private static IEnumerable<Unsure> GuessedWays(Vehicle vehicle) => Ways(vehicle).Where(w => w.Way is { IsEstimated: true })
        .Select(w => Missing(vehicle, w.Place) with { Estimated = true });
}
