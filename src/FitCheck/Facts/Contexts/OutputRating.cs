using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>What the sheet of a source unit or amplifier says of one output.</summary>
internal sealed record OutputRating(string Name, IReadOnlyList<Rating> Ratings, Figure? LowestLoad, bool? HasConverter, bool? Bridgeable,
    Practice Practice)
{
    /// <summary>The device has this output and no other.</summary>
    public bool IsAlone { get; init; }

    /// <summary>Nominal supply with the engine running (S: CTA-2006 states ratings at 14.4 V).</summary>
    public const double Supply = 14.4;

    // Into this load practice states what a stage gives.
    private const double StagedLoad = 4;

    public static OutputRating Of(Channel channel, Practice practice)
    {
        var name = channel.Device.Part.Name;
        return channel.Device.Part switch
        {
            SourceUnit s =>
                Of(s, practice),
            Amplifier a => new OutputRating(name, [.. a.Ratings.Where(r => r.Bridged == channel.Bridged)],
                channel.Bridged ? a.LowestBridgedLoad : a.LowestLoad, a.PowerConverter, MayBeBridged(a, channel.Outputs), practice)
            { IsAlone = a.Channels == 1 },
            _ => new OutputRating(name, [], null, HasConverter: true, Bridgeable: false, practice),
        };
    }

    /// <summary>Of any output of a source, which none can bridge.</summary>
    public static OutputRating Of(SourceUnit source, Practice practice) => new(source.Name, [.. source.Ratings.Where(r => !r.Bridged)],
        source.LowestLoad, source.PowerConverter, Bridgeable: false, practice);

    // The pairs that the maker names; where only the word is recorded, or nothing, the usual ones may be among them, and no others.
    private static bool? MayBeBridged(Amplifier amplifier, IReadOnlyList<string> outputs) => amplifier switch
    {
        { Bridgeable: false } => false,
        { Bridges: { } bridges } => bridges.Have(outputs),
        _ => Bridges.AreUsual(outputs) ? null : false,
    };

    public IReadOnlyList<Rating> Continuous => [.. Ratings.Where(r => !r.Peak)];

    /// <summary>True when the sheet gives a peak figure and nothing else.</summary>
    public bool OnlyPeak => Ratings.Count > 0 && Continuous.Count == 0;

    /// <summary>
    /// What a maker left out beside a continuous power: then less of it than stated may be there, by the bounds of practice. Nobody but the
    /// maker can tell.
    /// </summary>
    public IReadOnlyList<Unsure> LeftOut =>
    [
        .. LacksDistortion ? [Distortion with { IsBounded = true }] : Array.Empty<Unsure>(),
        .. LacksChannels ? [ChannelsDriven with { IsBounded = true }] : Array.Empty<Unsure>(),
    ];

    /// <summary>The distortion at which power is stated, where nobody wrote it.</summary>
    public Unsure Distortion => new($"distortion at the stated power of {Name}",
        "Look in its data sheet for the distortion (THD+N) beside the power, and write it into its rating as `distortion`.",
        Estimated: false)
    { IsForMaker = true };

    /// <summary>How many channels were driven, where nobody wrote it.</summary>
    public Unsure ChannelsDriven => new($"channels driven at the stated power of {Name}",
        "Look in its data sheet whether all channels were driven at once, and write it into its rating as `all_channels`.",
        Estimated: false)
    { IsForMaker = true };

    private bool LacksDistortion => Continuous.Any(r => r.Distortion is null);

    private bool LacksChannels => !IsAlone && Continuous.Any(r => r.AllChannels is null);

    private double LeastShare => (LacksDistortion ? Practice.RatingAtLowDistortion.Low : 1)
        * (LacksChannels ? Practice.RatingWithAllChannels.Low : 1);

    /// <summary>The highest sine power that the battery's voltage allows into a load without a supply converter, W.</summary>
    public static double Ceiling(double load) => AmplifierOutput.SineCeiling(Supply, 0, load);

    /// <summary>
    /// Highest continuous voltage into a load, V rms, whether it is only a guess, and whether no rating is stated for such a load; null
    /// when nothing tells it.
    /// </summary>
    public (Uncertain Volts, bool Estimated, bool Beyond)? VoltsInto(double load)
    {
        if (Continuous.Count > 0)
        {
            var output = new AmplifierOutput(Continuous.Select(r => new PowerRating(r.Power.Si, r.Load.Si)));
            var (volts, beyond) = (output.VoltsInto(load), load > Practice.RatingReach * output.HighestLoad);
            var most = beyond ? output.MostVoltsInto(load) : volts;
            var least = volts * Math.Sqrt(LeastShare);
            return (new Uncertain(volts, least, most, (most - least) / 2), Continuous.Any(r => r.Power.IsEstimated), beyond);
        }
        // One that may have a converter is not bound to the battery for certain.
        if (HasConverter != false)
            return null;
        var stage = Practice.OutputStagePower;
        double low = Math.Sqrt(stage.Low / Ceiling(StagedLoad) * Ceiling(load) * load),
            high = Math.Sqrt(stage.High / Ceiling(StagedLoad) * Ceiling(load) * load);
        return (new Uncertain((low + high) / 2, low, high, (high - low) / 2), true, false);
    }
}
