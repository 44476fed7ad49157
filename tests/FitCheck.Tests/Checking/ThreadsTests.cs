using FitCheck.Charts;
using FitCheck.Evaluation;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>
/// Sixteen threads ask one checker all sorts of things at once; each answer is the one that a single thread got, to the byte.
/// </summary>
public sealed class ThreadsTests
{
    private const int Threads = 16;

    [Fact]
    public void Many_threads_get_the_answers_of_one()
    {
        var asked = Questions().ToList();
        var alone = OpenCheckers.Opened();
        var expected = asked.ConvertAll(q => q(alone));
        // Opened anew, so that entries, messages and schemas are read for the first time by all of them at once.
        var shared = OpenCheckers.Opened();
        var wrong = 0;
        using var start = new Barrier(Threads);
        var threads = Enumerable.Range(0, Threads).Select(n => new Thread(() =>
        {
            start.SignalAndWait();
            for (var i = 0; i < asked.Count; i++)
            {
                var at = (i + (n * 7)) % asked.Count;
                if (Answer(() => asked[at](shared)) != expected[at])
                    Interlocked.Increment(ref wrong);
            }
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());

        Assert.Equal(0, wrong);
    }

    [Fact]
    public void Answers_stay_whole_while_the_catalog_changes_under_them()
    {
        using var folder = new TemporaryFolder();
        var entry = Trial.Entry("drivers/orrin-c165.yaml");
        string[] prices = ["61.00", "62.00"];
        var texts = prices.Select(p => System.Text.RegularExpressions.Regex.Replace(entry, @"price: \S+ EUR", $"price: {p} EUR")).ToArray();
        Assert.NotEqual(texts[0], texts[1]);
        folder.Write("drivers/orrin-c165.yaml", texts[0]);
        var checker = OpenCheckers.Opened(RepositoryRoot.Of("catalog"), folder.Path);
        var build = BuildSource.File(OpenCheckers.Build("front-rear-two-amps"));
        var first = OpenCheckers.Json(checker.Check([build]));
        folder.Write("drivers/orrin-c165.yaml", texts[1]);
        Assert.True(checker.Refresh().HasChanged);
        var second = OpenCheckers.Json(checker.Check([build]));
        Assert.NotEqual(first, second);

        var (done, wrong) = (false, 0);
        var readers = Enumerable.Range(0, 4).Select(_ => new Thread(() =>
        {
            while (!Volatile.Read(ref done))
            {
                var told = Answer(() => OpenCheckers.Json(checker.Check([build])));
                if (told != first && told != second)
                    Interlocked.Increment(ref wrong);
            }
        })).ToList();
        readers.ForEach(t => t.Start());
        for (var i = 0; i < 10; i++)
        {
            folder.Write("drivers/orrin-c165.yaml", texts[i % 2]);
            Assert.True(checker.Changed([folder.Of("drivers/orrin-c165.yaml")]).HasChanged);
        }
        Volatile.Write(ref done, true);
        readers.ForEach(t => t.Join());

        Assert.Equal(0, wrong);
    }

    // Whatever is thrown on a thread of its own would end the run.
    private static string Answer(Func<string> ask)
    {
        try
        {
            return ask();
        }
        catch (Exception e)
        {
            return e.ToString();
        }
    }

    private static IEnumerable<Func<Checker, string>> Questions()
    {
        foreach (var file in OpenCheckers.Builds.Where((_, i) => i % 5 == 0))
        {
            yield return c => OpenCheckers.Json(c.Check([BuildSource.File(file)]));
            yield return c => OpenCheckers.Json(c.List([BuildSource.Text(file, File.ReadAllText(file))]));
        }
        foreach (var name in new[] { "tansy-wrong-harness", "tansy-mdf-rings", "pellet-too-deep" })
            yield return c =>
                OpenCheckers.Json(
                    c.Suggest(BuildSource.File(OpenCheckers.Build(name)), new SuggestOptions { Time = TimeSpan.FromMinutes(10) }));
        yield return c => OpenCheckers.Json(c.Chart(new ChartOptions { Slice = new ChartSlice { Vehicles = ["tansy-hatch"] } }));
        yield return c => OpenCheckers.Json(c.Chart(new ChartOptions { Slice = new ChartSlice { Sizes = ["130 mm"] } }));
        yield return c =>
            string.Join('\n',
                c.Check([BuildSource.Text("wrong.yaml",
                    "kind: build\nname: A\nvehicle: tansy-hatch\nfit:\n  - {at: [front-door-left], drivr: x}\n")]).Problems);
    }
}
