using FitCheck.Builds;
using FitCheck.Builds.Readable;
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
        List<Device> able = [channel.Device,
            .. DeviceContext.ChainBefore(build, channel.Device).Where(d => CanServe(build, d, setting, high))];
        var makers = able.Where(d => Makes(d) == true).ToList();
        var open = able.Where(d => Makes(d) is null).ToList();
        if (makers.Count == 0)
        {
            // Whether it is there is open; one that has no such slope has not got it in any case.
            var likely = open.Find(d => Has(d) == true) ?? open.Find(d => Has(d) is null) ?? open.FirstOrDefault() ?? channel.Device;
            return new FilterCheck(setting, high, open.Count == 0 ? false : null, open.FirstOrDefault() ?? channel.Device)
            {
                IsAsSteep = open.Count == 0 ? null : Has(likely),
                SlopeBy = likely,
            };
        }
        // As steep as wanted here, else perhaps there.
        var steep = makers.Find(d => Has(d) == true) ?? makers.Concat(open).FirstOrDefault(d => Has(d) is null)
            ?? open.Find(d => Has(d) == true);
        var by = steep is not null && makers.Contains(steep) ? steep : makers[0];
        return new FilterCheck(setting, high, true, by)
        {
            IsAsSteep = steep is null ? false : by == steep ? Has(by) : null,
            SlopeBy = steep ?? by,
        };

        bool? Makes(Device device) => DeviceFilters.Of(device.Part)?.Makes(setting.Corner, high);

        bool? Has(Device device) => DeviceFilters.Of(device.Part)?.Has(setting.SlopePerOctave);
    }

    /// <summary>
    /// Whether the device that makes it, or another one that may, can make it as steep as the build sets it; null when that is not
    /// recorded.
    /// </summary>
    public bool? IsAsSteep { get; private init; }

    /// <summary>
    /// Whether it is there as the build sets it, corner and slope: what nothing can be set to does not exist. Null when that is not known.
    /// </summary>
    public bool? Exists => IsThere == false || IsAsSteep == false ? false : IsThere & IsAsSteep;

    /// <summary>Why it does not exist.</summary>
    public string Lacks => IsThere == false ? Limits : Slopes;

    /// <summary>What to look up before it can be told whether it exists.</summary>
    public Unsure Open => IsThere is null ? Unsure : SlopeUnsure;

    /// <summary>The device whose slopes decide that.</summary>
    public Device SlopeBy { get; private init; } = By;

    /// <summary>What it would have to be: `24 dB/octave of the high-pass at 80 Hz`.</summary>
    public string Slope => $"{QuantityText.Format(Setting.SlopePerOctave, Dimension.Slope)} of the {Kind} at {Corner}";

    /// <summary>How steep the filters are that are there: `the filters of the X have 12 dB/octave`.</summary>
    public string Slopes => DeviceFilters.Of(SlopeBy.Part)?.Slopes is { Count: > 0 } slopes
        ? $"the filters of the {SlopeBy.Part.Name} have {string.Join(" or ", slopes.Select(s => s.ToString()))}"
        : $"the slopes of the {SlopeBy.Part.Name} are not recorded";

    public Unsure SlopeUnsure =>
        new($"slopes of the filters of {SlopeBy.Part.Name}",
            $"Read in its manual how steep its filters are, and write it into its entry as `filter_slopes`; "
                + $"{QuantityText.Format(Setting.SlopePerOctave, Dimension.Slope)} have to be among them.", Estimated: false);

    public IReadOnlyList<Datum> SlopeData => DeviceFilters.Of(SlopeBy.Part)?.Slopes is [var first, ..] ? [new Datum(Slopes, first.At)] : [];

    public string Corner => QuantityText.Format(Setting.Corner.Si, Dimension.Hertz);

    public string Kind => IsHighPass ? "high-pass" : "low-pass";

    /// <summary>What its device has instead: `that of the X goes from 40 Hz to 400 Hz`.</summary>
    public string Limits => DeviceFilters.Of(By.Part)?.Range(IsHighPass) is { IsNone: false } range
        ? $"that of the {By.Part.Name} goes from {range.Lowest} to {range.Highest}"
        : $"the {By.Part.Name} has none";

    public Unsure Unsure =>
        new($"{Kind} of {By.Part.Name}",
            $"Read in its manual from where to where it can be set; {Corner} have to lie between, and some devices have none.",
        DeviceFilters.Of(By.Part)?.Range(IsHighPass) is not null)
        { Key = DatumKey.In(By.Part, IsHighPass ? "high_pass_range" : "low_pass_range") };

    /// <summary>Where it stands that it does not exist.</summary>
    public IReadOnlyList<Datum> LacksData => IsThere == false ? Data : SlopeData;

    public IReadOnlyList<Datum> Data => DeviceFilters.Of(By.Part)?.Range(IsHighPass) is { } range ? [new Datum(Limits, range.At)] : [];

    // A device before the output makes a filter for it alone when each output behind it gets a signal of its own, or when all want the
    // same. What a factory source shapes, nobody sets, unless its entry says how far.
    private static bool CanServe(Build build, Device device, FilterSetting setting, bool high)
    {
        if (device.Part is SourceUnit { Factory: true } source && source.Filters.Range(high) is null)
            return false;
        var behind =
            build.Channels.Where(c => c.Device.Id == device.Id || DeviceContext.ChainBefore(build, c.Device).Any(d => d.Id == device.Id))
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
