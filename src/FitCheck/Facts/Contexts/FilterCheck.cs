using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>
/// An electronic filter that a build sets on an output, and whether anything in the chain can make it: the output's own device, or one
/// before it.
/// </summary>
/// <param name="Setting">As the build sets it.</param>
/// <param name="IsHighPass">A high-pass, else a low-pass.</param>
/// <param name="IsThere">Whether a device can make it; null when that is not recorded.</param>
/// <param name="By">The device that makes it, may make it, or can't.</param>
internal sealed record FilterCheck(FilterSetting Setting, bool IsHighPass, bool? IsThere, Device By)
{
    /// <summary>The high-pass or the low-pass of an output; null when the build sets none.</summary>
    public static FilterCheck? Of(Build build, Channel channel, bool high)
    {
        if ((high ? channel.HighPass : channel.LowPass) is not { } setting)
            return null;
        var own = DeviceFilters.Of(channel.Device.Part)?.Makes(setting.Corner, high);
        if (own == true)
            return new FilterCheck(setting, high, true, channel.Device);
        var open = own is null ? channel.Device : null;
        foreach (var device in new DeviceContext(build, channel.Device, []).Before)
        {
            if (!CanServe(build, device, setting, high))
                continue;
            var makes = DeviceFilters.Of(device.Part)?.Makes(setting.Corner, high);
            if (makes == true)
                return new FilterCheck(setting, high, true, device);
            if (makes is null)
                open ??= device;
        }
        return new FilterCheck(setting, high, open is null ? false : null, open ?? channel.Device);
    }

    public string Corner => QuantityText.Format(Setting.Corner.Si, Dimension.Hertz);

    public string Kind => IsHighPass ? "high-pass" : "low-pass";

    /// <summary>What its device has instead: `that of X goes from 40 Hz to 400 Hz`.</summary>
    public string Limits => DeviceFilters.Of(By.Part)?.Range(IsHighPass) is { IsNone: false } range
        ? $"that of {By.Part.Name} goes from {range.Lowest} to {range.Highest}"
        : $"{By.Part.Name} has none";

    public Unsure Unsure =>
        new($"{Kind} of {By.Part.Name}",
            $"Read in its manual from where to where it can be set; {Corner} have to lie between, and some devices have none.",
        DeviceFilters.Of(By.Part)?.Range(IsHighPass) is not null);

    public IReadOnlyList<Datum> Data => DeviceFilters.Of(By.Part)?.Range(IsHighPass) is { } range ? [new Datum(Limits, range.At)] : [];

    // A device before the output makes a filter for it alone when each output behind it gets a signal of its own, or when all want the
    // same. What a factory source shapes, nobody sets, unless its entry says how far.
    private static bool CanServe(Build build, Device device, FilterSetting setting, bool high)
    {
        if (device.Part is SourceUnit { Factory: true } source && source.Filters.Range(high) is null)
            return false;
        var behind =
            build.Channels.Where(c => c.Device.Id == device.Id || new DeviceContext(build, c.Device, []).Before.Any(d => d.Id == device.Id))
                .ToList();
        var signals = device.Part switch
        {
            LineConverter l => l.Channels,
            SourceUnit s =>
            Math.Max(s.Channels.Count, s.LowLevelOutputs ?? 0),
            _ => 0
        };
        return behind.Count <= signals
            || behind.TrueForAll(c => (high ? c.HighPass : c.LowPass) is { } other && other.SlopePerOctave == setting.SlopePerOctave
            && Math.Abs(other.Corner.Si - setting.Corner.Si) < 1e-9 * setting.Corner.Si);
    }
}
