using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Charts;

/// <summary>Rows that say the same of several positions of a vehicle, such as both front doors, to be told once.</summary>
internal sealed record ChartLine(IReadOnlyList<ChartRow> Rows)
{
    public ChartRow First => Rows[0];

    /// <summary>`Front door, left and right`.</summary>
    public string Where => Names.Joined(Rows.Select(r => r.Position.Name));

    /// <summary>What it is for: `woofer`.</summary>
    public string Role => First.Position.Role;

    /// <summary>`Angled spacer, left and right` where each side has its own.</summary>
    public string Mount => First.Mount is null ? "straight on the panel" : Names.Joined(Rows.Select(r => r.Mount!.Name));

    public string Message => First.InBrief.Message;

    public string Margin => First.Margin is { } margin ? Figures.Show(margin, "mm") : "";

    public string Size => First.Driver.Size?.ToString() ?? "";

    /// <summary>The lines of a vehicle's rows: by place, then status from best to worst, then the larger margin, then driver.</summary>
    public static IReadOnlyList<ChartLine> Of(IEnumerable<ChartRow> rows)
    {
        var all = rows.ToList();
        var order = all.Select(r => r.Position.Id).Distinct(StringComparer.Ordinal).Select((id, i) => (id, i))
            .ToDictionary(p => p.id, p => p.i, StringComparer.Ordinal);
        return [.. all.GroupBy(Words, StringComparer.Ordinal).SelectMany(Alike)
            .OrderBy(l => order[l.First.Position.Id]).ThenBy(l => l.Where, StringComparer.Ordinal)
            .ThenBy(l => l.First.Status).ThenByDescending(l => l.First.Margin ?? double.MinValue)
            .ThenBy(l => l.First.DriverId, StringComparer.Ordinal)];
    }

    /// <summary>Rows of a set that say the same of several outputs.</summary>
    public static IReadOnlyList<IReadOnlyList<SetRow>> Sets(IEnumerable<SetRow> rows) =>
        [.. rows.GroupBy(r => $"{r.Set.Id} {Drivers(r)}", StringComparer.Ordinal).Select(g => g.ToList()).OrderBy(g => g[0].Status)
            .ThenBy(g => g[0].Set.Id, StringComparer.Ordinal)];

    /// <summary>`outputs front-left and front-right`.</summary>
    public static string Outputs(IReadOnlyList<SetRow> same) =>
        $"{(same.Count == 1 ? "output" : "outputs")} {Names.Listed([.. same.Select(s => s.Channel)])}";

    /// <summary>What each driver of a set says.</summary>
    public static string Drivers(SetRow row) => string.Join("; ", row.Places.Select(p => $"{p.Driver.Name} {p.Status.Word()}"));

    // A left and a right spacer are one line when their names differ in one word; other spacers are others.
    private static IEnumerable<ChartLine> Alike(IEnumerable<ChartRow> rows)
    {
        var all = rows.ToList();
        if (all.TrueForAll(r => r.Mount is not null)
            && !Names.Joined(all.Select(r => r.Mount!.Name)).Contains(';', StringComparison.Ordinal))
            return [new ChartLine(all)];
        return all.GroupBy(r => string.Join(' ', (r.Mount?.Name ?? "").Split(' ').Where(w => w is not ("left" or "right"))),
            StringComparer.Ordinal).Select(g => new ChartLine([.. g]));
    }

    private static string Words(ChartRow row) => string.Join('\0',
    [
        row.DriverId, row.Mount is null ? "bare" : "", row.Status.Word(), row.Position.Role, row.InBrief.Alike,
        Figures.Show(row.Margin ?? 0, "mm"),
    ]);
}
