using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>What the sheet of a source unit or amplifier says of one output.</summary>
internal sealed record OutputRating(string Name, IReadOnlyList<Rating> Ratings, Figure? LowestLoad, bool? HasConverter, bool? Bridgeable)
{
    /// <summary>Nominal supply with the engine running (S: CTA-2006 states ratings at 14.4 V).</summary>
    public const double Supply = 14.4;

    // Between what a practical bridged output stage leaves of the ideal ceiling and the best ones do: 18 to 22 W of 25.9 W (common
    // practice, no source).
    private const double PoorStage = 18 / 25.92, GoodStage = 22 / 25.92;

    // A rating holds for loads up to half way, as a ratio, to the next that sheets state: from 2 ohm to 4 ohm, from 4 to 8 (common
    // practice, no source).
    private const double Nearby = 1.414;

    public static OutputRating Of(Channel channel)
    {
        var name = channel.Device.Part.Name;
        return channel.Device.Part switch
        {
            SourceUnit s =>
                new OutputRating(name, [.. s.Ratings.Where(r => !r.Bridged)], s.LowestLoad, s.PowerConverter, Bridgeable: false),
            Amplifier a => new OutputRating(name, [.. a.Ratings.Where(r => r.Bridged == channel.Bridged)],
                channel.Bridged ? a.LowestBridgedLoad : a.LowestLoad, a.PowerConverter, MayBeBridged(a, channel.Outputs)),
            _ => new OutputRating(name, [], null, HasConverter: true, Bridgeable: false),
        };
    }

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
            var (volts, beyond) = (output.VoltsInto(load), load > Nearby * output.HighestLoad);
            var most = beyond ? output.MostVoltsInto(load) : volts;
            return (new Uncertain(volts, volts, most, (most - volts) / 2), Continuous.Any(r => r.Power.IsEstimated), beyond);
        }
        // One that may have a converter is not bound to the battery for certain.
        if (HasConverter != false)
            return null;
        double low = Math.Sqrt(PoorStage * Ceiling(load) * load), high = Math.Sqrt(GoodStage * Ceiling(load) * load);
        return (new Uncertain((low + high) / 2, low, high, (high - low) / 2), true, false);
    }
}
