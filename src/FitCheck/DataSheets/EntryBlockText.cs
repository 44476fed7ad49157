using System.Text;
using FitCheck.Yaml;

namespace FitCheck.DataSheets;

/// <summary>Writes an entry as a file of the catalog has it: a key a line, small things in brackets.</summary>
internal static class EntryBlockText
{
    // A mapping of more keys gets a line for each.
    private const int Few = 4;

    /// <summary>The entry, its lines ended by `\n`.</summary>
    public static string Of(YamlMap entry)
    {
        var text = new StringBuilder();
        foreach (var (key, _, value) in entry.Entries)
            Write(text, key, value);
        return text.ToString();
    }

    /// <summary>The entries as one list.</summary>
    public static string Of(IEnumerable<YamlMap> entries)
    {
        var text = new StringBuilder();
        foreach (var entry in entries)
        {
            var lines = Of(entry).TrimEnd('\n').Split('\n');
            for (var i = 0; i < lines.Length; i++)
                text.Append(i == 0 ? "- " : "  ").Append(lines[i]).Append('\n');
        }
        return text.ToString();
    }

    private static void Write(StringBuilder text, string key, YamlNode value)
    {
        text.Append(key).Append(':');
        switch (value)
        {
            case YamlMap { Entries.Count: > Few } map:
                text.Append('\n');
                foreach (var entry in map.Entries)
                    text.Append("  ").Append(entry.Key).Append(": ").Append(FlowText.Of(entry.Value)).Append('\n');
                break;
            case YamlList { Items: [YamlMap, ..] } list:
                text.Append('\n');
                foreach (var item in list.Items)
                    text.Append("  - ").Append(FlowText.Of(item)).Append('\n');
                break;
            default:
                text.Append(' ').Append(FlowText.Alone(value)).Append('\n');
                break;
        }
    }
}
