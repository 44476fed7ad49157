using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Charts;

/// <summary>The sentences that more than one format of a chart says.</summary>
internal static class ChartWords
{
    private const string NoPrice = "no price";

    private static readonly (string Word, string Said)[] Work =
        [("drill", "drilling holes"), ("enlarge-holes", "enlarging holes"), ("trim-parts", "trimming parts")];

    /// <summary>How the bars of the picture are read.</summary>
    public static string Bars { get; } =
        $"A bar is the least margin: right of its line what is to spare, up to {Figures.Show(ChartPicture.MostSpare, "mm")}, left of it "
            + $"what is missing, up to {Figures.Show(ChartPicture.MostShort, "mm")}. A mark leads to its reasons.";

    /// <summary>What the driver costs, or with which set it comes.</summary>
    public static string Price(ChartRow row) => row.Driver.HasPrice ? row.Driver.Price.Value.ToString()
        : row.Sets.Count > 0 ? $"in {string.Join(", ", row.Sets)}" : NoPrice;

    public static string Price(Part part) => part.HasPrice ? part.Price.Value.ToString() : NoPrice;

    /// <summary>How many pairs have which status.</summary>
    public static string Counts(ChartResult result)
    {
        var counts = StatusWords.All.Select((word, i) => (word, count: result.Counts[i])).Where(c => c.count > 0)
            .Select(c => $"{Figures.Whole(c.count)} {c.word}").ToList();
        var all = $"{Sentences.Count(result.Counts.Sum(), "pair", "pairs")} of a driver and a position{(counts.Count > 0 ? ": " : "")}"
            + $"{string.Join(", ", counts)}.";
        return result.OfAnotherType == 0 ? all
            : $"{all} {Sentences.Count(result.OfAnotherType, "pair is", "pairs are")} left out, because a driver of that type does not "
                + $"belong there.";
    }

    public static string Accepts(ChartResult result) => result.Accepts.Count == 0
        ? "No work on panel or parts is taken as accepted."
        : $"Work that is taken as accepted: {Names.Listed([.. Work.Where(w => result.Accepts.Contains(w.Word)).Select(w => w.Said)])}.";

    public static string NotJudged(ChartResult result)
    {
        var families = result.LeftOut.Select(l => l.Rule.Split('/')[0]).Distinct(StringComparer.Ordinal).ToList();
        return families.Count == 0
            ? $"Judged by {Sentences.Count(result.Rules.Count, "rule", "rules")}."
            : $"Judged by {Sentences.Count(result.Rules.Count, "rule", "rules")} that driver, mounting and place decide. Not judged, "
                + $"because it takes a build: {Sentences.Count(result.LeftOut.Count, "rule", "rules")} "
                + $"of {Names.Listed(families)} about what feeds the driver, what lies beside it, and the list; `fitcheck check` judges "
                + $"them.";
    }
}
