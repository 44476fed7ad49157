using System.Collections.Concurrent;

namespace FitCheck.Page.Server;

/// <summary>
/// What is told of requests that last, by a word that the page's script chose. A bounded number is kept, each while it runs.
/// </summary>
internal sealed class Jobs
{
    private const int LongestWord = 64;

    private readonly ConcurrentDictionary<string, Job> _running = new(StringComparer.Ordinal);

    /// <summary>The word, where it can be one.</summary>
    public static string? Word(string word) =>
        word.Length is > 0 and <= LongestWord && word.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_') ? word : null;

    /// <summary>Keeps what will be told; null where too many are kept, and then nothing of it is.</summary>
    public Job? Begin(string word)
    {
        if (_running.Count >= Limits.Jobs)
            return null;
        var job = new Job(j => _running.TryRemove(KeyValuePair.Create(word, j)));
        _running[word] = job;
        return job;
    }

    /// <summary>What was told last; nothing where nothing runs.</summary>
    public string LastLine(string word) => _running.TryGetValue(word, out var job) ? job.LastLine : "";
}

/// <summary>A request that lasts; disposed of when it is answered.</summary>
internal sealed class Job(Action<Job> ended) : IProgress<string>, IDisposable
{
    private volatile string _lastLine = "";

    public string LastLine => _lastLine;

    public void Report(string value) => _lastLine = value;

    public void Dispose() => ended(this);
}
