using FitCheck.Builds.Readable;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Outputs;

/// <summary>The load of an output, from the solved network, and what the output is rated for.</summary>
internal static class LoadFacts
{
    public static readonly FactGroup Declarations = new(Subject.Channel);

    public static readonly NumberFact LoadMin = Declarations.Number(
        "load_min", Dimension.Ohm, "Lowest |Z| between 20 Hz and 20 kHz that the output sees.",
        Reads.OwnNetwork.Itself, Reads.Box.Itself);
    public static readonly NumberFact LoadMinFrequency = Declarations.Number(
        "load_min_frequency", Dimension.Hertz, "Frequency of the lowest |Z|.",
        Reads.OwnNetwork.Itself, Reads.Box.Itself);
    public static readonly NumberFact LoadEquivalent = Declarations.Number(
        "load_equivalent", Dimension.Ohm, "Rated impedance to which the lowest |Z| corresponds: |Z| / 0.8 (IEC 60268-5).",
        Reads.OwnNetwork.Itself, Reads.Box.Itself);
    public static readonly NumberFact LoadPhase = Declarations.Number(
        "load_phase", Dimension.Radian, "Largest phase angle of the load, without its sign.",
        Reads.OwnNetwork.Itself, Reads.Box.Itself);
    public static readonly NumberFact LoadDissipation = Declarations.Number(
        "load_dissipation", Dimension.Ohm, "Lowest equivalent peak dissipation resistance of the load.",
        Reads.OwnNetwork.Itself, Reads.Box.Itself);
    public static readonly NumberFact LowestLoad = Declarations.Number(
        "lowest_load", Dimension.Ohm, "Lowest rated load of the output, bridged if it is used so.",
        Reads.OwnOutput.Itself);
    public static readonly TruthFact Bridged = Declarations.Truth(
        "bridged", "Two outputs are bridged onto this load.",
        Reads.OwnOutput.Itself)
        .Saying("not bridged", "bridged");
    public static readonly TruthFact Bridgeable = Declarations.Truth(
        "bridgeable", "The maker allows these outputs to be bridged.",
        Reads.OwnOutput.Itself)
        .Saying("these outputs must not be bridged");
    public static readonly WordFact BridgedOutputs = Declarations.Word(
        "bridged_outputs", "The outputs that are bridged: `1 and 4`.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly NumberFact DriverCount = Declarations.Number(
        "driver_count", Dimension.One, "Drivers on this output, factory ones that stay included.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly NumberFact LeftoverCount = Declarations.Number(
        "leftover_count", Dimension.One, "Factory drivers that stay on the same wire without the build saying so.",
        Reads.OwnNetwork.Itself);
    public static readonly WordFact LeftoverNames = Declarations.Word(
        "leftover_names", "Where factory drivers stay on the same wire without the build saying so.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly WordFact OutputName = Declarations.Word(
        "output_name", "Name of the source unit or amplifier.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly WordFact ChannelName = Declarations.Word(
        "channel_name", "The output as the build names it.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly WordFact HighPassFilter = Declarations.Word(
        "high_pass_filter",
        "The electronic high-pass of the output, as the build sets it and a device can make it: `80 Hz at 12 dB/octave`.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly WordFact LowPassFilter = Declarations.Word(
        "low_pass_filter", "The electronic low-pass of the output, as the build sets it and a device can make it.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly TruthFact IsSourceOutput = Declarations.Truth(
        "is_source_output", "The output is one of a source unit.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly TruthFact OnlyPeakRating = Declarations.Truth(
        "only_peak_rating", "The data sheet gives a peak or maximum power and no continuous one.",
        Reads.OwnOutput.Itself)
        .Saying("a continuous power is stated", "only a peak power is stated");
    public static readonly NumberFact StatedPower = Declarations.Number(
        "stated_power", Dimension.Watt, "Stated continuous power into the load nearest to 4 ohm.",
        Reads.OwnOutput.Itself);
    public static readonly NumberFact StatedLoad = Declarations.Number(
        "stated_load", Dimension.Ohm, "Load of the stated power.",
        Reads.OwnOutput.Itself);
    public static readonly NumberFact PeakPower = Declarations.Number(
        "peak_power", Dimension.Watt, "Stated peak power.",
        Reads.OwnOutput.Itself);
    public static readonly NumberFact SupplyCeiling = Declarations.Number(
        "supply_ceiling", Dimension.Watt, "Highest sine power from 14.4 V into the stated load without a supply converter: V²/2R.",
        Reads.OwnOutput.Itself);
    public static readonly TruthFact HasConverter = Declarations.Truth(
        "has_converter", "The output stage has a supply converter and is not bound to the battery's voltage.",
        Reads.OwnOutput.Itself)
        .Saying("no supply converter", "has a supply converter");
    public static readonly NumberFact StatedDistortion = Declarations.Number(
        "stated_distortion", Dimension.One, "Distortion at which the power is stated.",
        Reads.OwnOutput.Itself);
    public static readonly NumberFact StatedSupply = Declarations.Number(
        "stated_supply", Dimension.Volt, "Supply voltage at which the power is stated.",
        Reads.OwnOutput.Itself);
    public static readonly TruthFact StatedAllChannels = Declarations.Truth(
        "stated_all_channels", "The power is stated with all channels driven.",
        Reads.OwnOutput.Itself);
    public static readonly TruthFact HasInput = Declarations.Truth(
        "has_input", "Something feeds this amplifier.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        Load(c, sheet);
        var output = c.Output;
        sheet.Set(LowestLoad, FactValue.Of(Dimension.Ohm, output.LowestLoad, $"lowest load of {output.Name}",
            new Unsure($"lowest rated load of {output.Name}",
                "Look it up in the manual or on the label; without it, don't go below the factory drivers' impedance.", Estimated: false)
            { Key = DatumKey.In(c.Channel.Device.Part, c.Channel.Bridged ? "lowest_bridged_load" : "lowest_load") }));
        sheet.Set(Bridged, c.Channel.Bridged);
        if (c.Channel.Bridged)
        {
            var outputs = Together(c.Channel.Outputs);
            sheet.Set(BridgedOutputs, outputs);
            sheet.Set(Bridgeable, output.Bridgeable, new Unsure($"whether the outputs {outputs} of {output.Name} are a pair for bridging",
                "Look at the marks beside the amplifier's terminals, or into its manual, and write the pairs into its entry as `bridges`.",
                Estimated: false));
        }
        sheet.Set(DriverCount, c.Channel.Feeds.Count(p => p.Driver is not null) + c.Channel.Leftover.Count);
        var forgotten = c.Channel.Leftover.Where(l => !c.Build.Placed.Any(p => p.Position.Id == l.Id && p.KeepsFactoryDriver)).ToList();
        var perhaps = c.Channel.PerhapsLeft
            .Where(l => !c.Build.Placed.Any(p => p.Position.Id == l.Id && (p.KeepsFactoryDriver || p.Driver is not null))).ToList();
        sheet.Set(LeftoverCount, forgotten.Count == 0 && perhaps.Count > 0
            ? FactValue.Unknown(FactType.Number(Dimension.One), [.. perhaps.Select(p => ChannelQuestions.Perhaps(p, estimated: false))])
            : FactValue.Of(Dimension.One, forgotten.Count));
        sheet.Set(LeftoverNames, forgotten.Count == 0 ? "none" : string.Join(", ", forgotten.Select(p => p.Name)));
        sheet.Set(OutputName, output.Name);
        sheet.Set(ChannelName, c.Channel.Id);
        sheet.Set(HighPassFilter, c.HighPass?.Setting.Text);
        sheet.Set(LowPassFilter, c.LowPass?.Setting.Text);
        sheet.Set(IsSourceOutput, c.Channel.Device.Part is Catalog.SourceUnit);
        sheet.Set(HasInput, c.Channel.Device.Part is Catalog.SourceUnit || c.Channel.Device.From is not null);
        Ratings(c, sheet);
    }

    private static string Together(IReadOnlyList<string> outputs) =>
        $"{string.Join(", ", outputs.Take(outputs.Count - 1))} and {outputs[^1]}";

    private static void Load(ChannelContext c, FactSheet sheet)
    {
        if (c.Sweep is null)
        {
            foreach (var fact in new[] { LoadMin, LoadEquivalent, LoadDissipation, LoadPhase })
                sheet.Set(fact, FactValue.Unknown(fact.Type, [.. c.Unsure]));
            return;
        }
        sheet.Set(LoadMin, Of(c, Dimension.Ohm, s => s.MinOhm));
        sheet.Set(LoadMinFrequency, Of(c, Dimension.Hertz, s => s.MinHz));
        sheet.Set(LoadEquivalent, Of(c, Dimension.Ohm, s => s.MinOhm / 0.8));
        sheet.Set(LoadPhase, Of(c, Dimension.Radian, s => Math.Abs(s.LargestPhaseDeg) * Math.PI / 180));
        sheet.Set(LoadDissipation, Of(c, Dimension.Ohm, s => s.MinEpdrOhm));
    }

    private static void Ratings(ChannelContext c, FactSheet sheet)
    {
        var output = c.Output;
        sheet.Set(HasConverter, output.HasConverter, new Unsure($"whether {output.Name} has a supply converter",
            "Read it in its data sheet; a radio of up to about 25 W a channel has none.", Estimated: false)
        { Key = DatumKey.In(c.Channel.Device.Part, "power_converter") });
        sheet.Set(OnlyPeakRating, output.Ratings.Count == 0 ? null : output.OnlyPeak, PowerFacts.OutputPower(c, estimated: false));
        if (output.Ratings.Count == 0)
            return;
        if (output.Ratings.FirstOrDefault(r => r.Peak) is { } peak)
        {
            sheet.Set(PeakPower, peak.Power.Si);
            if (output.OnlyPeak)
                sheet.Set(StatedLoad, peak.Load.Si);
        }
        if (output.Continuous.MinBy(r => Math.Abs(r.Load.Si - 4)) is { } stated)
        {
            sheet.Set(StatedPower,
                FactValue.Of(Dimension.Watt, stated.Power.Si)
                    with
                { Data = [new Datum($"power of {output.Name}: {stated.Power}", stated.Power.At)] });
            sheet.Set(StatedLoad, stated.Load.Si);
            sheet.Set(StatedDistortion, stated.Distortion is { } distortion ? FactValue.Of(Dimension.One, distortion.Si)
                : FactValue.Unknown(FactType.Number(Dimension.One), output.Distortion));
            sheet.Set(StatedSupply, stated.Supply?.Si);
            // One of a single channel has no other to be driven.
            sheet.Set(StatedAllChannels, output.IsAlone ? true : stated.AllChannels, output.ChannelsDriven);
        }
        if (sheet.Of(StatedLoad)?.Number is { } load)
            sheet.Set(SupplyCeiling, OutputRating.Ceiling(load.Value));
    }

    // Between none and the most there may be a dip, where a crossover's parts resonate with the coil.
    private static readonly double[] Shares = [0, 0.1, 0.25, 0.5, 1];

    // Of what stands in factory wires to tweeters, from as good as nothing on, farad (common practice, no source); null: no capacitor.
    private static readonly double?[] Capacitors = [null, 1e-9, 2.2e-6, 4.7e-6, 10e-6, 22e-6, 47e-6];

    private static FactValue Of(ChannelContext c, Dimension dimension, Func<ChannelSweep, double> read)
    {
        var nominal = read(c.Sweep!);
        double?[] wires = c.FeedsUnsure.Count == 0 ? [null] : Capacitors;
        var value = FactValue.Of(dimension, nominal) with { Data = DriverData(c) };
        var known = value with
        {
            Number = wires.Length == 1 ? value.Number : Around(wires.Skip(1).Select(w => read(c.SweepWith(null, w)!))),
            Unsure = [.. c.Unsure, .. c.FeedsUnsure, .. c.InductancesUnsure],
        };
        return c.InductancesUnsure.Count == 0 ? known : known with { Supposing = Within };

        Uncertain Around(IEnumerable<double> others)
        {
            var all = others.Append(nominal).ToList();
            return new Uncertain(nominal, all.Min(), all.Max(), (all.Max() - all.Min()) / 2);
        }

        FactValue Within(double most) => value with
        {
            Number = Around(from wire in wires from share in Shares select read(c.SweepWith(share * most, wire)!)),
            Unsure = [.. c.Unsure, .. c.FeedsUnsure,
                .. c.InductancesUnsure.Select(u => u with { IsBounded = true, Passing = limit => Needed(limit, most) })],
        };

        // The least inductance with which the limit is kept, halving the interval until it is known to a hundredth.
        string? Needed(PassLimit limit, double most)
        {
            if (!limit.AtLeast || With(most) < limit.Limit)
                return null;
            var (low, high) = (0.0, most);
            while (high - low > most / 100)
                (low, high) = With((low + high) / 2) < limit.Limit ? ((low + high) / 2, high) : (low, (low + high) / 2);
            return $"{QuantityText.FormatLimit(high, Dimension.Henry, orMore: true)} or more";

            double With(double inductance) => read(c.SweepWith(inductance, null)!);
        }
    }

    private static List<Datum> DriverData(ChannelContext c) => [.. c.Branches
        .Where(b => b.Placed?.Driver?.Part.Parameters?.Re is not null)
        .Select(b =>
        new Datum($"DC resistance of {b.Placed!.Driver!.Part.Name}: {b.Placed.Driver.Part.Parameters!.Re}",
            b.Placed.Driver.Part.Parameters!.Re!.At)).Distinct()];
}
