using System.Diagnostics;
using FitCheck.Foundation.Problems;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>Inputs of legal size that are made to cost time, memory or a log that nobody can read.</summary>
public sealed class ManyMistakesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("check")]
    [InlineData("lint")]
    public void The_first_hundred_are_told_and_how_many_more(string command)
    {
        var build = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-quote.yaml")).TrimEnd();
        _folder.Write("b.yaml", build + "\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i}: 1\n")));
        var first = build.Split('\n').Length + 1;

        var (status, output, error) = Run.InTime(_folder.Path, command, "b.yaml");
        Assert.Equal(2, status);
        var told = (output + error).Split('\n').Where(l => l.Contains("error: ", StringComparison.Ordinal)).ToList();
        Assert.Equal(101, told.Count);
        Assert.StartsWith($"b.yaml:{first}:1: error: unknown key `key0`", told[0], StringComparison.Ordinal);
        Assert.StartsWith($"b.yaml:{first + 100}:1: error: 4900 more here and below are not told one by one", told[100],
            StringComparison.Ordinal);
    }

    [Fact]
    public void Mistakes_of_several_readers_are_counted_together_and_warnings_and_rules_are_all_told()
    {
        var problems = new ProblemList();
        for (var i = 1; i <= 150; i++)
        {
            problems.Error(new Location("a", i, 1), "x");
            problems.Warn(new Location("a", i, 2), "x");
            problems.AddRange([new Problem(new Location("a", i, 3), Severity.Error, "x") { Rule = "data/x" }]);
            problems.Error(new Location($"b{i}", 1, 1), "x");
        }
        var more = new ProblemList();
        more.AddRange(problems.Sorted());
        more.Error(new Location("a", 1, 9), "x");
        var all = more.Sorted();
        Assert.Equal(100 + 150 + 150 + 150 + 1, all.Count);
        Assert.StartsWith("51 more", Assert.Single(all, p => p.Message != "x").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_of_any_length_is_looked_for_in_little_memory()
    {
        var (word, other) = (new string('a', 3000) + "b", new string('a', 3000) + "c");
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(Nearest.To(word, [other]));
        Assert.Equal("orrin-t25", Nearest.To("orin-t25", Enumerable.Range(0, 10_000).Select(_ => "orrin-t25")));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
    }

    // Edits by hand: one letter left out, one too many, one replaced, two exchanged; then two edits, and three, which are too many for six.
    [Theory]
    [InlineData("drivr", "driver")]
    [InlineData("drivver", "driver")]
    [InlineData("drixer", "driver")]
    [InlineData("dirver", "driver")]
    [InlineData("DRIVER", "driver")]
    [InlineData("drxxer", "driver")]
    [InlineData("dxxxer", null)]
    [InlineData("drive", "driver")]
    [InlineData("channel", "channels")]
    public void What_was_meant_is_found(string word, string? meant) =>
        Assert.Equal(meant, Nearest.To(word, ["vehicle", "drivers-of-old", "driver", "channels", "budget"]));

    [Fact]
    public void Of_several_that_are_as_near_the_first_is_meant() =>
        Assert.Equal("aab", Nearest.To("aaa", ["aad", "aac", "aab", "aae"]));

    [Fact]
    public void A_hundred_thousand_keys_are_answered_soon()
    {
        _folder.Write("b.yaml", string.Concat(Enumerable.Range(0, 100_000).Select(i => $"key{i}: 1\n")));
        var watch = Stopwatch.StartNew();
        var (status, output, error) = Run.InTime(_folder.Path, "check", "b.yaml");
        Assert.Equal(2, status);
        Assert.InRange(output.Length + error.Length, 1, 100_000);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 15);
    }
}
