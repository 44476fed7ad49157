using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>The signal from the source through a line converter to an amplifier: levels, channels, load and turn-on.</summary>
internal static class SignalFacts
{
    public static readonly FactGroup Declarations = new(Subject.Device);

    public static readonly WordFact DeviceName = Declarations.Word("device_name", "Name of the device.", Reads.Device.Itself);
    public static readonly TruthFact IsAmplifier = Declarations.Truth("is_amplifier", "The device is an amplifier.", Reads.Device.Itself)
        .Saying("not an amplifier");
    public static readonly TruthFact IsConverter = Declarations.Truth(
        "is_converter", "The device is a line converter.",
        Reads.Device.Itself)
        .Saying("not a line converter");
    public static readonly TruthFact HasFeeder = Declarations.Truth(
        "has_feeder", "Something feeds the device.",
        Reads.Device.Itself, Reads.Chain.Itself)
        .Saying("nothing feeds it");
    public static readonly WordFact FeederName = Declarations.Word(
        "feeder_name", "Name of the device that feeds it.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact SpeakerLevel = Declarations.Number(
        "speaker_level", Dimension.Volt, "Voltage at full volume from the source's speaker outputs, √(P·R).",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact SpeakerLevelLimit = Declarations.Number(
        "speaker_level_limit", Dimension.Volt, "Highest voltage that the speaker-level input takes.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact LineLevel = Declarations.Number(
        "line_level", Dimension.Volt, "Line-level voltage at full volume: what a converter puts out, or what reaches an amplifier.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact LineLevelLowest = Declarations.Number(
        "line_level_lowest", Dimension.Volt, "Lowest input voltage with which the amplifier reaches full power.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact LineLevelHighest = Declarations.Number(
        "line_level_highest", Dimension.Volt, "Highest voltage that the low-level input takes.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly TruthFact UsesLineLevel = Declarations.Truth(
        "uses_line_level", "The amplifier takes its signal at line level.",
        Reads.Device.Itself, Reads.Chain.Itself)
        .Saying("no line level");
    public static readonly TruthFact UsesSpeakerLevel = Declarations.Truth(
        "uses_speaker_level", "The amplifier takes its signal at speaker level.",
        Reads.Device.Itself, Reads.Chain.Itself)
        .Saying("no speaker level");
    public static readonly TruthFact HasMatchingInput = Declarations.Truth(
        "has_matching_input", "The amplifier has an input for the signal that its feeder gives.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly WordFact SignalGiven = Declarations.Word(
        "signal_given", "What the feeder gives: line level only, speaker level only, or both.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly TruthFact HasTurnOn = Declarations.Truth(
        "has_turn_on", "Something switches the amplifier on: a remote output, a switched feed, or the signal itself.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly TruthFact NeedsRemoteWire = Declarations.Truth(
        "needs_remote_wire", "A remote wire has to be run to the amplifier.",
        Reads.Device.Itself, Reads.Chain.Itself)
        .Saying("no remote wire needed");
    public static readonly TruthFact HasRemoteWire = Declarations.Truth(
        "has_remote_wire", "A remote wire is on the list.",
        Reads.ListedCables.Itself, Reads.RemoteWires.Itself);
    public static readonly TruthFact HasSignalCable = Declarations.Truth(
        "has_signal_cable", "A signal cable is on the list.",
        Reads.ListedCables.Itself, Reads.SignalCables.Itself);
    public static readonly TruthFact SourceSensesLoad = Declarations.Truth(
        "source_senses_load", "The source looks for a driver on its outputs.",
        Reads.Device.Itself, Reads.Chain.Itself)
        .Saying("source does not look for drivers");
    public static readonly NumberFact SourceLoad = Declarations.Number(
        "source_load", Dimension.Ohm, "Load that the source sees on each output, load resistors on the list included.",
        Reads.Devices.Itself, Reads.Demand.Itself);
    public static readonly TruthFact GivesLineLevel = Declarations.Truth(
        "gives_line_level", "The device has outputs at line level.",
        Reads.Device.Itself)
        .Saying("no line outputs");
    public static readonly NumberFact LineChannels = Declarations.Number(
        "line_channels", Dimension.One, "Channels at line level that the device gives.",
        Reads.Devices.Itself, Reads.Demand.Itself);
    public static readonly NumberFact LineChannelsUsed = Declarations.Number(
        "line_channels_used", Dimension.One, "Channels of amplifiers that are connected to them, a bridged pair counted once.",
        Reads.Devices.Itself, Reads.Demand.Itself);
    public static readonly NumberFact GainSetting = Declarations.Number(
        "gain_setting", Dimension.Volt, "Input voltage for full power, as the gain is set.",
        Reads.Gain.Itself);
    public static readonly TruthFact SpeakerLevelIn = Declarations.Truth(
        "speaker_level_in", "The speaker outputs of a source go into it.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly TruthFact GroundFits = Declarations.Truth(
        "ground_fits", "Its speaker-level input leaves the minus wires of the source's outputs as they are.",
        Reads.Device.Itself, Reads.Chain.Itself);
    public static readonly NumberFact GainOverlap = Declarations.Number(
        "gain_overlap", Dimension.Decibel, "How far the arriving level exceeds the gain setting.",
        Reads.Device.Itself, Reads.Chain.Itself);

    public static void Compute(DeviceContext c, FactSheet sheet)
    {
        sheet.Set(DeviceName, c.Name);
        sheet.Set(IsAmplifier, c.Amplifier is not null);
        sheet.Set(IsConverter, c.Device.Part is LineConverter);
        sheet.Set(HasFeeder, c.Feeder is not null);
        sheet.Set(FeederName, c.Feeder?.Part.Name ?? "nothing");
        sheet.Set(SourceSensesLoad, false);
        sheet.Set(SpeakerLevelIn, false);
        Channels(c, sheet);
        if (c.Device.Part is LineConverter converter)
            Converter(c, converter, sheet);
        else if (c.Amplifier is { } amplifier && c.Feeder is { } feeder)
            Input(c, amplifier, feeder, sheet);
    }

    private static void Converter(DeviceContext c, LineConverter converter, FactSheet sheet)
    {
        Limit(sheet, SpeakerLevelLimit, converter.InputLimit, $"highest input voltage of {converter.Name}",
            DatumKey.In(converter, "input_limit"));
        if (c.Feeder?.Part is not SourceUnit source)
            return;
        Ground(source, converter.Name, converter.InputGround, sheet);
        SpeakerLevelOf(source, c.Practice, sheet);
        if (Devices.LineLevel.Line(c) is { } line)
            sheet.Set(LineLevel, line.AsFact);
        SourceLoadOf(c, source, converter.InputLoad, true, sheet);
    }

    // Whether it applies hangs on the input that is used.
    private static void SourceLoadOf(DeviceContext c, SourceUnit source, Figure? input, bool? applies, FactSheet sheet)
    {
        sheet.Set(SourceSensesLoad, applies == false ? false : applies & source.SensesLoad,
            new Unsure($"whether {source.Name} looks for a driver on its outputs",
                "Unplug one of its drivers: a source that looks for it shows a fault or stays silent.", Estimated: false)
            { Key = DatumKey.In(source, "senses_load") });
        if (applies == false || source.SensesLoad == false)
            return;
        var what = $"load at the speaker-level input of {c.Name}";
        sheet.Set(SourceLoad, input is { } load
            ? FactValue.Of(Dimension.Ohm, WithResistor(c, load.Si)) with { Data = [new Datum(what, load)] }
            : FactValue.Unknown(FactType.Number(Dimension.Ohm),
            new Unsure(what, "Look it up in its data sheet, or measure it with an ohmmeter.", Estimated: false)));
    }

    // A load resistor across each input that is used counts; a few loose ones don't. Those of a few ohm belong into crossovers.
    private static double WithResistor(DeviceContext c, double load)
    {
        var inputs = Math.Max(1, Used(c));
        var resistor =
            c.Build.Extras.FirstOrDefault(
                e => e.Part is Sundry { Type: "resistor", Resistance: { Si: >= 10 } } && e.Packs * e.Part.Pack >= inputs);
        return resistor?.Part is Sundry { Resistance: { } r } ? CombinedLoad.Parallel(load, r.Si) : load;
    }

    private static void Input(DeviceContext c, Amplifier amplifier, Device feeder, FactSheet sheet)
    {
        var line = Devices.LineLevel.Line(c with { Device = feeder });
        var usesLine = TakesLine(amplifier, feeder);
        bool? usesSpeaker = usesLine == true || feeder.Part is not SourceUnit || amplifier.HighLevel.IsThere == false ? false
            : usesLine is null || amplifier.HighLevel.IsThere is null ? null : true;
        var inputs = Inputs(amplifier, feeder);
        sheet.Set(UsesLineLevel, usesLine, inputs);
        sheet.Set(UsesSpeakerLevel, usesSpeaker, inputs);
        sheet.Set(HasMatchingInput, Matches(amplifier, feeder), inputs);
        sheet.Set(SignalGiven,
            GivesLine(feeder) == false ? "speaker level only"
                : feeder.Part is SourceUnit ? "line level and speaker level" : "line level only");
        sheet.Set(HasSignalCable, c.Build.Supply.Lists("signal-cable"));
        if (usesSpeaker != false)
        {
            Ground((SourceUnit)feeder.Part, amplifier.Name, amplifier.HighLevelGround, sheet);
            SpeakerLevelOf((SourceUnit)feeder.Part, c.Practice, sheet);
            Limit(sheet, SpeakerLevelLimit, amplifier.HighLevelHighest, $"highest speaker-level input of {amplifier.Name}",
                DatumKey.In(amplifier, "high_level_input.highest"));
            SourceLoadOf(c, (SourceUnit)feeder.Part, amplifier.HighLevelLoad, usesSpeaker, sheet);
        }
        if (usesLine != false)
        {
            sheet.Set(LineLevel, line?.AsFact ?? FactValue.Unknown(FactType.Number(Dimension.Volt), new Unsure(
                $"line level that {feeder.Part.Name} gives",
                "Measure it at full volume with a test tone, on an alternating-voltage range.", Estimated: false)
            { Key = DatumKey.In(feeder.Part, feeder.Part is LineConverter ? "ratio" : "low_level_voltage") }));
            Limit(sheet, LineLevelLowest, amplifier.LowLevelLowest, $"lowest input voltage of {amplifier.Name}",
                DatumKey.In(amplifier, "low_level_input.lowest"));
            Limit(sheet, LineLevelHighest, amplifier.LowLevelHighest, $"highest input voltage of {amplifier.Name}",
                DatumKey.In(amplifier, "low_level_input.highest"));
            Gain(c, line, sheet);
        }
        TurnOn(c, usesSpeaker == false || amplifier.SensesSignal == false ? false : usesSpeaker & amplifier.SensesSignal, sheet);
    }

    // An input that floats suits every source; one that puts minus to ground suits only a source whose minus is ground.
    private static void Ground(SourceUnit source, string name, Located<string>? input, FactSheet sheet)
    {
        sheet.Set(SpeakerLevelIn, true);
        var fits = input?.Value switch
        {
            "floating" => true,
            null when source.OutputGround?.Value == "common" => true,
            null => (bool?)null,
            _ => source.OutputGround is { } output ? output.Value == "common" : null,
        };
        var open = input is null
            ? new Unsure($"ground of the speaker-level inputs of {name}",
                "With nothing connected, measure with an ohmmeter between each minus terminal and its case: next to nothing is `common`, "
                    + "open or thousands of ohm is `floating`. Write it into its entry.", Estimated: false)
            : new Unsure($"ground of the speaker outputs of {source.Name}",
                "With the radio on and quiet, measure between each minus wire and the body: about half of the battery's voltage is "
                    + "`floating`, nothing is `common`. Write it into its entry.", Estimated: false);
        sheet.Set(GroundFits, fits, open);
        if (fits is not null && (input ?? source.OutputGround) is { } told)
            sheet.Set(GroundFits, FactValue.Of(fits.Value)
                with
            { Data = [new Datum($"speaker-level inputs of {name}: {told.Value}", told.At)] });
    }

    private static bool? GivesLine(Device feeder) =>
        feeder.Part switch { LineConverter => true, SourceUnit source => source.HasLineOutputs, _ => null };

    private static bool? TakesLine(Amplifier amplifier, Device feeder) => Both(amplifier.LowLevel.IsThere, GivesLine(feeder));

    private static bool? Both(bool? a, bool? b) => a == false || b == false ? false : a & b;

    private static Unsure Inputs(Amplifier amplifier, Device feeder) =>
        new($"inputs of {amplifier.Name} for the signal of {feeder.Part.Name}",
            "Look at the sockets on both devices, line level or speaker level, and write into their entries what is there; what is not "
                + "there is `none`.", Estimated: false);

    /// <summary>What is to be looked up before it can be told whether an amplifier takes its signal at line level.</summary>
    public static Unsure? LineUnsure(DeviceContext c) =>
        c is { Amplifier: { } amplifier, Feeder: { } feeder } && TakesLine(amplifier, feeder) is null ? Inputs(amplifier, feeder) : null;

    // One way that is there for certain is enough; there is none for certain when each lacks one end.
    private static bool? Matches(Amplifier amplifier, Device feeder)
    {
        if (feeder.Part is Amplifier)
            return null;
        bool?[] ways = [Both(GivesLine(feeder), amplifier.LowLevel.IsThere),
            feeder.Part is SourceUnit ? amplifier.HighLevel.IsThere : false];
        return ways.Contains(true) ? true : ways.Contains(null) ? null : false;
    }

    /// <summary>
    /// The channels that an amplifier takes at line level from what feeds it: those that it uses, or as many as there are.
    /// </summary>
    public static int LineChannelsTaken(DeviceContext c) =>
        c is { Amplifier: { } amplifier, Feeder: { } feeder } && TakesLine(amplifier, feeder) == true
        ? Math.Min(c.Own.Count(), LineChannelsOf(feeder.Part) is var given and > 0 ? given : int.MaxValue) : 0;

    private static int LineChannelsOf(Part part) =>
        part switch { LineConverter l => l.Channels, SourceUnit s => s.LowLevelOutputs ?? 0, _ => 0 };

    private static void Gain(DeviceContext c, LineLevel? line, FactSheet sheet)
    {
        if (c.Device.Gain is not { Si: > 0 } gain)
        {
            var unset = new Unsure($"gain of {c.Name}",
                "Read where its knob stands, or set it by a voltmeter, and write the input voltage for full power into the build as "
                    + "`gain`.",
                Estimated: false);
            foreach (var fact in new[] { GainSetting, GainOverlap })
                sheet.Set(fact, FactValue.Unknown(fact.Type, unset));
            return;
        }
        sheet.Set(GainSetting, gain.Si);
        if (line is { Volts: { Low: > 0 } volts })
        {
            var db = new Uncertain(Overlap(volts.Value), Overlap(volts.Low), Overlap(volts.High),
                (Overlap(volts.High) - Overlap(volts.Low)) / 2);
            sheet.Set(GainOverlap,
                FactValue.Of(Dimension.Decibel, db) with { Unsure = line.Unsure, Data = [.. line.Data, new Datum("gain", gain)] });
        }

        double Overlap(double arriving) => Decibel.OfAmplitude(arriving / gain.Si);
    }

    private static void TurnOn(DeviceContext c, bool? bySignal, FactSheet sheet)
    {
        var by = c.Before.FirstOrDefault(d => Remote(d) == true)?.Part;
        var silent = c.Before.FirstOrDefault(d => Remote(d) is null)?.Part;
        bool? switched = c.Device.Remote is not null || bySignal == true || by is not null ? true
            : silent is not null || bySignal is null ? null : false;
        var open = bySignal is null
            ? new Unsure($"whether a signal switches {c.Name} on", "Look in its manual for turn-on by the signal (`senses_signal`).",
                Estimated: false)
            { Key = DatumKey.In(c.Device.Part, "high_level_input.senses_signal") }
            : new Unsure($"remote output of {silent?.Name}", "Look for a wire that carries 12 V only while the source is on.",
                Estimated: false)
            { Key = DatumKey.In(silent, "remote_output") };
        sheet.Set(HasTurnOn, switched, open);
        sheet.Set(NeedsRemoteWire, c.Device.Remote is not null ? true : bySignal == true ? false
            : switched == false ? false : switched is null || bySignal is null ? null : true, open);
        sheet.Set(HasRemoteWire, c.Build.Supply.Lists("remote-wire"));
    }

    private static bool? Remote(Device device) =>
        device.Part switch { SourceUnit s => s.RemoteOutput, LineConverter l => l.RemoteOutput, _ => false };

    private static void Channels(DeviceContext c, FactSheet sheet)
    {
        var count = new Unsure($"line outputs of {c.Name}", "Count its sockets at line level; where there are none, it is `none`.",
            Estimated: false)
        { Key = DatumKey.In(c.Device.Part, "low_level_outputs") };
        sheet.Set(GivesLineLevel, GivesLine(c.Device) ?? (c.Device.Part is SourceUnit ? null : false), count);
        sheet.Set(LineChannelsUsed, Used(c));
        var channels = LineChannelsOf(c.Device.Part);
        sheet.Set(LineChannels, channels > 0 ? FactValue.Of(Dimension.One, channels)
            : FactValue.Unknown(FactType.Number(Dimension.One), count));
    }

    private static int Used(DeviceContext c) => c.Channels.Count(x => c.After.Any(d => d.Id == x.Channel.Device.Id));

    private static void SpeakerLevelOf(SourceUnit source, Practice practice, FactSheet sheet) =>
        sheet.Set(SpeakerLevel, Devices.LineLevel.Speaker(source, practice)?.AsFact
        ?? FactValue.Unknown(FactType.Number(Dimension.Volt), Devices.LineLevel.Power(source, false)));

    private static void Limit(FactSheet sheet, NumberFact fact, Figure? figure, string what, DatumKey? key) =>
        sheet.Set(fact, FactValue.Of(fact.Dimension, figure, what, new Unsure(what, "Look it up in its data sheet.", Estimated: false)
        { Key = key }));
}
