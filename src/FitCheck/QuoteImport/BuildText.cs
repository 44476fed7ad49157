using System.Globalization;
using System.Text;
using FitCheck.Yaml;

namespace FitCheck.QuoteImport;

/// <summary>Writes the build that a list became.</summary>
internal static class BuildText
{
    private const string Ending = " as a build";

    /// <summary>What a build is called that a list was read into and nobody has saved.</summary>
    public static string NameOf(string list) => list + Ending;

    /// <summary>The list of a build that is called so; null for any other build.</summary>
    public static string? ListOf(string name) => name.EndsWith(Ending, StringComparison.Ordinal) ? name[..^Ending.Length] : null;

    /// <summary>The file, its lines ended by `\n`.</summary>
    public static string Of(Layout layout, string name)
    {
        var text = new StringBuilder();
        text.Append("# yaml-language-server: $schema=../schema/build.schema.json\n");
        text.Append(
            "# Made from a seller's list. What goes where was inferred from roles, sizes and plugs: read it, and correct what was meant "
                + "otherwise.\n");
        text.Append("kind: build\n");
        text.Append("name: ").Append(Quoted(name)).Append('\n');
        if (layout.LeftOut.Count > 0)
            text.Append("notes: ").Append(Quoted($"Not in this build is what the list has in {string.Join("; ", layout.LeftOut)}."))
                .Append('\n');
        text.Append("vehicle: ").Append(layout.Vehicle.Id).Append('\n');
        Fit(text, layout);
        if (layout.Devices.Count > 0)
            text.Append("\ndevices:\n");
        foreach (var (id, part, from) in layout.Devices)
            text.Append($"  - {{id: {id}, part: {part?.Id ?? "factory"}{(from is null ? "" : $", from: {from}")}}}\n");
        if (layout.Channels.Count > 0)
            text.Append(
                "\n# Without `high_pass` and `low_pass` an output is full range; `fitcheck check` says where that is wrong.\nchannels:\n");
        foreach (var (id, output, feeds) in layout.Channels)
            text.Append($"  - {{id: {id}, output: {output}, feeds: [{string.Join(", ", feeds)}]}}\n");
        Lines(text, "extras", layout.Extras);
        Lines(text, "quote", layout.Items);
        return text.ToString();
    }

    // Sets first, with all their places; then what else is at each place, places that are alike together.
    private static void Fit(StringBuilder text, Layout layout)
    {
        var entries = layout.Places.Where(p => p.Set is not null).GroupBy(p => $"    set: {p.Set!.Id}\n", StringComparer.Ordinal)
            .Concat(layout.Places.Select(p => (Place: p, Text: Choices(p))).Where(p => p.Text.Length > 0)
            .GroupBy(p => p.Text, p => p.Place, StringComparer.Ordinal)).ToList();
        text.Append("\nfit:\n");
        if (entries.Count == 0)
            text.Append("  # Nothing of the list could be placed.\n  - at: [").AppendJoin(", ", layout.Places.Select(p => p.Position.Id))
                .Append("]\n    keeps_factory_driver: true\n");
        foreach (var entry in entries)
            text.Append("  - at: [").AppendJoin(", ", entry.Select(p => p.Position.Id)).Append("]\n").Append(entry.Key);
    }

    private static string Choices(PositionToFill place)
    {
        var text = new StringBuilder();
        Add("driver", place.Set is null ? place.Driver?.Id : null);
        Add("adapter", place.Adapter?.Id);
        Add("cup", place.Cup?.Id);
        Add("harness", place.Harness?.Id);
        Add("with", place.With.Count == 0 ? null : $"[{string.Join(", ", place.With.Select(w => w.Id))}]");
        return text.ToString();

        void Add(string key, string? value) =>
            _ = value is null ? text : text.Append("    ").Append(key).Append(": ").Append(value).Append('\n');
    }

    private static void Lines(StringBuilder text, string key, IReadOnlyList<QuoteItem> items)
    {
        if (items.Count > 0)
            text.Append('\n').Append(key).Append(":\n");
        foreach (var item in items)
            text.Append("  - {part: ").Append(item.Part.Id).Append(", packs: ").Append(item.Packs.ToString(CultureInfo.InvariantCulture))
                .Append(key == "quote" && item.Price is { } price ? $", price: {price}" : "").Append("}\n");
    }

    // In double quotes every character can stand; those that can't be seen are left out.
    private static string Quoted(string name) =>
        YamlText.Quoted(string.Concat(name.Where(c => !char.IsControl(c) && !char.IsSurrogate(c) && c < '\uFFFE')));
}
