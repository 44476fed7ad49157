using FitCheck.Page.Server;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>Words that let in, turns, and what is told of those who wait.</summary>
public sealed class KeyAndTurnTests
{
    // A browser's start shows its address to every user of the machine.
    [Fact]
    public void A_ticket_lets_in_once_and_the_token_always()
    {
        var keys = new Keys();
        var ticket = keys.Ticket();
        Assert.True(keys.LetsIn(ticket));
        Assert.False(keys.LetsIn(ticket));
        Assert.True(keys.LetsIn(keys.Token));
        Assert.True(keys.LetsIn(keys.Token));
        Assert.False(keys.LetsIn(keys.Cookie));
        Assert.False(keys.IsCookie(keys.Token));
        Assert.Equal(3, new HashSet<string> { ticket, keys.Token, keys.Cookie }.Count);
    }

    [Fact]
    public async Task As_many_wait_as_may_and_the_next_is_sent_away()
    {
        using var turns = new Turns();
        using var held = new ManualResetEventSlim();
        var all = Environment.ProcessorCount + Limits.Waiting;
        var taken = Enumerable.Range(0, all).Select(i => turns.Take("", () =>
        {
            held.Wait();
            return $"{i}";
        }, CancellationToken.None)).ToList();

        Assert.Null(await turns.Take("", () => "", CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(10)));
        // A search has turns of its own.
        Assert.Equal("found", await turns.Take("ways", () => "found", CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(10)));
        held.Set();
        Assert.Equal(Enumerable.Range(0, all).Select(i => $"{i}"), await Task.WhenAll(taken));
        Assert.Equal("", await turns.Take("", () => "", CancellationToken.None));
    }

    [Fact]
    public async Task Who_goes_leaves_its_turn_to_others()
    {
        using var turns = new Turns();
        using var held = new ManualResetEventSlim();
        using var gone = new CancellationTokenSource();
        var taken = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => turns.Take("", () =>
        {
            held.Wait();
            return "";
        }, CancellationToken.None)).ToList();
        var waiting = Enumerable.Range(0, Limits.Waiting).Select(_ => turns.Take("", () => "", gone.Token)).ToList();
        await gone.CancelAsync();
        foreach (var one in waiting)
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => one);
        var next = turns.Take("", () => "next", CancellationToken.None);
        held.Set();
        Assert.Equal("next", await next);
        await Task.WhenAll(taken);
    }

    [Fact]
    public void The_last_line_is_told_while_it_runs()
    {
        var jobs = new Jobs();
        var job = jobs.Begin("a")!;
        Assert.Equal("", jobs.LastLine("a"));
        job.Report("first");
        job.Report("second");
        Assert.Equal(("second", ""), (jobs.LastLine("a"), jobs.LastLine("b")));
        // The same word again: the end of the first does not end what is told of the second.
        using var again = jobs.Begin("a")!;
        job.Dispose();
        again.Report("anew");
        Assert.Equal("anew", jobs.LastLine("a"));
        again.Dispose();
        Assert.Equal("", jobs.LastLine("a"));
        Assert.Equal(Limits.Jobs, Enumerable.Range(0, Limits.Jobs + 5).Count(i => jobs.Begin($"{i}") is not null));
    }
}
