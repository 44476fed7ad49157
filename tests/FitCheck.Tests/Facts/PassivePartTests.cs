using FitCheck.Evaluation;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What passive parts bear in reference builds, against sums by hand.</summary>
public sealed class PassivePartTests
{
    [Fact]
    public void A_pad_turns_into_heat_what_the_tweeter_does_not_get() =>
        // 20 V; 8.2 uF, 1.5 ohm, 6.8 ohm across 3.5 ohm: 3.8 ohm from 5.1 kHz up. 6.9 % of the programme get through the first-order filter
        // (IEC 60268-1, table II, band by band): 400 x 0.069 / 3.81^2 = 1.9 A2, times 1.5 ohm and times 2.31^2/6.8 ohm: 4.3 W.
        Assert.InRange(Number(Of("tansy-padded-tweeters"), "front-left", "resistor_heat"), 3.6, 4.9);

    [Fact]
    public void A_capacitor_before_a_tweeter_takes_the_peaks_of_the_bass() =>
        // sqrt(18 W x 4 ohm) = 8.49 V rms, 12.0 V peak in the bass; below its resonance the tweeter is a coil, with which 10 uF ring a
        // little
        Assert.InRange(Number(Of("tansy-plain-capacitor"), "front-left", "capacitor_peak"), 12.0, 14.5);

    [Fact]
    public void A_crossover_is_fed_what_its_amplifier_gives() => // 100 W into 4 ohm; the set's load is about that
        Assert.InRange(Number(Of("tansy-jumper-up"), "front-left", "crossover_fed"), 95, 125);

    private static BuildResult Of(string build) =>
        Trial.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", build + ".yaml")));

    private static double Number(BuildResult result, string channel, string fact) =>
        result.Facts.Single(t => t.Key == channel && t.Values.ContainsKey(fact)).Values[fact].Number!.Value.Value;
}
