using FitCheck.Builds;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Devices;

/// <summary>Puts together what is known of the devices of a build and of their supply.</summary>
internal sealed class DeviceFacts
{
    /// <summary>Under this name go the findings on the cable that several amplifiers share.</summary>
    public const string MainCable = Builds.Supply.MainCable;

    private static readonly IReadOnlySet<string> Signal = FactSheet.Names(SignalFacts.Declarations), Inputs =
        FactSheet.Names(InputFacts.Declarations), Supply =
        FactSheet.Names(SupplyFacts.Declarations), Rolls = FactSheet.Names(RollFacts.OfRun), Ways = FactSheet.Names(WayFacts.OfRun),
        Terminals = FactSheet.Names(TerminalFacts.OfRun), Own = FactSheet.Names(DeviceSupplyFacts.Declarations);

    private readonly Build _build;

    public DeviceFacts(Build build, IReadOnlyList<ChannelContext> channels, Practice practice)
    {
        (_build, Practice) = (build, practice);
        Devices = [.. build.Devices.Select(d => new DeviceContext(build, d, channels, practice))];
        Runs = [.. Devices.Where(d => d.Amplifier is not null)
            .Select(d =>
            new SupplyRunContext(build, d, build.Supply.Runs.GetValueOrDefault(d.Device.Id) ?? new SupplyRun(), SupplyDemand.Of(d),
                practice))];
        Total = SupplyDemand.Sum([.. Runs.Select(r => r.Demand)]);
        Main = build.Supply.Main is { } main && Runs.Count > 0 ? new SupplyRunContext(build, null, main, Total, practice) : null;
    }

    public IReadOnlyList<DeviceContext> Devices { get; }

    /// <summary>Of each amplifier, in the order of the build.</summary>
    public IReadOnlyList<SupplyRunContext> Runs { get; }

    public SupplyRunContext? Main { get; }

    /// <summary>What is usual where nobody wrote it.</summary>
    public Practice Practice { get; }

    /// <summary>Current of all amplifiers at full power.</summary>
    public FactValue Total { get; }

    /// <summary>A table for each device, and one for the main cable.</summary>
    public IEnumerable<FactTable> Tables()
    {
        foreach (var device in Devices)
        {
            var sheet = new FactSheet();
            sheet.Later(Signal, s => SignalFacts.Compute(device, s));
            sheet.Later(Inputs, s => InputFacts.Compute(device, s));
            sheet.Later(Own, s => DeviceSupplyFacts.Compute(device, s));
            var run = Runs.FirstOrDefault(r => r.Amplifier!.Device.Id == device.Device.Id);
            if (run is null)
            {
                SupplyFacts.ComputeNone(sheet);
                TerminalFacts.ComputeNone(sheet);
            }
            else
            {
                sheet.Later(Supply, s => SupplyFacts.Compute(run, Main, s));
                sheet.Later(Rolls, s => RollFacts.Compute(run, s));
                sheet.Later(Ways, s => WayFacts.Compute(run, s));
                sheet.Later(Terminals, s => TerminalFacts.Compute(run, s));
            }
            var choices = Choices(run?.Run);
            choices["device"] = new Choice(device.Device.Part.Id, device.Device.At);
            if (device.Feeder is { } feeder)
                choices["feeder"] = new Choice(feeder.Part.Id, feeder.At);
            yield return new FactTable(Subject.Device, device.Device.Id, device.Name, sheet.Values)
            {
                At = device.Device.At,
                Choices = choices,
                Lacking = f => new RecordedEntries(_build).Add(device.Device.Part, device.Feeder?.Part, run?.Run.Cable?.Part,
                    run?.Run.Fuse?.Part, run?.Run.Ground?.Part, _build.Vehicle).Lacking(f),
            };
        }
        if (Main is null)
            yield break;
        var shared = new FactSheet();
        shared.Set(SignalFacts.DeviceName, "the main cable");
        foreach (var truth in new[] { SignalFacts.IsAmplifier, SignalFacts.IsConverter, SignalFacts.HasFeeder, SignalFacts.GivesLineLevel,
            SignalFacts.SpeakerLevelIn, DeviceSupplyFacts.NeedsSupply, InputFacts.FeedsSides, InputFacts.DrivesFactoryWires })
            shared.Set(truth, truth: false);
        shared.Set(SignalFacts.LineChannelsUsed, 0);
        SupplyFacts.Compute(Main, null, shared);
        RollFacts.Compute(Main, shared);
        WayFacts.Compute(Main, shared);
        TerminalFacts.Compute(Main, shared);
        yield return new FactTable(Subject.Device, MainCable, "Main cable", shared.Values)
        {
            At = Main.Run.Cable?.At ?? _build.At,
            Choices = Choices(Main.Run),
            Lacking = f => new RecordedEntries(_build).Add(Main.Run.Cable?.Part, Main.Run.Fuse?.Part, _build.Vehicle).Lacking(f),
        };
    }

    private static Dictionary<string, Choice> Choices(SupplyRun? run)
    {
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal);
        Add("cable", run?.Cable);
        Add("fuse", run?.Fuse);
        Add("ground", run?.Ground);
        return choices;

        void Add(string word, Chosen<Catalog.WiringPart>? part)
        {
            if (part is not null)
                choices[word] = new Choice(part.Part.Id, part.At);
        }
    }
}
