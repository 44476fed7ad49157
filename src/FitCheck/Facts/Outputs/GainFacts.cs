using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Outputs;

/// <summary>
/// The voltage to which an amplifier's gain is set by a voltmeter: √(P·R), where P is what neither the output, the driver nor the build
/// forbids.
/// </summary>
internal static class GainFacts
{
    public static readonly FactGroup Declarations = new(Subject.Channel);

    public static readonly NumberFact GainTarget = Declarations.Number(
        "gain_target", Dimension.Volt, "Voltage at the output at full volume with a test tone, to start from when the gain is set.",
        Reads.OwnNetwork.Itself, Reads.OwnLimit.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself, Reads.Box.Itself);

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        if (c.Channel.Device.Part is Catalog.Amplifier)
            sheet.Set(GainTarget, Target(c));
    }

    public static FactValue Target(ChannelContext c)
    {
        var type = FactType.Number(Dimension.Volt);
        if (c.Sweep is not { } sweep || PowerFacts.Volts(c, sweep) is not ({ } volts, var more))
            return FactValue.Unknown(type, c.Sweep is null ? [.. c.Unsure] : [PowerFacts.OutputPower(c, estimated: false)]);
        var unsure = new List<Unsure>(more);
        var drivers = c.Channel.Feeds.Select(p => p.Driver?.Part).OfType<Catalog.Driver>().ToList();
        // A tweeter behind a crossover gets its small part of the programme; on its own it sets the limit.
        foreach (var driver in drivers.Exists(d => !d.IsTweeter) ? drivers.Where(d => !d.IsTweeter) : drivers)
        {
            if (driver.ContinuousPower is not { } power || driver.Impedance is not { } impedance)
                return FactValue.Unknown(type, PowerFacts.RatedPowerOf(driver, estimated: false));
            volts = Uncertain.Min(volts, Uncertain.Exact(Math.Sqrt(power.Si * impedance.Si)));
            if (power.IsEstimated)
                unsure.Add(PowerFacts.RatedPowerOf(driver, estimated: true));
        }
        return FactValue.Of(Dimension.Volt, volts) with { Unsure = unsure };
    }
}
