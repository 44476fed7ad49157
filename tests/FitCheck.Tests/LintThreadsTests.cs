using FitCheck.Evaluation;
using FitCheck.LintCache;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Tests.Checking;
using Xunit;

namespace FitCheck.Tests;

/// <summary>References of a large catalog are judged on all processors; each thread asks for the positions of every vehicle.</summary>
public sealed class LintThreadsTests : IDisposable
{
    private const int Vehicles = 400, Threads = 8, Rounds = 12;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Threads_that_ask_for_the_positions_of_vehicles_get_those_of_each()
    {
        const string one = "tansy-hatch";
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "vehicles", one + ".yaml"));
        for (var i = 0; i < Vehicles; i++)
        {
            var id = FormattableString.Invariant($"v{i}");
            _folder.Write($"catalog/vehicles/{id}.yaml", text.Replace($"id: {one}\n", $"id: {id}\n", StringComparison.Ordinal));
        }
        var (schemas, judge) = (new SchemaCheck(), new EntryJudge(OpenCheckers.OfRepository.Rules));
        for (var round = 0; round < Rounds; round++)
        {
            var catalog = LintedCatalog.Read([_folder.Of("catalog")], CachedLint.Read(null, "key"),
                (id, entry) => ExaminedEntry.Of(id, entry, schemas, judge), new());
            using var start = new Barrier(Threads);
            var counts = new int[Threads][];
            await Task.WhenAll(Enumerable.Range(0, Threads).Select(n => Task.Factory.StartNew(() =>
            {
                start.SignalAndWait();
                counts[n] = [.. Enumerable.Range(0, Vehicles).Select(i => catalog.PositionsOf(FormattableString.Invariant($"v{i}")).Count)];
            }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)));

            Assert.All(counts, c => Assert.Equal([counts[0][0]], c.Distinct()));
            Assert.NotEqual(0, counts[0][0]);
        }
    }
}
