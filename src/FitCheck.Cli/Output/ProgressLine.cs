namespace FitCheck.Cli.Output;

/// <summary>One line on standard error that tells what goes on, only where a person watches a terminal.</summary>
internal sealed class ProgressLine : IDisposable
{
    private readonly bool _shown = !Console.IsErrorRedirected;
    private int _width;

    public void Tell(string text)
    {
        if (!_shown)
            return;
        var line = text.Length > 78 ? text[..78] : text;
        Console.Error.Write("\r" + line.PadRight(_width));
        _width = line.Length;
    }

    public void Dispose()
    {
        if (_shown && _width > 0)
            Console.Error.Write("\r" + new string(' ', _width) + "\r");
    }
}
