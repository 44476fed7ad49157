using System.Net;
using System.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Markdown;

/// <summary>
/// The one place where text becomes Markdown. What is escaped can't begin a list, a link, markup or a mention of somebody.
/// </summary>
internal static class MarkdownText
{
    private const string Meaningful = "\\`*_{}[]()<>#+-.!|~&$=:";

    // Between a mark and the word behind it, a site that mentions people and issues sees no mention.
    private const string Nothing = "&#8203;";

    /// <summary>On one line, every character standing for itself.</summary>
    public static string Plain(string text)
    {
        var markdown = new StringBuilder(text.Length + 16);
        var line = PlainText.Line(text);
        for (var i = 0; i < line.Length; i++)
            Append(markdown, line, i);
        return markdown.ToString();
    }

    /// <summary>On one line and escaped, with what stands between backticks set as code. A backtick without a partner stays.</summary>
    public static string Prose(string text)
    {
        var parts = PlainText.Line(text).Split('`');
        var markdown = new StringBuilder(Plain(parts[0]));
        for (var i = 1; i < parts.Length; i += 2)
        {
            if (i + 1 < parts.Length && parts[i].Trim().Length > 0)
                markdown.Append(Code(parts[i])).Append(Plain(parts[i + 1]));
            else
                markdown.Append(Plain(string.Concat("`", parts[i], i + 1 < parts.Length ? "`" + parts[i + 1] : "")));
        }
        return markdown.ToString();
    }

    /// <summary>As code, for ids and places. What holds a backtick is plain text.</summary>
    public static string Code(string text)
    {
        var line = PlainText.Line(text);
        return line.Contains('`', StringComparison.Ordinal) || line.Trim().Length == 0 ? Plain(line) : $"`{line}`";
    }

    /// <summary>As HTML text, for the line that a reader opens.</summary>
    public static string Summary(string text) =>
        WebUtility.HtmlEncode(PlainText.Line(text)).Replace("@", "@" + Nothing, StringComparison.Ordinal);

    private static void Append(StringBuilder markdown, string line, int i)
    {
        var isAddress = IsAddress(line, i);
        if (Meaningful.Contains(line[i], StringComparison.Ordinal) && (isAddress || !IsInside(line, i)))
            markdown.Append('\\');
        markdown.Append(line[i]);
        if (isAddress || (line[i] is '@' or '#' && i + 1 < line.Length && char.IsLetterOrDigit(line[i + 1])))
            markdown.Append(Nothing);
    }

    // These mean something at the start of a line only; within it they are left alone, for those who read the source.
    private static bool IsInside(string line, int i) =>
        line[i] is '-' or '+' or '=' or ':' or '(' ? i > 0
        : line[i] is '.' or ')' && ((i + 1 < line.Length && line[i + 1] != ' ') || !line.AsSpan(0, i).Trim("0123456789").IsEmpty);

    // `http://` and `www.` become links by themselves.
    private static bool IsAddress(string line, int i) =>
        (line[i] == ':' && i + 1 < line.Length && line[i + 1] == '/')
        || (line[i] == '.' && i >= 3 && line.AsSpan(i - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase));
}
