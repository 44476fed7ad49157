using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>One supply cable and the current that it carries: to one amplifier, or the main cable to the block that splits it.</summary>
/// <param name="Build">The build.</param>
/// <param name="Amplifier">Null for the main cable.</param>
/// <param name="Run">Cable, fuse and ground cable.</param>
/// <param name="Demand">Current at full power, A.</param>
/// <param name="Practice">What is usual where nobody wrote it.</param>
internal sealed record SupplyRunContext(Build Build, DeviceContext? Amplifier, SupplyRun Run, FactValue Demand, Practice Practice)
{
    public string Name => Amplifier?.Name ?? "the main cable";

    public bool StartsAtBattery => Amplifier is null || Build.Supply.Main is null;

    /// <summary>The fuse that protects this cable: its own, else the main one before it.</summary>
    public Chosen<WiringPart>? Fuse => Run.Fuse ?? Build.Supply.Main?.Fuse;

    /// <summary>The holder on the list for its own fuse near the battery; of several the one for the thickest cable.</summary>
    public WiringPart? Holder => Run.Fuse?.Part.FuseStandard is { } pattern && StartsAtBattery
        ? Build.Supply.Listed.Where(p => p.Type == "fuse-holder" && p.FuseStandard == pattern).MaxBy(p => p.Gauge?.Si ?? 0) : null;

    /// <summary>Its own fuse, or a holder on the list, of which nobody wrote the pattern; null when all are told.</summary>
    public WiringPart? UntoldPattern => Run.Fuse?.Part is { FuseStandard: null } fuse ? fuse
        : Build.Supply.Listed.FirstOrDefault(p => p is { Type: "fuse-holder", FuseStandard: null });

    /// <summary>Resistance per metre when warm, ohm; null without a gauge.</summary>
    public double? PerMetre(WiringPart? cable) =>
        PerMetreCold(cable) is { } cold ? WireGauge.AtTemperature(cold, Practice.ConductorTemperature) : null;

    /// <summary>Resistance per metre at 20 °C, ohm; null without a gauge.</summary>
    public static double? PerMetreCold(WiringPart? cable) =>
        cable?.Gauge is { } gauge ? WireGauge.Resistance(1, gauge.Si, cable.Resistivity) : null;

    /// <summary>
    /// True when the cable leaves the battery in the engine space, which counts where nobody recorded the battery's place. A block lies
    /// near the amplifiers (common practice, no source).
    /// </summary>
    public bool InEngineSpace => StartsAtBattery && Build.Vehicle.Battery?.Value is not ("cabin" or "cargo");

    /// <summary>Length of the cable, one way, and whether it is only the vehicle's usual way to the cargo space.</summary>
    public (double Metres, bool Estimated, Datum? Datum)? Length() => Run.Length is { } length
        ? (length.Si, length.IsEstimated, new Datum($"length of the power cable of {Name}: {length}", length.At))
        : StartsAtBattery && Build.Vehicle.BatteryToCargo is { } way
        ? (way.Si, true, new Datum("route from the battery to the cargo space", way)) : null;

    public Unsure LengthUnsure(bool estimated, Func<PassLimit, string?>? passing) =>
        new($"length of the power cable of {Name}", "Lay a string along the route that the cable will take, and measure it.", estimated,
            passing);

    public Unsure GroundUnsure(Func<PassLimit, string?>? passing = null) =>
        new($"length of the ground cable of {Name}", "Find bare metal of the body near the amplifier and measure the route to it.",
            Estimated: true, passing);

    public (double Metres, bool Estimated) GroundLength =>
        Run.GroundLength is { } length ? (length.Si, length.IsEstimated) : (Practice.GroundLength, true);
}
