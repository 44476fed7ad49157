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
                    foreach (var miss in Misses(before, after))
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

    private static IEnumerable<string> Misses(IReadOnlyDictionary<(string Rule, string At), Status> before,
        IReadOnlyDictionary<(string Rule, string At), Status> after)
    {
        foreach (var ((rule, at), was) in before)
        {
            if (!after.TryGetValue((rule, at), out var now))
                yield return $"{rule} at {at} was {was.Word()} and is gone";
            else if (now < was && !(was == Status.Fail && now == Status.Measure))
                yield return $"{rule} at {at} was {was.Word()} and is {now.Word()}";
        }
    }
}
