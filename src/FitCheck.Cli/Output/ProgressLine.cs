namespace FitCheck.Cli.Output;

/// <summary>One line on standard error that tells what goes on, only where a person watches a terminal; nothing takes it away.</summary>
internal sealed class ProgressLine : IProgress<string>, IDisposable
{
    private readonly bool _shown = !Console.IsErrorRedirected;
    private readonly System.Diagnostics.Stopwatch _since = new();
    private int _width;

    public void Report(string value)
    {
        if (!_shown)
            return;
        if (value.Length == 0)
        {
            Dispose();
            return;
        }
        // More of them than an eye can follow would be most of the work.
        if (_since.IsRunning && _since.ElapsedMilliseconds < 50)
            return;
        _since.Restart();
        var line = value.Length > 78 ? value[..78] : value;
        Console.Error.Write("\r" + line.PadRight(_width));
        _width = line.Length;
    }

    /// <summary>Takes the line away, for somebody else who writes there.</summary>
    public void Clear()
    {
        if (_shown && _width > 0)
            Console.Error.Write("\r" + new string(' ', _width) + "\r");
        _width = 0;
    }

    public void Dispose() => Clear();
}
