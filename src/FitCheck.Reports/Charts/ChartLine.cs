using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Telling;

namespace FitCheck.Reports.Charts;

/// <summary>Rows that say the same of several positions of a vehicle, such as both front doors, to be told once.</summary>
internal sealed record ChartLine(IReadOnlyList<ChartRow> Rows)
{
    public ChartRow First => Rows[0];

    /// <summary>`Front door, left and right`.</summary>
    public string Where => Names.Joined(Rows.Select(r => r.Position.Name));

    /// <summary>What it is for: `woofer`.</summary>
    public string Role => First.Position.Role;

    public string Mount => First.Mount?.Name ?? "straight on the panel";

    /// <summary>What decides, in a few words; nothing for a pass.</summary>
    public string Reason => First.Status == Status.Pass ? "" : First.Deciding?.Title ?? "";

    public string Message => First.Deciding?.Message ?? "";

    public string Margin => First.Margin is { } margin ? Figures.Show(margin, "mm") : "";

    public string Size => First.Driver.Size?.ToString() ?? "";

    /// <summary>The lines of a vehicle's rows: by place, then status from best to worst, then the larger margin, then driver.</summary>
    public static IReadOnlyList<ChartLine> Of(IEnumerable<ChartRow> rows)
    {
        var all = rows.ToList();
        var order = all.Select(r => r.Position.Id).Distinct(StringComparer.Ordinal).Select((id, i) => (id, i)).ToDictionary(p => p.id, p => p.i, StringComparer.Ordinal);
        return [.. all.GroupBy(Words, StringComparer.Ordinal).Select(g => new ChartLine([.. g]))
            .OrderBy(l => order[l.First.Position.Id]).ThenBy(l => l.Where, StringComparer.Ordinal)
            .ThenBy(l => l.First.Status).ThenByDescending(l => l.First.Margin ?? double.MinValue).ThenBy(l => l.First.Driver.Id, StringComparer.Ordinal)];
    }

    private static string Words(ChartRow row) => string.Join('\0',
    [
        row.Driver.Id, row.Mount?.Id ?? "", row.Status.Word(), row.Position.Role,
        .. row.Findings.Where(f => f.Status != Status.Pass).Select(f => $"{f.Rule} {f.Message}"), Figures.Show(row.Margin ?? 0, "mm"),
    ]);
}
