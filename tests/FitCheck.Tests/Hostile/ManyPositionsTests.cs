using FitCheck.Benchmarks.Synthetic;
using FitCheck.Evaluation;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// A vehicle of five hundred positions. Nothing is told of a position that would not be told of it in a vehicle of four, and what grows
/// with their number is not read once for each of them.
/// </summary>
public sealed class ManyPositionsTests : IDisposable
{
    private const int Many = 500, Few = 4;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Each_position_is_judged_as_in_a_vehicle_of_four()
    {
        var (many, few) = (Judged(Many), Judged(Few));
        for (var i = 0; i < Many; i++)
            Assert.Equal(Told(few, i % Few), Told(many, i));
        Assert.NotEmpty(Told(few, 0));
    }

    [Fact]
    public void What_is_written_of_the_vehicle_is_read_once()
    {
        var checker = Opened(Few, out var build);
        var draft = checker.Draft("longbus.yaml", build).Build!;

        Assert.NotNull(draft.Written!("longbus"));
        Assert.Same(draft.Written("longbus"), draft.Written("longbus"));
    }

    private BuildResult Judged(int positions)
    {
        var checker = Opened(positions, out var build);
        return Assert.Single(checker.Check([BuildSource.Text("longbus.yaml", build)]).Result!.Builds);
    }

    // What a place needs by itself; drivers on one output bear on each other.
    private static IEnumerable<string> Told(BuildResult result, int seat) => result.Findings
        .Where(f => f.Position == $"seat-{seat}" && f.Rule.StartsWith("mount/", StringComparison.Ordinal))
        .Select(f => $"{f.Rule} {f.Status} {f.Message}".Replace($"eat {seat}", "eat", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    private Checker Opened(int positions, out string build)
    {
        _folder.Write("catalog/vehicles/longbus.yaml", Longbus.Vehicle(positions));
        build = Longbus.Build(positions);
        var opened = Checker.Open(new CheckerOptions
        {
            Catalogs = [RepositoryRoot.Of("catalog"), _folder.Of("catalog")],
            Rules = [RepositoryRoot.Of("rules")],
        });
        return opened.Checker ?? throw new InvalidOperationException(string.Join('\n', opened.Problems));
    }
}
