using FitCheck.Builds;
using FitCheck.Catalog;

namespace FitCheck.Facts.Contexts;

/// <summary>One source unit, line converter or amplifier, with what stands before it and what its outputs feed.</summary>
internal sealed record DeviceContext(Build Build, Device Device, IReadOnlyList<ChannelContext> Channels)
{
    public string Name => Device.Part.Name;

    public Amplifier? Amplifier => Device.Part as Amplifier;

    /// <summary>The device that feeds it.</summary>
    public Device? Feeder => Of(Device.From);

    /// <summary>The chain before it, nearest first.</summary>
    public IEnumerable<Device> Before
    {
        get
        {
            // A circle is refused when the build is read; the count only guards the loop.
            var left = Build.Devices.Count;
            for (var device = Feeder; device is not null && left-- > 0; device = Of(device.From))
                yield return device;
        }
    }

    /// <summary>The channels on its own outputs.</summary>
    public IEnumerable<ChannelContext> Own => Channels.Where(c => c.Channel.Device.Id == Device.Id);

    /// <summary>Devices that it feeds directly.</summary>
    public IEnumerable<Device> After => Build.Devices.Where(d => d.From == Device.Id);

    private Device? Of(string? id) => id is null ? null : Build.Devices.FirstOrDefault(d => d.Id == id);
}
