using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>The way that a new speaker wire has to take from the device that drives it to the place of the driver.</summary>
internal static class WireWayFacts
{
    private static readonly string[] Anywhere = [WayFacts.Cargo, WayFacts.Seat, WayFacts.Dash];

    private static readonly FactType Metres = FactType.Number(Dimension.Metre);

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact WireRun = Declarations.Number(
        "wire_run", Dimension.Metre,
        "Route through the body from the device that drives the new wire to where it leaves the body: what the vehicle's routes from "
        + "the battery differ by. Within what it can be where the device's place is not written.",
        Reads.Wire.Itself, Reads.Feed.Itself, Reads.Output.Itself, Reads.Supply.Itself, Reads.Place["location", "place"]);
    public static readonly NumberFact DoorEntries = Declarations.Number(
        "door_entries", Dimension.One, "Hinge sides of doors through which the new wire goes: 1 into a door or its mirror, else 0.",
        Reads.Wire.Itself, Reads.Place["place"]);
    public static readonly WordFact WireFrom = Declarations.Word(
        "wire_from", "The device that drives the new wire, and where it sits.",
        Reads.Wire.Itself, Reads.Feed.Itself, Reads.Output.Itself, Reads.Supply.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Placed.NewWire is null || c.Channel is not { Channel.Device: { } device } || c.Driver is null)
            return;
        // A radio sits in the dashboard.
        var place = device.Part is SourceUnit ? WayFacts.Dash : c.Build.Supply.Runs.GetValueOrDefault(device.Id)?.Place?.Value;
        sheet.Set(WireFrom, place switch
        {
            WayFacts.Cargo => $"{device.Part.Name} in the cargo space",
            WayFacts.Seat => $"{device.Part.Name} under the front seat",
            WayFacts.Dash => $"{device.Part.Name} behind the dashboard",
            _ => device.Part.Name,
        });
        if (c.Position.Place.Length > 0)
            sheet.Set(DoorEntries, c.Position.Place is "door" or "sail" ? 1 : 0);
        sheet.Set(WireRun, Run(c, device.Part.Name, place));
    }

    private static FactValue Run(PositionContext c, string device, string? place)
    {
        var ends = Ends(c.Position);
        string[] starts = place is null ? Anywhere : [place];
        string[] asked = [.. starts.Concat(ends).Distinct(StringComparer.Ordinal)];
        if (starts.Length == 1 && asked.Length == 1)
            return FactValue.Of(Dimension.Metre, 0);
        var vehicle = c.Build.Vehicle;
        if (Array.Find(asked, p => WayFacts.Of(vehicle, p) is null) is { } missing)
            return FactValue.Unknown(Metres, WayFacts.Missing(vehicle, missing));
        var ways = (from a in starts from b in ends select Math.Abs(WayFacts.Of(vehicle, a)!.Si - WayFacts.Of(vehicle, b)!.Si)).ToList();
        Unsure[] open =
        [
            .. place is null ? [WayFacts.Place(device)] : Array.Empty<Unsure>(),
            .. ends.Length == 1 || c.Position.Place == "rear-panel" ? Array.Empty<Unsure>()
                : [Sound.AimFacts.Location(c.Position, estimated: false) with { IsBounded = true }],
            .. asked.Where(p => WayFacts.Of(vehicle, p)!.IsEstimated).Select(p => WayFacts.Missing(vehicle, p) with { Estimated = true }),
        ];
        // A panel beside the rear seat may lie as near as the nearer of both.
        var (low, high) = (ways.Min(), c.Position.Place == "rear-panel" && place is not null ? ways.Min() : ways.Max());
        return FactValue.Of(Dimension.Metre, new Uncertain(low, low, high, (high - low) / 2)) with
        {
            Data = [.. asked.Select(p => WayFacts.Cited(p, WayFacts.Of(vehicle, p)!))],
            Unsure = open,
        };
    }

    // Where the wire leaves the way along the body: into a front door at the dashboard, into a rear door at the pillar behind the front
    // seat (common practice, no source).
    private static string[] Ends(Position position) => position switch
    {
        { Place: "cargo" or "shelf" } => [WayFacts.Cargo],
        { Place: "rear-panel" } => [WayFacts.Seat, WayFacts.Cargo],
        { Place: "sail" or "dash" or "pillar", Location.Count: 0 } => [WayFacts.Dash],
        { Place: "", Location.Count: 0 } => Anywhere,
        { Location.Count: 0 } => [WayFacts.Dash, WayFacts.Seat],
        { Location: [{ Si: > 0 }, ..] } => [WayFacts.Dash],
        { Place: "" } => [WayFacts.Seat, WayFacts.Cargo],
        _ => [WayFacts.Seat],
    };
}
