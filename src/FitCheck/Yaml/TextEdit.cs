using System.Text;

namespace FitCheck.Yaml;

/// <summary>A piece of a text and what takes its place.</summary>
public sealed record TextEdit(int Start, int Length, string Text)
{
    /// <summary>Where the piece ends.</summary>
    public int End => Start + Length;

    /// <summary>
    /// How deep the collection lies to which it adds: where several end at one place, what belongs to the innermost comes first.
    /// </summary>
    public int Depth { get; init; }

    /// <summary>What stands once before all edits of the same place that share it; they then follow each other.</summary>
    public string? Heading { get; init; }

    /// <summary>What stands between those that share a heading, and once behind the last of them.</summary>
    public (string Between, string Behind) Joint { get; init; } = ("", "");

    /// <summary>
    /// The text with all edits made; null when one writes into what another takes out. Insertions at one place keep their order as far as
    /// they belong to the same collection; deletions may overlap.
    /// </summary>
    public static string? Apply(string text, IEnumerable<TextEdit> edits)
    {
        if (InTurn(edits) is not { } turns)
            return null;
        var result = new StringBuilder(text.Length + 200);
        var at = 0;
        foreach (var shared in turns)
        {
            var edit = shared[0];
            if (edit.Start > at)
                result.Append(text, at, edit.Start - at);
            if (edit.Heading is null)
                shared.ForEach(e => result.Append(e.Text));
            else
                result.Append(edit.Heading).AppendJoin(edit.Joint.Between, shared.Select(e => e.Text)).Append(edit.Joint.Behind);
            at = Math.Max(at, edit.End);
        }
        return result.Append(text, at, text.Length - at).ToString();
    }

    /// <summary>Whether <see cref="Apply"/> would make a text of them; none is made.</summary>
    internal static bool GoTogether(IEnumerable<TextEdit> edits) => InTurn(edits) is not null;

    // Those that share a heading are one; null when one writes into what another takes out.
    private static List<List<TextEdit>>? InTurn(IEnumerable<TextEdit> edits)
    {
        List<List<TextEdit>> turns =
            [.. edits.GroupBy(e => (e.Start, e.Length, e.Depth, e.Heading, e.Heading is null ? e.Text : "")).Select(g => g.ToList())
                .OrderBy(g => g[0].Start).ThenBy(g => g[0].Length).ThenByDescending(g => g[0].Depth)];
        var at = 0;
        foreach (var edit in turns.Select(t => t[0]))
        {
            if (edit.Start < at && (edit.Text.Length > 0 || edit.Heading is not null))
                return null;
            at = Math.Max(at, edit.End);
        }
        return turns;
    }
}
