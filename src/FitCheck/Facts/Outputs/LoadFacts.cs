using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Outputs;

/// <summary>The load of an output, from the solved network, and what the output is rated for.</summary>
internal static class LoadFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Number("load_min", Dimension.Ohm, "Lowest |Z| between 20 Hz and 20 kHz that the output sees."),
        Number("load_min_frequency", Dimension.Hertz, "Frequency of the lowest |Z|."),
        Number("load_equivalent", Dimension.Ohm, "Rated impedance to which the lowest |Z| corresponds: |Z| / 0.8 (IEC 60268-5)."),
        Number("load_phase", Dimension.Radian, "Largest phase angle of the load, without its sign."),
        Number("load_dissipation", Dimension.Ohm, "Lowest equivalent peak dissipation resistance of the load."),
        Number("lowest_load", Dimension.Ohm, "Lowest rated load of the output, bridged if it is used so."),
        Truth("bridged", "Two outputs are bridged onto this load."),
        Truth("bridgeable", "The maker allows these outputs to be bridged."),
        Word("bridged_outputs", "The outputs that are bridged: `1 and 4`."),
        Number("driver_count", Dimension.One, "Drivers on this output, factory ones that stay included."),
        Number("leftover_count", Dimension.One, "Factory drivers that stay on the same wire without the build saying so."),
        Word("leftover_names", "Where factory drivers stay on the same wire without the build saying so."),
        Word("output_name", "Name of the source unit or amplifier."),
        Word("channel_name", "The output as the build names it."),
        Word("high_pass_filter", "The electronic high-pass of the output, as the build sets it and a device can make it: `80 Hz at 12 dB/octave`."),
        Word("low_pass_filter", "The electronic low-pass of the output, as the build sets it and a device can make it."),
        Truth("is_source_output", "The output is one of a source unit."),
        Truth("only_peak_rating", "The sheet gives a peak or maximum power and no continuous one."),
        Number("stated_power", Dimension.Watt, "Stated continuous power into the load nearest to 4 ohm."),
        Number("stated_load", Dimension.Ohm, "Load of the stated power."),
        Number("peak_power", Dimension.Watt, "Stated peak power."),
        Number("supply_ceiling", Dimension.Watt, "Highest sine power from 14.4 V into the stated load without a supply converter: V²/2R."),
        Truth("has_converter", "The output stage has a supply converter and is not bound to the battery's voltage."),
        Number("stated_distortion", Dimension.One, "Distortion at which the power is stated."),
        Number("stated_supply", Dimension.Volt, "Supply voltage at which the power is stated."),
        Truth("stated_all_channels", "The power is stated with all channels driven."),
        Truth("has_input", "Something feeds this amplifier."),
    ];

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        Load(c, sheet);
        var output = c.Output;
        sheet.Set("lowest_load", output.LowestLoad is { } lowest
            ? FactValue.Of(Dimension.Ohm, lowest.Si) with { Data = [new Datum($"lowest load of {output.Name}: {lowest}", lowest.At)], Unsure = lowest.IsEstimated ? [LowestLoad(output, true)] : [] }
            : FactValue.Unknown(FactType.Number(Dimension.Ohm), LowestLoad(output, false)));
        sheet.Set("bridged", c.Channel.Bridged);
        if (c.Channel.Bridged)
        {
            var outputs = Together(c.Channel.Outputs);
            sheet.Set("bridged_outputs", outputs);
            sheet.Set("bridgeable", output.Bridgeable, new Unsure($"whether the outputs {outputs} of {output.Name} are a pair for bridging",
                "Look at the marks beside the amplifier's terminals, or into its manual, and write the pairs into its entry as `bridges`.", Estimated: false));
        }
        sheet.Set("driver_count", Dimension.One, c.Channel.Feeds.Count(p => p.Driver is not null) + c.Channel.Leftover.Count);
        var forgotten = c.Channel.Leftover.Where(l => !c.Build.Placed.Any(p => p.Position.Id == l.Id && p.KeepsFactoryDriver)).ToList();
        sheet.Set("leftover_count", Dimension.One, forgotten.Count);
        sheet.Set("leftover_names", forgotten.Count == 0 ? "none" : string.Join(", ", forgotten.Select(p => p.Name)));
        sheet.Set("output_name", output.Name);
        sheet.Set("channel_name", c.Channel.Id);
        sheet.Set("high_pass_filter", Filter(c.HighPass?.Setting));
        sheet.Set("low_pass_filter", Filter(c.LowPass?.Setting));
        sheet.Set("is_source_output", c.Channel.Device.Part is Catalog.SourceUnit);
        sheet.Set("has_input", c.Channel.Device.Part is Catalog.SourceUnit || c.Channel.Device.From is not null);
        Ratings(c, sheet);
    }

    private static string Together(IReadOnlyList<string> outputs) => $"{string.Join(", ", outputs.Take(outputs.Count - 1))} and {outputs[^1]}";

    private static string? Filter(Catalog.FilterSetting? filter) =>
        filter is null ? null : $"{QuantityText.Format(filter.Corner.Si, Dimension.Hertz)} at {QuantityText.Format(filter.SlopePerOctave, Dimension.Slope)}";

    private static void Load(ChannelContext c, FactSheet sheet)
    {
        if (c.Sweep is null)
        {
            foreach (var (name, dimension) in new[] { ("load_min", Dimension.Ohm), ("load_equivalent", Dimension.Ohm), ("load_dissipation", Dimension.Ohm), ("load_phase", Dimension.Radian) })
                sheet.Set(name, FactValue.Unknown(FactType.Number(dimension), [.. c.Unsure]));
            return;
        }
        sheet.Set("load_min", Of(c, Dimension.Ohm, s => s.MinOhm));
        sheet.Set("load_min_frequency", Of(c, Dimension.Hertz, s => s.MinHz));
        sheet.Set("load_equivalent", Of(c, Dimension.Ohm, s => s.MinOhm / 0.8));
        sheet.Set("load_phase", Of(c, Dimension.Radian, s => Math.Abs(s.LargestPhaseDeg) * Math.PI / 180));
        sheet.Set("load_dissipation", Of(c, Dimension.Ohm, s => s.MinEpdrOhm));
    }

    private static void Ratings(ChannelContext c, FactSheet sheet)
    {
        var output = c.Output;
        sheet.Set("has_converter", output.HasConverter);
        if (output.Ratings.Count == 0)
            return;
        sheet.Set("only_peak_rating", output.OnlyPeak);
        if (output.Ratings.FirstOrDefault(r => r.Peak) is { } peak)
        {
            sheet.Set("peak_power", Dimension.Watt, peak.Power.Si);
            if (output.OnlyPeak)
                sheet.Set("stated_load", Dimension.Ohm, peak.Load.Si);
        }
        if (output.Continuous.MinBy(r => Math.Abs(r.Load.Si - 4)) is { } stated)
        {
            sheet.Set("stated_power", FactValue.Of(Dimension.Watt, stated.Power.Si) with { Data = [new Datum($"power of {output.Name}: {stated.Power}", stated.Power.At)] });
            sheet.Set("stated_load", Dimension.Ohm, stated.Load.Si);
            sheet.Set("stated_distortion", Dimension.One, stated.Distortion?.Si);
            sheet.Set("stated_supply", Dimension.Volt, stated.Supply?.Si);
            if (stated.AllChannels is { } all)
                sheet.Set("stated_all_channels", all);
        }
        if (sheet.Values.GetValueOrDefault("stated_load")?.Number is { } load)
            sheet.Set("supply_ceiling", Dimension.Watt, OutputRating.Ceiling(load.Value));
    }

    // Between none and the most there may be a dip, where a crossover's parts resonate with the coil.
    private static readonly double[] Shares = [0, 0.1, 0.25, 0.5, 1];

    private static FactValue Of(ChannelContext c, Dimension dimension, Func<ChannelSweep, double> read)
    {
        var value = FactValue.Of(dimension, read(c.Sweep!)) with { Unsure = [.. c.Unsure, .. c.InductancesUnsure], Data = DriverData(c) };
        return c.InductancesUnsure.Count == 0 ? value : value with { Supposing = Within };

        FactValue Within(double most)
        {
            var nominal = read(c.Sweep!);
            var all = Shares.Select(s => read(c.SweepWith(s * most)!)).Append(nominal).ToList();
            return value with
            {
                Number = new Uncertain(nominal, all.Min(), all.Max(), (all.Max() - all.Min()) / 2),
                Unsure = [.. c.Unsure, .. c.InductancesUnsure.Select(u => u with { IsBounded = true, Passing = limit => Needed(limit, most) })],
                Supposing = null,
            };
        }

        // The least inductance with which the limit is kept, halving the interval until it is known to a hundredth.
        string? Needed(PassLimit limit, double most)
        {
            if (!limit.AtLeast || read(c.SweepWith(most)!) < limit.Limit)
                return null;
            var (low, high) = (0.0, most);
            while (high - low > most / 100)
                (low, high) = read(c.SweepWith((low + high) / 2)!) < limit.Limit ? ((low + high) / 2, high) : (low, (low + high) / 2);
            return $"{QuantityText.Format(high, Dimension.Henry)} or more";
        }
    }

    private static List<Datum> DriverData(ChannelContext c) => [.. c.Branches
        .Where(b => b.Placed?.Driver?.Part.Parameters?.Re is not null)
        .Select(b => new Datum($"DC resistance of {b.Placed!.Driver!.Part.Name}: {b.Placed.Driver.Part.Parameters!.Re}", b.Placed.Driver.Part.Parameters!.Re!.At)).Distinct()];

    private static Unsure LowestLoad(OutputRating output, bool estimated) =>
        new($"lowest rated load of {output.Name}", "Look it up in the manual or on the label; without it, don't go below the factory drivers' impedance.", estimated);

    private static FactDeclaration Number(string name, Dimension dimension, string meaning) => Declare.Number(Subject.Channel, name, dimension, meaning);

    private static FactDeclaration Truth(string name, string meaning) => Declare.Truth(Subject.Channel, name, meaning);

    private static FactDeclaration Word(string name, string meaning) => Declare.Word(Subject.Channel, name, meaning);
}
