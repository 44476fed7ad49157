using System.Text;

namespace FitCheck.Reports.Markdown;

/// <summary>A page of blocks that stays short enough for a comment: a site refuses one of more than 65,536 characters.</summary>
internal sealed class MarkdownPage
{
    private const int Room = 60_000;

    private readonly StringBuilder _text = new();

    /// <summary>Adds a block and an empty line, when it fits as a whole.</summary>
    public bool Add(string block)
    {
        if (_text.Length + block.Length > Room)
            return false;
        _text.Append(block.TrimEnd('\n')).Append("\n\n");
        return true;
    }

    /// <summary>Adds lines that belong together, such as a list; those that fit. Returns how many did not.</summary>
    public int AddLines(IReadOnlyList<string> lines)
    {
        var fitting = 0;
        var length = _text.Length;
        while (fitting < lines.Count && length + lines[fitting].Length < Room)
            length += lines[fitting++].Length + 1;
        if (fitting > 0)
            Add(string.Join('\n', lines.Take(fitting)));
        return lines.Count - fitting;
    }

    /// <summary>A block that a reader opens.</summary>
    public static string Folded(string summary, string block) =>
        $"<details><summary>{summary}</summary>\n\n{block.TrimEnd('\n')}\n\n</details>";

    public override string ToString() => _text.ToString().TrimEnd('\n') + "\n";
}
