using System.Diagnostics;
using FitCheck.Charts;
using FitCheck.Evaluation;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>A call that is cancelled ends soon, and the checker answers as before.</summary>
public sealed class CancellationTests
{
    // Far above what it takes, for a machine that is busy; far below what the whole search takes.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(2);
    private static readonly Checker Checker = OpenCheckers.OfRepository;
    private static readonly BuildSource Build = BuildSource.File(OpenCheckers.Build("front-rear-two-amps"));

    [Fact]
    public void What_is_cancelled_before_it_begins_does_not_begin()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        var token = cancelled.Token;

        Assert.Throws<OperationCanceledException>(() => Checker.Check([Build], cancel: token));
        Assert.Throws<OperationCanceledException>(() => Checker.Suggest(Build, cancel: token));
        Assert.Throws<OperationCanceledException>(() => Checker.List([Build], cancel: token));
        Assert.Throws<OperationCanceledException>(() => Checker.Chart(cancel: token));
        Assert.Throws<OperationCanceledException>(
            () => Checker.Import(BuildSource.Text("q.csv", "orrin-c165,1"), "tansy-hatch", cancel: token));
        Assert.Throws<OperationCanceledException>(
            () => Checker.Open(new CheckerOptions { Catalogs = [RepositoryRoot.Of("catalog")], Rules = [RepositoryRoot.Of("rules")] },
                token));
    }

    [Fact]
    public void A_check_ends_between_two_builds()
    {
        using var cancel = new CancellationTokenSource();
        var told = new List<string>();
        var options = new CheckOptions { Progress = new Told(words => { told.Add(words); if (told.Count == 2) cancel.Cancel(); }) };

        Assert.Throws<OperationCanceledException>(() => Checker.Check(BuildSource.Files(OpenCheckers.Builds), options, cancel.Token));
        Assert.Equal(2, told.Count);
    }

    [Fact]
    public void A_list_ends_while_parts_are_tried() => EndsSoon(t => Checker.List(BuildSource.Files(OpenCheckers.Builds), cancel: t));

    [Fact]
    public void A_search_ends_between_two_candidates()
    {
        // Nothing passes here, so the search and the reasons would take long.
        var text = File.ReadAllText(OpenCheckers.Build("front-rear-two-amps"))
            .Replace("budget: 1050.00 EUR", "budget: 300.00 EUR", StringComparison.Ordinal);
        EndsSoon(t =>
            Checker.Suggest(BuildSource.Text("dear.yaml", text),
                new SuggestOptions { FailOn = Findings.Status.Warn, Time = TimeSpan.FromMinutes(10) }, t));
    }

    [Fact]
    public void A_chart_ends_between_two_drivers() => EndsSoon(t =>
    {
        while (true)
            Checker.Chart(new ChartOptions { Slice = new ChartSlice { AnyType = true } }, t);
    });

    [Fact]
    public void A_refresh_that_is_cancelled_leaves_the_state_as_it_was()
    {
        using var folder = new TemporaryFolder();
        var checker = OpenCheckers.Opened(RepositoryRoot.Of("catalog"), folder.Path);
        var before = checker.CatalogDigest;
        folder.Write("drivers/orrin-c165.yaml", Trial.Entry("drivers/orrin-c165.yaml") + "# changed\n");
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();

        Assert.Throws<OperationCanceledException>(() => checker.Refresh(cancel: cancelled.Token));
        Assert.Equal(before, checker.CatalogDigest);
        Assert.True(checker.Refresh().HasChanged);
    }

    private static void EndsSoon(Action<CancellationToken> call)
    {
        using var cancel = new CancellationTokenSource();
        var began = new Stopwatch();
        var running = Task.Run(() => Assert.ThrowsAny<OperationCanceledException>(() => call(cancel.Token)));
        Assert.False(running.Wait(TimeSpan.FromMilliseconds(300)), "it was over before it could be cancelled");
        began.Start();
        cancel.Cancel();
        Assert.True(running.Wait(TimeSpan.FromMinutes(1)));
        Assert.True(began.Elapsed < Soon, $"it ended {began.Elapsed.TotalSeconds:0.0} s after it was cancelled");
    }

    private sealed class Told(Action<string> tell) : IProgress<string>
    {
        public void Report(string value) => tell(value);
    }
}
