using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>One side of the vehicle, in words by which it is compared with the other.</summary>
internal sealed record OneSide
{
    private static readonly HashSet<string> Inline = new(["capacitor", "resistor", "l-pad"], StringComparer.Ordinal);
    // What seals and holds; the rest is handed out by the metre or the bag, wherever it is written.
    private static readonly HashSet<string> Held = new(["gasket-ring", "foam-tape", "damping-sheet", "screws", "moisture-guard"],
        StringComparer.Ordinal);

    public required IReadOnlyList<string> Driver { get; init; }
    public required IReadOnlyList<string> Mounting { get; init; }
    public required IReadOnlyList<string> Wiring { get; init; }
    public IReadOnlyList<string> Filters { get; init; } = [];
    public IReadOnlyList<string> Settings { get; init; } = [];
    /// <summary>What feeds it; empty when nothing does.</summary>
    public IReadOnlyList<string> Output { get; init; } = [];

    public static OneSide Of(FittedPosition placed, Channel? channel) => new()
    {
        Driver = Listed([placed.Driver?.Part.Name]),
        Mounting = Listed([Spacer(placed), placed.Cup?.Part.Name, placed.Module?.Part.Name, .. Sundries(placed, Held),
            placed.Box is { } box ? $"a box of {box}" : null, placed.OpenedWaterShed ? "an opened water shed" : null]),
        Wiring = Listed([Wire(placed), placed.CoilsInSeries is { } series ? $"coils in {(series ? "series" : "parallel")}" : null,
            channel is { InSeries: true, Feeds.Count: > 1 } ? "drivers in series" : null]),
        Filters = channel is null ? [] : Listed([Filter("high-pass", channel.HighPass), Filter("low-pass", channel.LowPass),
            channel.Crossover?.Part.Name, .. channel.InLine.Select(s => s.Part.Name), .. Sundries(placed, Inline)]),
        Settings = channel is null ? [] : Listed([
            channel.Crossover is { } x ? ChannelModel.Setting(channel, x.Part)?.Name : null,
            channel.Limit is { } limit ? $"a limit of {limit}" : null,
            channel.Device.Gain is { } gain ? $"a gain of {gain}" : null]),
        Output = channel is null ? [] : [$"{channel.Device.Part.Name}{(channel.Bridged ? ", bridged" : "")}"],
    };

    // A left and a right spacer of one make are a pair: whether each is on its side is asked elsewhere.
    private static string? Spacer(FittedPosition placed) => placed.Adapter?.Part is not { } spacer ? null
        : spacer.Handed is "left" or "right"
            ? $"a {(spacer.Thickness is { } t ? QuantityText.Format(t.Si, Dimension.Metre) : "?")} spacer "
                + $"tilted by {(spacer.Tilt is { } tilt ? QuantityText.Format(tilt.Si, Dimension.Radian) : "?")}"
            : spacer.Name;

    private static string Wire(FittedPosition placed) => placed.NewWire is { } wire
        ? $"new wire {(wire.Part.Gauge is { } gauge ? WireGauge.NameOf(gauge.Si) ?? gauge.ToString() : "of unknown gauge")}"
            + (wire.Part.CopperClad ? " copper-clad" : "")
        : placed.Harness is { } harness ? $"the factory wire behind {harness.Part.Name}" : "the factory wire";

    private static string? Filter(string kind, FilterSetting? set) => set is null ? null : $"{kind} {set.Text}";

    private static IEnumerable<string> Sundries(FittedPosition placed, HashSet<string> types) =>
        placed.Sundries.Where(s => types.Contains(s.Part.Type)).Select(s => s.Part.Name).Order(StringComparer.Ordinal);

    private static List<string> Listed(IEnumerable<string?> parts) => [.. parts.OfType<string>()];
}
