using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Contexts;

/// <summary>One source unit, line converter or amplifier, with what stands before it and what its outputs feed.</summary>
internal sealed record DeviceContext(Build Build, Device Device, IReadOnlyList<ChannelContext> Channels, Practice Practice)
{
    public string Name => Device.Part.Name;

    public Amplifier? Amplifier => Device.Part as Amplifier;

    /// <summary>The device that feeds it.</summary>
    public Device? Feeder => Of(Build, Device.From);

    /// <summary>The chain before it, nearest first.</summary>
    public IEnumerable<Device> Before => ChainBefore(Build, Device);

    /// <summary>The chain before a device of a build, nearest first.</summary>
    public static IEnumerable<Device> ChainBefore(Build build, Device last)
    {
        // A circle is refused when the build is read; the count only guards the loop.
        var left = build.Devices.Count;
        for (var device = Of(build, last.From); device is not null && left-- > 0; device = Of(build, device.From))
            yield return device;
    }

    /// <summary>The channels on its own outputs.</summary>
    public IEnumerable<ChannelContext> Own => Channels.Where(c => c.Channel.Device.Id == Device.Id);

    /// <summary>Devices that it feeds directly.</summary>
    public IEnumerable<Device> After => Build.Devices.Where(d => d.From == Device.Id);

    private static Device? Of(Build build, string? id) => id is null ? null : build.Devices.FirstOrDefault(d => d.Id == id);
}
