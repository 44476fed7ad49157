using System.Collections.Concurrent;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Facts;

/// <summary>
/// What nobody recorded is not absent: each datum of each reference build, and of every entry that it names, is left out, one at a time.
/// Nothing gets better by that and no finding goes: what passed or was warned of is asked for where the datum decided it, and a failure
/// stays one or waits for the datum.
/// </summary>
public sealed class DroppedDataTests(ITestOutputHelper output)
{
    // Keys that are not missed by a rule (by any: `*`), each with the reason.
    private static readonly (string Key, string Rule, string Reason)[] Excused =
    [
        ("mounting.cutout_minor", "*", "a hole of which one measure is written is round: the short axis is what makes it an oval"),
        ("parameters.le", "level/tweeter-setting-off", "of a tweeter it is next to nothing: it moves the balance by a tenth of a decibel"),
        ("parameters", "power/too-much", "by IEC 60268-5 the power is that into the rated impedance; the resonance moves it a little"),
        ("parameters.fs", "power/too-much", "the same"),
        ("parameters.qes", "power/too-much", "the same"),
        ("parameters.qms", "power/too-much", "the same"),
    ];

    [Fact]
    public void A_datum_that_is_left_out_makes_no_finding_better_and_none_go()
    {
        var builds = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal).ToList();
        var misses = new ConcurrentBag<string>();
        var drops = 0;
        Parallel.ForEach(Partitioner.Create(0, builds.Count, 8), range =>
        {
            for (var i = range.Item1; i < range.Item2; i++)
            {
                var tried = new DroppedData(builds[i]);
                foreach (var (what, before, after) in tried.Drops())
                {

                    Interlocked.Increment(ref drops);
                    foreach (var miss in Misses(before, after).Where(m => !IsExcused(what, m)))
                        misses.Add($"{what}: {miss} ({Path.GetFileNameWithoutExtension(builds[i])})");
                }
            }
        });
        output.WriteLine($"{drops} drops");
        var told = misses.Distinct().Order(StringComparer.Ordinal).ToList();
        foreach (var miss in told)
            output.WriteLine(miss);

        Assert.True(drops > 2_000, $"only {drops} data were left out");
        Assert.True(told.Count == 0, $"{told.Count} findings got better or went");
    }

    private static bool IsExcused(string what, string miss) => Excused.Any(e => what.EndsWith(e.Key, StringComparison.Ordinal)
        && (e.Rule == "*" || miss.StartsWith(e.Rule + " ", StringComparison.Ordinal)));

    // What is worse takes the word from what rests on it: of a tweeter that may be bare no more is asked, and an output of which nobody
    // knows has no findings of its own. Where a maker prints no parameters at all, the trade goes by the rule of thumb for a high-pass.
    private static bool IsTakenOver(string rule, string at, IReadOnlyDictionary<(string Rule, string At), Status> after) =>
        rule == "load/hard-to-drive" && after.GetValueOrDefault(("load/below-rated-load", at)) >= Status.Measure
        || (rule.StartsWith("tweeter/", StringComparison.Ordinal) || rule.StartsWith("level/", StringComparison.Ordinal))
            && after.GetValueOrDefault(("tweeter/full-range-feed", at)) == Status.Fail
        || rule == "tweeter/too-much-power-when-clipped" && after.GetValueOrDefault(("tweeter/too-much-power", at)) == Status.Fail
        // What a maker left out beside a power makes it less, and that decides what rests on it.
        || rule is "power/rating-at-high-distortion" or "power/rating-of-one-channel"
        // What begins nobody knows where counts from the axis on, and so behind the driver.
        || rule == "mount/beside-too-near" && after.ContainsKey(("mount/too-deep", at))
        || rule == "power/excursion-beyond-linear" && after.ContainsKey(("power/woofer-without-high-pass", at))
        || (rule.StartsWith("sides/", StringComparison.Ordinal) || rule == "wiring/dividing-network-missing" || IsOfCrossovers(rule)
            || rule.StartsWith("band/", StringComparison.Ordinal))
            && after.Any(f => f.Key.Rule == "power/driver-without-output" && f.Value >= Status.Measure)
        // Of a crossover that nobody wrote nothing more is asked than which it is: the bands wait for it.
        || IsOfCrossovers(rule) && after.Any(f => f.Key.Rule.StartsWith("band/", StringComparison.Ordinal) && f.Value == Status.Measure)
        || rule == "signal/high-pass-out-of-reach" && after.Any(f => f.Key.Rule == "tweeter/full-range-feed" && f.Value >= Status.Measure)
        || !after.Keys.Any(k => k.At == at) && after.Any(f => f.Key.Rule == "power/driver-without-output" && f.Value >= Status.Measure);

    private static bool IsOfCrossovers(string rule) => rule is "load/crossover-for-another-load" or "power/crossover-overpowered";

    private static IEnumerable<string> Misses(IReadOnlyDictionary<(string Rule, string At), Status> before,
        IReadOnlyDictionary<(string Rule, string At), Status> after)
    {
        foreach (var ((rule, at), was) in before)
        {
            if (!after.TryGetValue((rule, at), out var now))
            {
                if (!IsTakenOver(rule, at, after))
                    yield return $"{rule} at {at} was {was.Word()} and is gone";
            }
            else if (now < was && now != Status.Measure && !(was == Status.Measure && now == Status.Warn))
                yield return $"{rule} at {at} was {was.Word()} and is {now.Word()}";
        }
    }
}
