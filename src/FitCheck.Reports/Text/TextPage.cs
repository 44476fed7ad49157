using FitCheck.Findings;

namespace FitCheck.Reports.Text;

/// <summary>How a line stands out where colour is allowed.</summary>
internal enum TextStyle
{
    Plain,
    Strong,
    Faint,
}

/// <summary>
/// Wraps and indents lines of a terminal page. Lines end in a line feed everywhere, so that a saved page is the same on every machine.
/// </summary>
internal sealed class TextPage(TextWriter output, int columns, bool color)
{
    private const string Reset = "\u001b[0m";
    private const string Faint = "\u001b[2m";

    private readonly int _columns = Math.Max(columns, 40);
    private bool _gapDue;
    private bool _started;

    /// <summary>An empty line before whatever comes next; several asked for in a row are one.</summary>
    public void Gap() => _gapDue = _started;

    public void Rule()
    {
        Gap();
        Line(0, new string('-', _columns), TextStyle.Faint);
        Gap();
    }

    public void Heading(string text) => Line(0, text, TextStyle.Strong);

    public void Line(int indent, string text, TextStyle style = TextStyle.Plain)
    {
        if (text.Length > 0)
            Write(new string(' ', indent), text, indent, style == TextStyle.Plain ? "" : style == TextStyle.Strong ? "\u001b[1m" : Faint);
    }

    /// <summary>A line that is not broken, so that it can be copied.</summary>
    public void Whole(int indent, string text)
    {
        Start();
        End(new string(' ', indent) + Printable(text));
    }

    /// <summary>A status word, then text that hangs beside it.</summary>
    public void Marked(Status status, int indent, string text)
    {
        var word = status.Word().ToUpperInvariant();
        var lead = color ? $"{ColorOf(status)}{word}{Reset}" : word;
        Write(lead + new string(' ', Math.Max(1, indent - word.Length)), text, indent, "");
    }

    /// <summary>A mark, then text that hangs beside it.</summary>
    public void Hanging(int indent, string mark, string text) =>
        Write(new string(' ', indent) + mark, text, indent + mark.Length, "");

    /// <summary>What was found, and faintly where: on one line when it holds both.</summary>
    public void Pair(int indent, string text, string faint)
    {
        var (first, second) = (Printable(text), Printable(faint));
        if (first.Length == 0 || indent + first.Length + 3 + second.Length > _columns)
        {
            Line(indent, first);
            Line(indent, second, TextStyle.Faint);
            return;
        }
        Start();
        End($"{new string(' ', indent)}{first}   {(color ? $"{Faint}{second}{Reset}" : second)}");
    }

    /// <summary>A row of a table: what to buy, the name as wide as there is room, the sum, a note with its column's width.</summary>
    public void Row(string first, string name, string sum, string note, int noteWidth)
    {
        var room = Math.Max(12, _columns - 2 - first.Length - 2 - 2 - sum.Length - (noteWidth > 0 ? noteWidth + 2 : 0));
        var lines = Wrap(name, room);
        Start();
        for (var i = 0; i < lines.Count; i++)
        {
            var row = i == 0
                ? $"  {first}  {lines[i].PadRight(room)}  {sum}  {note}"
                : $"  {new string(' ', first.Length)}  {lines[i]}";
            End(Printable(row).TrimEnd());
        }
    }

    /// <summary>A row of a table of equal columns: a label, then cells that are broken to their widths.</summary>
    public void Columns(int labelWidth, string label, IReadOnlyList<string> cells)
    {
        var width = Math.Max(12, ((_columns - 2 - labelWidth) / cells.Count) - 2);
        var lines = cells.Select(c => Wrap(c, width)).ToList();
        Start();
        for (var i = 0; i < lines.Max(l => l.Count); i++)
        {
            var row = lines.Select(l => "  " + (i < l.Count ? l[i] : "").PadRight(width));
            End($"  {(i == 0 ? label : "").PadRight(labelWidth)}{string.Concat(row)}".TrimEnd());
        }
    }

    /// <summary>Breaks at spaces; a word that is longer than a line stands alone, because a path that is cut can't be copied.</summary>
    public static List<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        var line = new System.Text.StringBuilder();
        foreach (var word in Printable(text).Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line.ToString().TrimEnd());
                line.Clear();
            }
            else if (line.Length > 0)
            {
                line.Append(' ');
            }
            line.Append(word);
        }
        lines.Add(line.ToString().TrimEnd());
        return lines;
    }

    private void Write(string lead, string text, int indent, string style)
    {
        Start();
        var lines = Wrap(text, _columns - indent);
        var (on, off) = color && style.Length > 0 ? (style, Reset) : ("", "");
        for (var i = 0; i < lines.Count; i++)
            End($"{(i == 0 ? lead : new string(' ', indent))}{on}{lines[i]}{off}");
    }

    private void Start()
    {
        if (_gapDue)
            output.Write('\n');
        _gapDue = false;
        _started = true;
    }

    private void End(string line)
    {
        output.Write(line);
        output.Write('\n');
    }

    // A name from a catalog must not steer the terminal.
    private static string Printable(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsControl(text[i]))
                return string.Create(text.Length, text, static (span, from) =>
                {
                    for (var k = 0; k < span.Length; k++)
                        span[k] = from[k] is '\n' or '\r' or '\t' ? ' ' : char.IsControl(from[k]) ? '\uFFFD' : from[k];
                });
        }
        return text;
    }

    private static string ColorOf(Status status) => status switch
    {
        Status.Fail => "\u001b[1;31m",
        Status.Measure => "\u001b[1;36m",
        Status.Warn => "\u001b[1;33m",
        _ => "\u001b[1;32m",
    };
}
