namespace FitCheck.Page.Server;

/// <summary>
/// As many answers are worked on at once as there are processors, the others in the order in which they came; beyond some that wait, who
/// comes is sent away. Searches, which last, take turns of their own, so that nobody waits for them.
/// </summary>
internal sealed class Turns : IDisposable
{
    private const string Search = "ways";

    private readonly SemaphoreSlim _answers = new(Environment.ProcessorCount);
    private readonly SemaphoreSlim _searches = new(Limits.Searches);
    private int _waiting;

    /// <summary>Does it when its turn comes; null where too many wait.</summary>
    public async Task<T?> Take<T>(string name, Func<T> work, CancellationToken cancel)
        where T : class
    {
        var turn = name == Search ? _searches : _answers;
        if (!await turn.WaitAsync(0, CancellationToken.None) && !await Waited(turn, cancel))
            return null;
        try
        {
            // Not on the thread that reads what comes: it has to hear that the browser goes.
            return await Task.Run(work, cancel);
        }
        finally
        {
            turn.Release();
        }
    }

    public void Dispose()
    {
        _answers.Dispose();
        _searches.Dispose();
    }

    private async Task<bool> Waited(SemaphoreSlim turn, CancellationToken cancel)
    {
        if (Interlocked.Increment(ref _waiting) > Limits.Waiting)
        {
            Interlocked.Decrement(ref _waiting);
            return false;
        }
        try
        {
            await turn.WaitAsync(cancel);
            return true;
        }
        finally
        {
            Interlocked.Decrement(ref _waiting);
        }
    }
}
