using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>What a device is made for on its supply side: its voltage, and the fuses on its case.</summary>
internal static class DeviceSupplyFacts
{
    public static readonly FactGroup Declarations = new(Subject.Device);

    public static readonly TruthFact NeedsSupply = Declarations.Truth(
        "needs_supply",
        "It is bought for this vehicle and runs on its supply; false for the factory radio and for what says it needs none.",
        Reads.Device.Itself)
        .Saying("the factory's, or needs no supply");
    public static readonly NumberFact VehicleVoltage = Declarations.Number(
        "vehicle_voltage", Dimension.Volt, "Nominal voltage of the vehicle's supply.",
        Reads.Supply.Itself);
    public static readonly WordFact VoltageRange = Declarations.Word(
        "voltage_range", "The supply voltages with which the device works, in words.",
        Reads.Device.Itself);
    public static readonly TruthFact TakesVoltage = Declarations.Truth(
        "takes_voltage", "The vehicle's voltage is one with which the device works.",
        Reads.Device.Itself, Reads.Supply.Itself);
    public static readonly TruthFact LacksOwnFuses = Declarations.Truth(
        "lacks_own_fuses", "It is written that the amplifier has no fuse on its case.",
        Reads.Device.Itself);
    public static readonly NumberFact OwnFuses = Declarations.Number(
        "own_fuses", Dimension.Ampere, "Fuses on the amplifier's case together.",
        Reads.Device.Itself);

    public static void Compute(DeviceContext c, FactSheet sheet)
    {
        var range = c.Device.Part switch
        {
            Amplifier a => a.SupplyRange,
            SourceUnit s => s.SupplyRange,
            LineConverter l => l.SupplyRange,
            _ => null,
        };
        sheet.Set(NeedsSupply, !c.Device.IsFactory && range?.IsNone != true);
        Voltage(c, range, sheet);
        sheet.Set(LacksOwnFuses, c.Amplifier?.HasFuses == false);
        if (c.Amplifier is { } amplifier)
            sheet.Set(OwnFuses, Fuses(amplifier));
    }

    private static void Voltage(DeviceContext c, SupplyRange? range, FactSheet sheet)
    {
        var volts = c.Build.Vehicle.Voltage;
        var unsure = new List<Unsure>();
        if (volts is null or { IsEstimated: true })
            unsure.Add(new Unsure($"supply voltage of {c.Build.Vehicle.Name}", "Read it from the battery: 12 V or 24 V.",
                volts is not null)
            { Key = DatumKey.In(c.Build.Vehicle, "supply.voltage") });
        if (range is null or { Lowest.IsEstimated: true } or { Highest.IsEstimated: true })
            unsure.Add(new Unsure($"supply voltage that {c.Name} takes", "Read it from its case or its data sheet.", range is not null)
            { Key = DatumKey.In(c.Device.Part, "supply_range") });
        sheet.Set(VoltageRange, range is null or { IsNone: true } ? "a range that is not recorded" : $"{range.Lowest} to {range.Highest}");
        if (volts is not null)
            sheet.Set(VehicleVoltage, FactValue.Of(Dimension.Volt, volts.Si) with { Data = [new Datum("supply voltage", volts)] });
        sheet.Set(TakesVoltage, volts is not null && range is { Lowest: { } lowest, Highest: { } highest }
            ? FactValue.Of(volts.Si >= lowest.Si && volts.Si <= highest.Si) with
            {
                Unsure = unsure,
                Data =
                [
                    new Datum("supply voltage", volts), new Datum($"supply range of {c.Name}: {range.Lowest} to {range.Highest}", range.At),
                ],
            }
            : FactValue.Unknown(FactType.Truth, [.. unsure]));
    }

    private static FactValue Fuses(Amplifier amplifier)
    {
        var unsure = new Unsure($"fuses of {amplifier.Name}", "Read them from its case.", amplifier.Fuses.Count > 0)
        { Key = DatumKey.In(amplifier, "fuses") };
        return amplifier.Fuses.Count == 0 ? FactValue.Unknown(FactType.Number(Dimension.Ampere), unsure)
            : FactValue.Of(Dimension.Ampere, amplifier.Fuses.Sum(f => f.Si)) with
            {
                Data = [.. amplifier.Fuses.Select(f => new Datum("fuse on the case", f))],
                Unsure = amplifier.Fuses.Any(f => f.IsEstimated) ? [unsure] : [],
            };
    }
}
