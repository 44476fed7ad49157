using System.Text;

namespace FitCheck.Rules.Messages;

/// <summary>
/// Fills in a message whose places are single names, `{{ value }}`, which nearly all are. It gives what the template engine gives,
/// without the cost of loading it.
/// </summary>
internal static class PlainMessage
{
    /// <summary>The message; null when a place holds more than a name, or a name that is no variable: the engine decides then.</summary>
    public static string? Fill(string text, Func<string, string?> variable)
    {
        if (text.Contains("{%", StringComparison.Ordinal))
            return null;
        var message = new StringBuilder(text.Length * 2);
        var at = 0;
        while (text.IndexOf("{{", at, StringComparison.Ordinal) is >= 0 and var open)
        {
            var close = text.IndexOf("}}", open, StringComparison.Ordinal);
            if (close < 0 || NameIn(text.AsSpan(open + 2, close - open - 2)) is not { } name || variable(name) is not { } value)
                return null;
            message.Append(text, at, open - at).Append(value);
            at = close + 2;
        }
        return message.Append(text, at, text.Length - at).ToString();
    }

    private static string? NameIn(ReadOnlySpan<char> place)
    {
        var name = place.Trim(' ');
        if (name.IsEmpty || char.IsAsciiDigit(name[0]))
            return null;
        foreach (var c in name)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '_')
                return null;
        }
        return name.ToString();
    }
}
