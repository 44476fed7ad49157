using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>
/// Two to four builds side by side, for somebody who hesitates between quotes. Every figure is one that the single reports rest on.
/// </summary>
internal sealed record BuildComparison
{
    /// <summary>More columns than these are not read side by side.</summary>
    public const int Most = 4;

    public const string Title = "Side by side";

    /// <summary>`A`, `B`, … with the builds' names.</summary>
    public required IReadOnlyList<(string Letter, BuildResult Build)> Builds { get; init; }
    /// <summary>What is compared, and a cell for each build.</summary>
    public required IReadOnlyList<ComparedRow> Rows { get; init; }
    /// <summary>How each build differs from the first.</summary>
    public required IReadOnlyList<string> Sentences { get; init; }

    /// <summary>The comparison; null for a single build or for more than are read side by side.</summary>
    public static BuildComparison? Of(CheckResult result)
    {
        if (result.Builds.Count is < 2 or > Most)
            return null;
        var work = result.Rules.Where(r => r.TellsOfWork).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var sides = result.Builds.Select((b, i) => new Compared(((char)('A' + i)).ToString(), b, work)).ToList();
        var rows = new List<ComparedRow>();
        if (sides.Select(s => s.Build.VehicleName).Distinct(StringComparer.Ordinal).Count() > 1)
            Add("Vehicle", s => s.Build.VehicleName, _ => null);
        Add("Verdict", s => s.Verdict, s => s.Build.Verdict);
        Add("Price", s => s.Price, s => s.PriceStatus);
        Add("Smallest margin", s => s.SmallestMargin, s => s.MarginStatus);
        Add("Work on the vehicle", s => s.WorkText, s => s.WorkStatus);
        Add("Loudest at the seat", s => s.LoudestText, s => s.LoudestStatus);
        Add("Bass is safe from", s => s.SafeFrom, s => s.SafeStatus);
        return new BuildComparison
        {
            Builds = [.. sides.Select(s => (s.Letter, s.Build))],
            Rows = rows,
            Sentences = [.. sides.Skip(1).Select(s => s.Against(sides[0]))],
        };

        void Add(string label, Func<Compared, string> cell, Func<Compared, Status?> status) =>
            rows.Add(new ComparedRow(label, [.. sides.Select(cell)], [.. sides.Select(status)]));
    }
}

/// <summary>What is compared, a cell for each build, and what the rules say of it; null where none is about it.</summary>
internal sealed record ComparedRow(string Label, IReadOnlyList<string> Cells, IReadOnlyList<Status?> Statuses);
