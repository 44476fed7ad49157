using System.Numerics;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Outputs;

/// <summary>What crossover, resistors, L-pads and capacitors in the wire bear, against what they are made for.</summary>
internal static class PassivePartFacts
{
    public static readonly FactGroup Declarations = new(Subject.Channel);

    public static readonly TruthFact HasCrossover = Declarations.Truth(
        "has_crossover", "A passive crossover is connected to this output.",
        Reads.OwnNetwork.Itself);
    public static readonly NumberFact CrossoverFed = Declarations.Number(
        "crossover_fed", Dimension.Watt, "Continuous power that the output can send into the crossover and its drivers.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnLimit.Itself, Reads.Box.Itself);
    public static readonly NumberFact CrossoverPower = Declarations.Number(
        "crossover_power", Dimension.Watt, "Continuous power that the crossover may be fed.",
        Reads.OwnNetwork["crossover.power"]);
    public static readonly TruthFact HasResistor = Declarations.Truth(
        "has_resistor", "A resistor or an L-pad lies in the wire.",
        Reads.OwnNetwork.Itself);
    public static readonly NumberFact ResistorLoad = Declarations.Number(
        "resistor_load", Dimension.One,
        "Heat in a resistor or L-pad with programme noise (IEC 60268-1) at the output's continuous power, over its rated power: the worst.",
        Reads.OwnNetwork["sundry.power"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself, Reads.OwnLimit.Itself,
        Reads.Box.Itself);
    public static readonly WordFact ResistorName = Declarations.Word(
        "resistor_name", "Which resistor or L-pad that is.",
        Reads.OwnNetwork["sundry.power"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself, Reads.OwnLimit.Itself,
        Reads.Box.Itself);
    public static readonly NumberFact ResistorHeat = Declarations.Number(
        "resistor_heat", Dimension.Watt, "The heat in it.",
        Reads.OwnNetwork["sundry.power"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself, Reads.OwnLimit.Itself,
        Reads.Box.Itself);
    public static readonly TruthFact HasCapacitor = Declarations.Truth(
        "has_capacitor", "A capacitor lies in the wire.",
        Reads.OwnNetwork.Itself);
    public static readonly NumberFact CapacitorLoad = Declarations.Number(
        "capacitor_load", Dimension.One, "Highest peak voltage across a capacitor over its rated voltage: the worst.",
        Reads.OwnNetwork["sundry.voltage"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself,
        Reads.OwnLimit.Itself, Reads.Box.Itself);
    public static readonly WordFact CapacitorName = Declarations.Word(
        "capacitor_name", "Which capacitor that is.",
        Reads.OwnNetwork["sundry.voltage"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself,
        Reads.OwnLimit.Itself, Reads.Box.Itself);
    public static readonly NumberFact CapacitorPeak = Declarations.Number(
        "capacitor_peak", Dimension.Volt, "The peak voltage across it, of a sine at the output's continuous power.",
        Reads.OwnNetwork["sundry.voltage"], Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself,
        Reads.OwnLimit.Itself, Reads.Box.Itself);

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        var parts = c.PassiveParts.Select((p, place) => (p.Part, Place: place)).ToList();
        var resistors = parts.Where(p => p.Part.Type is "resistor" or "l-pad").ToList();
        var capacitors = parts.Where(p => p.Part.Type == "capacitor").ToList();
        sheet.Set(HasCrossover, c.Channel.Crossover is not null);
        sheet.Set(HasResistor, resistors.Count > 0);
        sheet.Set(HasCapacitor, capacitors.Count > 0);
        Crossover(c, sheet);
        if (resistors.Count > 0)
            Set(c, resistors, new Keys(ResistorLoad, ResistorName, ResistorHeat, "rated power", p => p.Power, HeatIn), sheet);
        if (capacitors.Count > 0)
            Set(c, capacitors, new Keys(CapacitorLoad, CapacitorName, CapacitorPeak, "rated voltage", p => p.Voltage, PeakAcross), sheet);
    }

    private static void Crossover(ChannelContext c, FactSheet sheet)
    {
        if (c.Channel.Crossover?.Part is not { } crossover)
            return;
        sheet.Set(CrossoverPower, FactValue.Of(Dimension.Watt, crossover.Power, $"power of {crossover.Name}",
            new Unsure($"power of {crossover.Name}", "Read on its board, or ask the maker, what continuous power it may be fed.",
                Estimated: false)
            { Key = DatumKey.In(crossover, "power") }));
        sheet.Set(CrossoverFed, Over(c, Dimension.Watt, x => PowerFacts.IntoLoad(x)?.Watts));
    }

    // With DC resistances that nobody measured at either bound too.
    private static FactValue Over(ChannelContext c, Dimension dimension, Func<ChannelContext, Uncertain?> read)
    {
        if (read(c) is not { } nominal)
            return FactValue.Unknown(FactType.Number(dimension),
                c.Sweep is null ? [.. c.Unsure] : [PowerFacts.OutputPower(c, estimated: false)]);
        var (low, high) = (nominal.Low, nominal.High);
        foreach (var bound in c.Bounds.Select(read).OfType<Uncertain>())
            (low, high) = (Math.Min(low, bound.Low), Math.Max(high, bound.High));
        return FactValue.Of(dimension, new Uncertain(nominal.Value, low, high, Math.Max(nominal.Rss, (high - low) / 2))) with
        {
            Unsure = [.. c.UnsureWithinBounds, .. PowerFacts.Volts(c, c.Sweep!)!.Value.Unsure],
        };
    }

    private static void Set(ChannelContext c, List<(Sundry Part, int Place)> parts, Keys keys, FactSheet sheet)
    {
        var borne = parts.ConvertAll(p => (p.Part, Value: Over(c, keys.Value.Dimension, channel => keys.Borne(channel, p.Place))));
        var worst = borne.Find(b => keys.Rated(b.Part) is null || b.Value.Number is null);
        if (worst.Part is null)
            worst = borne.MaxBy(b => b.Value.Number!.Value.Value / keys.Rated(b.Part)!.Si);
        sheet.Set(keys.Name, SpokenName.Of(worst.Part.Name));
        sheet.Set(keys.Value, worst.Value);
        sheet.Set(keys.Load, keys.Rated(worst.Part) is not { } rated
            ? FactValue.Unknown(FactType.Number(Dimension.One), Rating(worst.Part, keys, false))
            : worst.Value.Number is not { } value ? FactValue.Unknown(FactType.Number(Dimension.One), [.. worst.Value.Unsure])
            : FactValue.Of(Dimension.One, value * Uncertain.Exact(1 / rated.Si)) with
            {
                Unsure = [.. worst.Value.Unsure, .. rated.IsEstimated ? new[] { Rating(worst.Part, keys, true) } : []],
                Data = [new Datum($"{keys.What} of {worst.Part.Name}: {rated}", rated.At)],
            });
    }

    private static Unsure Rating(Sundry part, Keys keys, bool estimated) =>
        new($"{keys.What} of {part.Name}", "Read it on the part, or on the bag it came in.", estimated);

    private static Uncertain? HeatIn(ChannelContext c, int place)
    {
        if (c.Sweep is not { } sweep || PowerFacts.Volts(c, sweep) is not ({ } volts, _))
            return null;
        var (network, part) = (c.Load!.Assemble(), c.PassiveParts[place]);
        var perVoltSquared = ProgrammeNoise.Mean(hz =>
        {
            var (gain, across) = (c.ActiveGain(hz), network.Across(part.Rungs, hz));
            return gain * gain * part.Rungs.Zip(across, (rung, volts) => Heat(rung, volts ?? 0, hz)).Sum();
        });
        return volts * volts * Uncertain.Exact(perVoltSquared);
    }

    // |V|² · Re(1/Z), watt per volt squared of the source.
    private static double Heat(LadderElement rung, Complex across, double hz)
    {
        var volts = Complex.Abs(across);
        return volts * volts * rung.Parts.AdmittanceAt(hz).Real;
    }

    private static Uncertain? PeakAcross(ChannelContext c, int place)
    {
        if (c.Sweep is not { } sweep || PowerFacts.Volts(c, sweep) is not ({ } volts, _))
            return null;
        var (network, rungs, most) = (c.Load!.Assemble(), c.PassiveParts[place].Rungs, 0.0);
        foreach (var state in sweep.States)
        {
            if (network.Across(rungs, state.Hz)[0] is { } across)
                most = Math.Max(most, c.ActiveGain(state.Hz) * Complex.Abs(across));
        }
        return volts * Uncertain.Exact(Math.Sqrt(2) * most);
    }

    // One question about sundries in the wire: the facts that answer it, what is rated, and what the part at a place bears.
    private sealed record Keys(NumberFact Load, WordFact Name, NumberFact Value, string What, Func<Sundry, Figure?> Rated,
        Func<ChannelContext, int, Uncertain?> Borne);
}
