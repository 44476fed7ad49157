using System.Globalization;
using FitCheck.Builds;
using FitCheck.Catalog;

namespace FitCheck.Facts.Contexts;

/// <summary>
/// Outputs, pairs of wires and what hangs on them. A pair is a new wire, or a wire of the vehicle with all its branches: places that
/// share a factory channel share the pair, and the radio's own output is its other end.
/// </summary>
internal sealed class WireGraph(Build build)
{
    /// <summary>Whether an amplifier drives a wire of the vehicle, that the radio drove before.</summary>
    public static bool TakesOver(Channel channel) =>
        channel.Device.Part is Amplifier && channel.Feeds.Any(p => p is { NewWire: null, Position.FactoryChannel: not null });

    /// <summary>The factory pairs that a channel drives, by the names of the radio's outputs.</summary>
    public static IReadOnlyList<string> FactoryPairs(Channel channel) =>
        [.. channel.Feeds.Where(p => p.NewWire is null).Select(p => p.Position.FactoryChannel?.Value).OfType<string>()
            .Distinct(StringComparer.Ordinal)];

    /// <summary>
    /// The outputs, in words, that drive against this channel: on a pair of its own, or tied to it where nothing is bridged.
    /// </summary>
    public IReadOnlyList<string> Meeting(Channel channel)
    {
        var pairs = channel.Feeds.Select(PairOf).ToHashSet(StringComparer.Ordinal);
        var tied = channel.Device.Part is Amplifier ? [] : channel.Outputs.Skip(1).Select(o => Named(channel.Device, [o]));
        var others = build.Channels.Where(c => c.Id != channel.Id && c.Feeds.Any(p => pairs.Contains(PairOf(p))))
            .Select(c => Named(c.Device, c.Outputs));
        IEnumerable<string> radio = TakesOver(channel) && channel.RadioConnected == true
            ? FactoryPairs(channel).Select(p => $"the radio's own output {p}") : [];
        return [.. tied, .. others, .. radio];
    }

    /// <summary>
    /// The source's outputs from which a channel's signal comes; several where it can't be told which of them, none where nothing is
    /// known.
    /// </summary>
    public IReadOnlyList<string> Signals(Channel channel)
    {
        if (channel.Device.Part is SourceUnit)
            return channel.Outputs;
        var device = channel.Device;
        // A circle is refused when the build is read; the count only guards the loop.
        for (var left = build.Devices.Count; left > 0 && device is { Takes.Count: 0, From: { } from }; left--)
            device = build.Devices.FirstOrDefault(d => d.Id == from);
        if (device is not { Takes: { Count: > 0 } takes })
            return [];
        var numbers = channel.Outputs.Select(NumberOf).ToList();
        // Input and output of one number belong together, in the device itself and in what hangs on it alone.
        return channel.Device.Part is Amplifier && IsAlone(device, channel.Device)
            && numbers.TrueForAll(n => n > 0 && n <= takes.Count)
            ? [.. numbers.Select(n => takes[n - 1].Value)] : [.. takes.Select(t => t.Value)];
    }

    private static int NumberOf(string output) =>
        int.TryParse(output, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private bool IsAlone(Device first, Device last) =>
        first.Id == last.Id || build.Devices.Count(d => d.From == first.Id) == 1;

    private static string PairOf(FittedPosition placed) => placed switch
    {
        { NewWire: not null } => $"new wire to {placed.Position.Id}",
        { Position.FactoryChannel.Value: { } channel } => $"factory wire {channel}",
        _ => $"factory wire to {placed.Position.Id}",
    };

    private static string Named(Device device, IReadOnlyList<string> outputs) =>
        $"output {string.Join('+', outputs)} of {device.Part.Name}";
}
