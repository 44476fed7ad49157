using System.Text;
using FitCheck.DataSheets;
using FitCheck.Yaml;

namespace FitCheck.Cli.NewParts;

/// <summary>Writes what was answered as a file to go on with: what else the kind may have stands below it, as a comment.</summary>
internal static class PartFile
{
    // What is owned has none of these.
    private static readonly string[] OfWhatIsSold = ["source", "pack", "price", "availability"];

    /// <param name="entry">What was answered.</param>
    /// <param name="starter">The starting file of the kind.</param>
    public static string Of(YamlMap entry, string starter)
    {
        var known = entry.Entries.Select(e => e.Key).Concat(entry["owned"] is null ? [] : OfWhatIsSold).ToHashSet(StringComparer.Ordinal);
        var text = new StringBuilder(EntryBlockText.Of(entry));
        var more = new StringBuilder();
        var isMore = false;
        foreach (var line in starter.Split('\n').Where(l => l.Length > 0))
        {
            if (char.IsAsciiLetter(line[0]))
                isMore = !known.Contains(line.Split(':')[0]);
            else if (line[0] == '#')
                isMore = line.Split(' ') is [_, [.., ':'] key, ..] && !known.Contains(key[..^1]);
            if (isMore)
                more.Append(line[0] == '#' ? "" : "# ").Append(line).Append('\n');
        }
        if (more.Length > 0)
            text.Append("\n# What else is known of it goes here: take off the marks, and put in its own figures.\n").Append(more);
        return text.ToString();
    }
}
