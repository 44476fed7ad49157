using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>One part for all positions, or a spacer for the left and its counterpart for the right.</summary>
internal sealed record MirroredParts(IReadOnlyList<(string Position, Part Part)> Choices)
{
    public IReadOnlyList<Part> Parts => [.. Choices.Select(c => c.Part).Distinct()];

    public string Name => string.Join(" and ", Parts.Select(p => p.Id));

    public string this[string position] => Choices.First(c => c.Position == position).Part.Id;

    /// <summary>
    /// The part for these positions; null when it is handed and has no counterpart, or is the counterpart of one that is told already.
    /// </summary>
    public static MirroredParts? Of(Part part, IReadOnlyList<Position> positions, Stock stock)
    {
        if (part is not Adapter { Handed: not "no" } adapter)
            return new MirroredParts([.. positions.Select(p => (p.Id, part))]);
        if (positions.All(p => p.Side == adapter.Handed))
            return new MirroredParts([.. positions.Select(p => (p.Id, part))]);
        var mate = adapter.Handed == "left" ? Counterpart(adapter, stock) : null;
        return mate is null ? null : new MirroredParts([.. positions.Select(p => (p.Id, p.Side == adapter.Handed ? part : mate))]);
    }

    /// <summary>The positions that get the same part, by part.</summary>
    public IEnumerable<(string Value, IReadOnlyList<string> Positions)> ByValue(IEnumerable<string> positions) =>
        positions.GroupBy(p => this[p], StringComparer.Ordinal).Select(x => (x.Key, (IReadOnlyList<string>)[.. x]));

    /// <summary>Puts the parts where others stand; an entry whose positions get different parts is taken apart.</summary>
    public static IReadOnlyList<TextEdit> Edits(SlotContext g, IReadOnlyList<FitLine> sites, string key, MirroredParts sided)
    {
        var edits = new List<TextEdit>();
        foreach (var site in sites)
        {
            var groups = sided.ByValue(site.Positions).ToList();
            if (groups.Count == 1)
            {
                edits.Add(g.Editor.Replace((YamlScalar)site.Map[key]!, groups[0].Value));
                continue;
            }
            edits.Add(g.Editor.RemoveKey(site.Map, key));
            edits.AddRange(
                groups.Select(
                    x => g.Editor.AddItem((YamlList)g.Root["fit"]!, $"at: [{string.Join(", ", x.Positions)}]\n{key}: {x.Value}")));
        }
        return edits;
    }

    private static Adapter? Counterpart(Adapter adapter, Stock stock) =>
        stock.Find<Adapter>(adapter.Id.Replace("left", "right", StringComparison.Ordinal)) is { Handed: "right" } mate ? mate : null;
}
