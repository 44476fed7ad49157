namespace FitCheck.Yaml;

/// <summary>
/// Whole lines of a text that another text has otherwise: few edits that an editor can make one by one, from the last to the first.
/// </summary>
internal static class LineEdits
{
    /// <summary>The edits that make the second text of the first one, in the order of the text; none overlap.</summary>
    public static IReadOnlyList<TextEdit> Between(string before, string after)
    {
        var (a, b) = (Lines(before), Lines(after));
        // How many lines are alike from here on, at most: builds have some dozens of lines.
        var alike = new int[a.Count + 1, b.Count + 1];
        for (var i = a.Count - 1; i >= 0; i--)
        {
            for (var j = b.Count - 1; j >= 0; j--)
                alike[i, j] = a[i] == b[j] ? alike[i + 1, j + 1] + 1 : Math.Max(alike[i + 1, j], alike[i, j + 1]);
        }
        var edits = new List<TextEdit>();
        for (int i = 0, j = 0, at = 0; i < a.Count || j < b.Count;)
        {
            if (i < a.Count && j < b.Count && a[i] == b[j])
            {
                at += a[i].Length;
                (i, j) = (i + 1, j + 1);
                continue;
            }
            var (start, text) = (at, "");
            while ((i < a.Count || j < b.Count) && !(i < a.Count && j < b.Count && a[i] == b[j]))
            {
                if (j >= b.Count || (i < a.Count && alike[i + 1, j] >= alike[i, j + 1]))
                    at += a[i++].Length;
                else
                    text += b[j++];
            }
            edits.Add(new TextEdit(start, at - start, text));
        }
        return edits;
    }

    private static List<string> Lines(string text)
    {
        var lines = new List<string>();
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf('\n', at);
            var next = end < 0 ? text.Length : end + 1;
            lines.Add(text[at..next]);
            at = next;
        }
        return lines;
    }
}
