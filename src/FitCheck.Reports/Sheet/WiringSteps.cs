using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>The wires: which output goes to which driver, plus to plus, what feeds the devices, and what feeds them with current.</summary>
internal static class WiringSteps
{
    /// <summary>One row for each driver.</summary>
    public static TableView? Polarity(BuildResult build)
    {
        var rows = build.Wirings.SelectMany(w => w.Ends.Select(e => new RowView(e.Position, [Output(w, e), Driver(w, e), e.Path])))
            .ToList();
        return rows.Count == 0 ? null
            : new TableView(
            "Plus to plus (+), minus to minus (−). Tick when tested: a 1.5 V cell, plus on plus, moves a woofer's cone out for a moment.",
            ["Position", "From", "Driver", "Way"], rows);
    }

    /// <summary>What must be off the radio before an amplifier's output is joined to it.</summary>
    public static IReadOnlyList<StepView> TakenOver(BuildResult build)
    {
        var pairs = SheetFacts.Of(build, Subject.Channel).Where(c => c.Is(LoomFacts.TakesOverWire))
            .Select(c => c.Word(LoomFacts.FactoryPairs)).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        return pairs.Count == 0 ? []
            : [new(null, $"Take the wires of {string.Join(", ", pairs)} off the radio's plug, both of each pair, before an amplifier's "
                + "output is joined to them. Two outputs on one pair destroy one of them.")];
    }

    /// <summary>The signal from device to device, and the wire that switches each on.</summary>
    public static IReadOnlyList<StepView> Signal(BuildResult build) =>
        SheetSteps.Merged(
            SheetFacts.Of(build, Subject.Device).Where(d => d.Is(SignalFacts.HasFeeder))
                .Select(d => (d.Part(SignalFacts.DeviceName)!, (string?)Feed(d))));

    /// <summary>One row for each cable.</summary>
    public static TableView? Supply(BuildResult build)
    {
        if (build.Supply is not { } supply)
            return null;
        List<RowView> rows = [.. new[] { supply.Main }.OfType<SupplyLeg>()
            .Select(l => Leg(l, supply.Distribution ?? "main cable", atBattery: true, hasGround: false)),
            .. supply.Legs.Select(l => Leg(l, l.Name, atBattery: supply.Main is null, hasGround: true))];
        return new TableView("Cables for current; the fuses go in last", ["Cable to", "Plus", "Fuse", "Ground"], rows);
    }

    private static string Output(WiringDiagram wiring, WireEnd end) =>
        end.IsFactory ? "factory wire"
            : string.Join(", ",
            [$"{Names.Short(wiring.Output)}, output {string.Join('+', wiring.Terminals)}", .. wiring.InLine.Select(Names.Short)]);

    private static string Driver(WiringDiagram wiring, WireEnd end) => wiring.Crossover is not { } crossover || end.IsFactory
        ? Names.Short(end.Driver)
        : $"{Names.Short(end.Driver)}, at the {(end.IsTweeter ? "tweeter" : "woofer")} terminals of {Names.Short(crossover)}";

    private static string Feed(SheetFacts d)
    {
        var cable = d.Is(SignalFacts.UsesLineLevel) ? ", by signal cable" : d.Is(SignalFacts.UsesSpeakerLevel) ? ", by speaker wire" : "";
        var remote = d.Is(SignalFacts.NeedsRemoteWire) ? " Connect its remote wire." : "";
        var gain = d.Number(SignalFacts.GainSetting) is null ? "" : $" Set its gain to {d.Shown(SignalFacts.GainSetting, "V")} at first.";
        return $"Signal from {d.Part(SignalFacts.FeederName)}{cable}.{remote}{gain}";
    }

    private static RowView Leg(SupplyLeg leg, string to, bool atBattery, bool hasGround) => new(Names.Short(to),
    [
        $"{leg.Gauge ?? $"{SheetFacts.Blank} AWG"}{(leg.CopperClad ? " copper-clad" : "")}, {Shown(leg.LengthM, "m")}",
        leg.FuseA is null ? "none of its own"
            : $"{Shown(leg.FuseA, "A")}{(atBattery ? $", {Shown(leg.FuseDistanceMm, "mm")} from the battery" : "")}",
        // The cable that several share ends at the block; each amplifier has its own ground.
        !hasGround ? "—" : $"{leg.GroundGauge ?? $"{SheetFacts.Blank} AWG"}, {Shown(leg.GroundLengthM, "m")}, to bare metal",
    ]);

    private static string Shown(double? value, string unit) =>
        value is { } known ? Figures.Show(known, unit) : $"{SheetFacts.Blank} {unit}";
}
