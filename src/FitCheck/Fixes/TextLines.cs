namespace FitCheck.Fixes;

/// <summary>A text as its lines, each with the line end that it has; joined again they are the text.</summary>
internal sealed class TextLines
{
    private readonly List<string> _lines = [];

    public TextLines(string text)
    {
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            var next = end < 0 ? text.Length : end + 1;
            _lines.Add(text[start..next]);
            start = next;
        }
    }

    public int Count => _lines.Count;

    /// <summary>A line with its end, counted from 1.</summary>
    public string this[int line]
    {
        get => _lines[line - 1];
        set => _lines[line - 1] = value;
    }

    /// <summary>`\r\n` where the first line ends so, else `\n`.</summary>
    public string LineEnd => _lines.Count > 0 && _lines[0].EndsWith("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    /// <summary>The end of a line: `\n`, `\r\n`, or nothing for a last line without.</summary>
    public static string EndOf(string line) => line.EndsWith("\r\n", StringComparison.Ordinal) ? "\r\n" : line.EndsWith('\n') ? "\n" : "";

    public string Joined => string.Concat(_lines);
}
