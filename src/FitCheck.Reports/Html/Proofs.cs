using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Html;

/// <summary>What passes, for the small print: by place, and what differs in one word for its sides alone is one line.</summary>
internal static class Proofs
{
    public static List<ProofView> Of(IEnumerable<Told> passes) =>
        [.. passes.GroupBy(t => Alike.SideLess(Words(t)), StringComparer.Ordinal).SelectMany(Lines)
            .GroupBy(l => l.Where, l => l.Line, StringComparer.Ordinal).Select(g => new ProofView(g.Key, [.. g]))];

    // `Angled spacer 8 deg, left` at one door and `right` at the other: `Angled spacer 8 deg, left and right` at both.
    private static IEnumerable<(string Where, ProofLineView Line)> Lines(IEnumerable<Told> alike)
    {
        var told = alike.ToList();
        var line = FindingViews.Proof(told[0].First);
        var joined = Names.Joined(told.Select(t => FindingViews.Proof(t.First).Text));
        var single = told.Count > 1 && Names.Difference(line.Text.Split(' '), FindingViews.Proof(told[1].First).Text.Split(' ')) >= 0;
        return told.Count == 2 && single
            ? [(Names.Joined(told.SelectMany(t => t.Findings).Select(f => f.PositionName)), line with { Text = joined })]
            : told.Select(t => (t.Where, FindingViews.Proof(t.First)));
    }

    private static string Words(Told told) => $"{told.First.Rule}\t{told.First.Message}\t{Figures.Row(told.First)}";
}
