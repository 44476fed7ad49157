using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Page.State;
using FitCheck.Reports.Wording;
using FitCheck.Yaml;

namespace FitCheck.Page.Views;

/// <summary>The text of the build, with the lines marked that are about the place at hand and those that the last action changed.</summary>
internal static class TextViews
{
    public static TextView Of(PageState state, string place)
    {
        var (changed, lit) = (Changed(state), Lit(state));
        var lines = state.Text.Split('\n');
        if (lines is [.., ""])
            lines = lines[..^1];
        return new TextView($"typed-{Mark.Of(state.Text)}", state.Text, [.. lines.Select((l, i) =>
        {
            var (isNew, isLit) = (changed.Contains(i + 1), lit.Contains(i + 1));
            return new TextLineView(Figures.Whole(i + 1), l, $"{(isNew ? "new" : "")}{(isLit ? " lit" : "")}".Trim(),
                isNew ? "changed" : null);
        })], place);
    }

    // Lines, from 1.
    private static HashSet<int> Changed(PageState state)
    {
        if (state.Before is not { Length: > 0 } before)
            return [];
        var step = Step.Between(before, state.Text);
        if (step.Text.Length == 0)
            return [];
        var first = 1 + state.Text.AsSpan(0, step.Start).Count('\n');
        return [.. Enumerable.Range(first, 1 + step.Text.TrimEnd('\n').Count(c => c == '\n'))];
    }

    // The items of the build's lists that name the place.
    private static HashSet<int> Lit(PageState state)
    {
        if (state.Place.Length == 0 || YamlReader.Read(new SourceText(state.Name, state.Text), new ProblemList()) is not YamlMap root)
            return [];
        var lit = new HashSet<int>();
        var ends = root.Entries.Select(e => e.KeyAt.Line).Append(state.Text.Count(c => c == '\n') + 2).Order().ToList();
        foreach (var list in root.Entries.Select(e => e.Value).OfType<YamlList>())
        {
            for (var i = 0; i < list.Items.Count; i++)
            {
                var from = list.Items[i].At.Line;
                var to = i + 1 < list.Items.Count ? list.Items[i + 1].At.Line : ends.Find(l => l > from);
                if (Names(list.Items[i], state.Place))
                    lit.UnionWith(Enumerable.Range(from, Math.Max(1, to - from)));
            }
        }
        return lit;
    }

    private static bool Names(YamlNode node, string place) => node switch
    {
        YamlScalar scalar => scalar.Text == place,
        YamlList list => list.Items.Any(i => Names(i, place)),
        YamlMap map => map.Entries.Any(e => Names(e.Value, place)),
        _ => false,
    };
}
