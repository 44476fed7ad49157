using System.Globalization;
using System.Text;

namespace FitCheck.Page.State;

/// <summary>
/// One change of a text: from a place on, so many characters are replaced. Enough to take an action back, or to make one later.
/// </summary>
/// <param name="Start">Where it begins, in UTF-16 code units.</param>
/// <param name="Length">How many are replaced.</param>
/// <param name="Text">What comes there.</param>
internal sealed record Step(int Start, int Length, string Text)
{
    /// <summary>The file of which the text is then; null where it is of the same.</summary>
    public OpenedFile? File { get; init; }

    /// <summary>What makes the second text of the first.</summary>
    public static Step Between(string before, string after)
    {
        var (start, most) = (0, Math.Min(before.Length, after.Length));
        while (start < most && before[start] == after[start])
            start++;
        // A pair of surrogates stays together.
        if (start > 0 && char.IsHighSurrogate(before[start - 1]))
            start--;
        var end = 0;
        while (end < most - start && before[^(end + 1)] == after[^(end + 1)])
            end++;
        if (end > 0 && char.IsLowSurrogate(before[^end]))
            end--;
        return new(start, before.Length - start - end, after[start..(after.Length - end)]);
    }

    /// <summary>The changed text; null for a text that the step was not made for.</summary>
    public string? Of(string text) => Start > text.Length || Start + Length > text.Length ? null
        : string.Concat(text.AsSpan(0, Start), Text, text.AsSpan(Start + Length));

    /// <summary>As a field of a form holds it.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture,
            $"{Start}.{Length}.{Letters(Text)}{(File is null ? "" : "." + Letters(File.ToString()))}");

    /// <summary>The step of such a field; null for anything else.</summary>
    public static Step? Parse(string written)
    {
        if (written.Split('.') is not [var start, var length, var text, .. var file] || file.Length > 1
            || !int.TryParse(start, NumberStyles.None, CultureInfo.InvariantCulture, out var from)
            || !int.TryParse(length, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || from > int.MaxValue - count)
            return null;
        var (put, name) = (Letters(text.AsSpan()), file is [var only] ? Letters(only.AsSpan()) : "");
        return put is null || name is null ? null
            : new(from, count, put) { File = file.Length == 0 ? null : OpenedFile.Parse(name) };
    }

    private static string Letters(string text) => Convert.ToBase64String(Encoding.UTF8.GetBytes(text));

    private static string? Letters(ReadOnlySpan<char> written)
    {
        var bytes = new byte[written.Length];
        return Convert.TryFromBase64Chars(written, bytes, out var used) ? Encoding.UTF8.GetString(bytes, 0, used) : null;
    }
}
