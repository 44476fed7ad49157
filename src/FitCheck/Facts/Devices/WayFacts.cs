using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>The way that a supply cable has to take in this vehicle, from where it begins to where the amplifier or the block sits.</summary>
internal static class WayFacts
{
    private const string Cargo = "cargo", Seat = "under-seat", Dash = "dash";

    public static readonly FactGroup OfRun = new(Subject.Device);

    public static readonly TruthFact WayIsWritten = OfRun.Truth(
        "way_is_written", "The build gives the length of the power cable.",
        Reads.PowerCable.Itself);
    public static readonly TruthFact GroundWayIsWritten = OfRun.Truth(
        "ground_way_is_written", "The build gives the length of the ground cable.",
        Reads.GroundCable.Itself);
    public static readonly WordFact EndPlace = OfRun.Word(
        "end_place", "Where the power cable ends, in words.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact PlaceWay = OfRun.Number(
        "place_way", Dimension.Metre,
        "Way in this vehicle from where the power cable begins to where it ends; within what it can be where that place is not written.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact EngineWay = OfRun.Number(
        "engine_way", Dimension.Metre,
        "Way from a battery in the engine space to the cargo space; nothing for a battery elsewhere and for a cable from a block.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);

    private static readonly FactType Metres = FactType.Number(Dimension.Metre);

    public static void Compute(SupplyRunContext c, FactSheet sheet)
    {
        sheet.Set(WayIsWritten, c.Run.Length is not null);
        sheet.Set(GroundWayIsWritten, c.Run.GroundLength is not null);
        sheet.Set(EndPlace, Called(c.Run.Place?.Value));
        sheet.Set(PlaceWay, c.StartsAtBattery ? FromBattery(c) : FromBlock(c));
        sheet.Set(EngineWay, FromEngineSpace(c));
    }

    private static string Called(string? place) => place switch
    {
        Cargo => "in the cargo space",
        Seat => "under the front seat",
        Dash => "behind the dashboard",
        _ => "at a place that the build does not tell",
    };

    private static FactValue FromBattery(SupplyRunContext c)
    {
        if (c.Run.Place is { } place)
        {
            return Of(c.Build.Vehicle, place.Value) is { } way
                ? FactValue.Of(Dimension.Metre, way.Si) with { Data = [Cited(place.Value, way)], Unsure = Guessed(c, place.Value, way) }
                : FactValue.Unknown(Metres, Missing(c, place.Value));
        }
        Figure[] ways = [.. Ways(c.Build.Vehicle).Select(w => w.Way).OfType<Figure>()];
        if (ways.Length == 0)
            return FactValue.Unknown(Metres, Missing(c, Cargo));
        // A way that nobody recorded may be the shortest one.
        var low = ways.Length == 3 ? ways.Min(w => w.Si) : 0;
        return Within(low, ways.Max(w => w.Si), [Place(c.Name)], [.. ways.Select(w => new Datum($"way of a cable from the battery: {w}", w.At))]);
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
                ? FactValue.Of(Dimension.Metre, Math.Abs(a.Si - b.Si)) with { Data = [Cited(from.Value, a), Cited(to.Value, b)] }
                : FactValue.Unknown(Metres, Missing(c, Of(c.Build.Vehicle, from.Value) is null ? from.Value : to.Value));
        }
        Unsure[] open = [.. from is null ? [Place("the block")] : Array.Empty<Unsure>(), .. to is null ? [Place(c.Name)] : Array.Empty<Unsure>()];
        double[] ways = [.. Ways(c.Build.Vehicle).Select(w => w.Way?.Si).OfType<double>()];
        if (ways.Length == 0)
            return FactValue.Unknown(Metres, open);
        return Within(0, ways.Length == 3 ? ways.Max() - ways.Min() : ways.Max(), open, []);
    }

    private static FactValue FromEngineSpace(SupplyRunContext c)
    {
        var (vehicle, battery) = (c.Build.Vehicle, c.Build.Vehicle.Battery);
        if (!c.StartsAtBattery || battery?.Value is "cabin" or "cargo")
            return FactValue.Of(Dimension.Metre, 0);
        var unsure = new Unsure($"place of the battery of {vehicle.Name}", "Look under the bonnet, under the seats and in the boot.",
            Estimated: false)
        { IsBounded = true };
        if (vehicle.BatteryToCargo is not { } way)
            return FactValue.Unknown(Metres, Missing(c, Cargo));
        return battery is null ? Within(0, way.Si, [unsure], []) : FactValue.Of(Dimension.Metre, way.Si) with { Data = [Cited(Cargo, way)] };
    }

    private static IEnumerable<(string Place, Figure? Way)> Ways(Vehicle vehicle) =>
        [(Cargo, vehicle.BatteryToCargo), (Seat, vehicle.BatteryToSeat), (Dash, vehicle.BatteryToDash)];

    private static Figure? Of(Vehicle vehicle, string place) => Ways(vehicle).FirstOrDefault(w => w.Place == place).Way;

    private static FactValue Within(double low, double high, IReadOnlyList<Unsure> open, IReadOnlyList<Datum> data) =>
        FactValue.Of(Dimension.Metre, new Uncertain(low, low, high, (high - low) / 2)) with
        {
            Unsure = open,
            Data = data,
            Shown = $"{QuantityText.Format(low, Dimension.Metre)} to {QuantityText.Format(high, Dimension.Metre)}",
        };

    private static Datum Cited(string place, Figure way) => new($"way from the battery to {Goal(place)}: {way}", way.At);

    private static string Goal(string place) =>
        place switch { Seat => "under a front seat", Dash => "behind the dashboard", _ => "the cargo space" };

    private static Unsure Place(string whose) =>
        new($"place of {whose}", "Write where it sits: `place: cargo`, `under-seat` or `dash`.", Estimated: false) { IsBounded = true };

    private static Unsure Missing(SupplyRunContext c, string place) =>
        new($"way from the battery to {Goal(place)} in {c.Build.Vehicle.Name}",
            "Lay a string along the way that a cable takes, and measure it.", Estimated: false);

    private static Unsure[] Guessed(SupplyRunContext c, string place, Figure way) =>
        way.IsEstimated ? [Missing(c, place) with { Estimated = true }] : [];
}
