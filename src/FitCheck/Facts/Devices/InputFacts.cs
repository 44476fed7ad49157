using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Devices;

/// <summary>Which of the source's outputs an amplifier plays, and what becomes of the minus wires of the loom that it drives.</summary>
internal static class InputFacts
{
    public static readonly FactGroup Declarations = new(Subject.Device);

    public static readonly TruthFact FeedsSides = Declarations.Truth(
        "feeds_sides",
        "Outputs of this amplifier feed positions on the left or the right, subwoofers apart; one bridged pair alone counts for none.",
        Reads.Loom.Itself)
        .Saying("nothing with a side is connected to it");
    public static readonly TruthFact InputsTold = Declarations.Truth(
        "inputs_told", "It is recorded which outputs of the source each of them plays, as far as that decides its side or end.",
        Reads.Loom.Itself);
    public static readonly TruthFact DrivesFactoryWires = Declarations.Truth(
        "drives_factory_wires", "It came into the vehicle anew, and drives wires of the vehicle.",
        Reads.Loom.Itself, Reads.Devices.Itself)
        .Saying("no factory wires behind it", "behind it lie factory wires");
    public static readonly TruthFact ReturnsFit = Declarations.Truth(
        "returns_fit", "The minus wires of its outputs stay apart in the loom, or may be joined.",
        Reads.Loom.Itself, Reads.Devices.Itself);

    public static void Compute(DeviceContext c, FactSheet sheet)
    {
        Inputs(c, sheet);
        Returns(c, sheet);
    }

    private static void Inputs(DeviceContext c, FactSheet sheet)
    {
        var sided = c.Amplifier is null ? []
            : c.Build.Channels.Where(x => x.Device.Id == c.Device.Id && x.Feeds.Any(HasSide)).ToList();
        var feedsSides = sided.Count > 1 || sided is [{ Bridged: false }];
        sheet.Set(FeedsSides, feedsSides);
        if (!feedsSides)
            return;
        var graph = new WireGraph(c.Build);
        sheet.Set(InputsTold, sided.TrueForAll(x => IsTold(x, graph.Signals(x))) ? true : null,
            new Unsure($"which outputs of the source the inputs of {c.Name} take",
                "Follow the wires from the radio, and write the outputs into the build as `takes` of this device, one for each input in "
                    + "their order, such as `[front-left, front-right]`.", Estimated: false));
    }

    private static bool HasSide(FittedPosition placed) => (placed.Position.KnownSide is null || placed.Position.Side is "left" or "right")
        && placed.Position.Role != "subwoofer" && placed.Driver?.Part.Type != "subwoofer";

    // Of several signals that it may be, all have to be of one side and of one end.
    private static bool IsTold(Channel channel, IReadOnlyList<string> signals) => signals.Count > 0
        && channel.Feeds.Where(HasSide).All(_ => IsOne(signals, "left", "right") && IsOne(signals, "front", "rear"));

    private static bool IsOne(IReadOnlyList<string> signals, string one, string other) =>
        !(signals.Any(s => s.Contains(one, StringComparison.Ordinal)) && signals.Any(s => s.Contains(other, StringComparison.Ordinal)));

    private static void Returns(DeviceContext c, FactSheet sheet)
    {
        var drives = c.Device is { IsFactory: false, Part: SourceUnit or Amplifier }
            && c.Device.Part.Id != c.Build.Vehicle.FactorySource?.Value
            && c.Build.Channels.Any(x => x.Device.Id == c.Device.Id && x.Feeds.Any(p => p.NewWire is null));
        sheet.Set(DrivesFactoryWires, drives);
        if (!drives)
            return;
        var (vehicle, outputs) = (c.Build.Vehicle, (c.Device.Part as SourceUnit)?.OutputGround?.Value);
        // A radio that drives its minus wires can't have worked on joined ones; of a loom behind a factory amplifier it tells nothing.
        var apart = vehicle.SpeakerReturns is { } written ? written.Value == "separate"
            : vehicle.FactoryAmplified == false && c.Build.FactoryRadio?.OutputGround?.Value == "floating" ? true : (bool?)null;
        var open = apart is null
            ? new Unsure($"minus wires of the drivers of {vehicle.Name}",
                "With the radio unplugged, measure with an ohmmeter between the minus wires of two drivers at its plug: open, or "
                    + "hundreds of ohm, is `separate`, next to nothing is `common`. Write it as "
                    + "`speaker_returns`.", Estimated: false)
            { Key = DatumKey.In(vehicle, "speaker_returns") }
            : new Unsure($"ground of the speaker outputs of {c.Name}",
                "With it on and quiet, measure between each minus wire and the body: about half of the battery's voltage is `floating`, "
                    + "nothing is `common`. Write it into its entry as `output_ground`.", Estimated: false);
        bool? fits = outputs == "common" || apart == true ? true
            : apart is null || (c.Device.Part is SourceUnit && outputs is null) ? null : false;
        sheet.Set(ReturnsFit, fits is not { } known ? FactValue.Unknown(FactType.Truth, open) : FactValue.Of(known) with
        {
            Data = vehicle.SpeakerReturns is { } told ? [new Datum($"minus wires of the loom: {told.Value}", told.At)] : [],
        });
    }
}
