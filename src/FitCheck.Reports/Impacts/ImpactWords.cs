using FitCheck.Findings;
using FitCheck.Impacts;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Impacts;

/// <summary>The sentences that more than one format of an impact says.</summary>
internal static class ImpactWords
{
    /// <summary>The answer in one sentence.</summary>
    public static string Verdict(ImpactResult result)
    {
        var refused = result.Refused.Count();
        var accepted = result.Builds.Count(b => b.IsWorse && b.Accepted);
        var better = result.Builds.Count(b => b.Fate == BuildFate.Better);
        if (result.Entries.Count == 0 && result.Rules.Count == 0 && result.Builds.All(b => b.Fate == BuildFate.Same))
            return "Nothing that FitCheck reads is different.";
        var worse = refused switch
        {
            0 when accepted == 0 => "No build gets worse",
            0 => $"No build gets worse but {Sentences.Count(accepted, "accepted one", "accepted ones")}",
            1 => "1 build gets worse",
            _ => $"{Figures.Whole(refused)} builds get worse",
        };
        if (refused > 0 && accepted > 0)
            worse += $", beside {Sentences.Count(accepted, "accepted one", "accepted ones")}";
        return better == 0 ? worse + "." : $"{worse}; {Sentences.Count(better, "gets", "get")} better.";
    }

    /// <summary>`3 entries altered, 1 added; 1 rule altered; 4 of 3,000 pairs of the chart flip`.</summary>
    public static string Extent(ImpactResult result)
    {
        var parts = new List<string>();
        Add(result.Entries.Select(e => e.Change), "entry", "entries");
        Add(result.Rules.Select(r => r.Change), "rule", "rules");
        parts.Add($"{Figures.Whole(result.Pairs.Count)} of {Sentences.Count(result.PairsCompared, "pair", "pairs")} of the chart "
            + $"{(result.Pairs.Count == 1 ? "flips" : "flip")}");
        return string.Join("; ", parts) + ".";

        void Add(IEnumerable<Change> changes, string one, string many)
        {
            foreach (var kind in changes.GroupBy(c => c).OrderBy(g => g.Key))
                parts.Add($"{Sentences.Count(kind.Count(), one, many)} {Word(kind.Key)}");
        }
    }

    public static string Word(Change change) => change switch { Change.Added => "added", Change.Removed => "removed", _ => "altered" };

    /// <summary>What becomes of a build: `goes from pass to fail`.</summary>
    public static string Fate(BuildChange build) =>
        build.Waivers == 0 ? What(build) : $"{What(build)}, on the strength of {Sentences.Count(build.Waivers, "waiver", "waivers")}";

    private static string What(BuildChange build) => build.Fate switch
    {
        BuildFate.Unreadable => "can no longer be read",
        BuildFate.Gone => "is gone",
        BuildFate.New when build.After is null => "is new and can't be read",
        BuildFate.New => $"is new: {build.After!.Value.Word()}",
        _ when build.Before is null => $"can be read now: {build.After!.Value.Word()}",
        _ when build.Before != build.After => $"goes from {build.Before!.Value.Word()} to {build.After!.Value.Word()}",
        _ => $"stays {build.After!.Value.Word()}",
    };

    /// <summary>`pass → fail`; `nothing` where nobody spoke.</summary>
    public static string Step(FindingChange change) => $"{change.Before?.Word() ?? "nothing"} → {change.After?.Word() ?? "nothing"}";

    /// <summary>Findings that change in the same way at several positions for the same reasons, told once.</summary>
    public static IEnumerable<(FindingChange First, string Where)> Findings(BuildChange build) => build.Findings
        .GroupBy(f => string.Join('\0', [f.Finding.Rule, Step(f), f.Finding.Message, .. f.Causes.Select(Because)]), StringComparer.Ordinal)
        .Select(g => (g.First(), Names.Joined(g.Select(f => f.Finding.PositionName))));

    public static string Because(Cause cause) => $"{cause.What} ({Figures.Place(cause.At)})";

    /// <summary>A build that is told: it changes, or it is new and does not pass.</summary>
    public static bool IsTold(BuildChange build) => build.Fate != BuildFate.Same;

    /// <summary>Pairs that flip in the same way for the same reason, told once.</summary>
    public static IReadOnlyList<PairGroup> Pairs(ImpactResult result) => [.. result.Pairs
        .GroupBy(p => (p.Vehicle, p.Driver, p.Before, p.After, p.MountAfter, p.Reason))
        .Select(g => new PairGroup(g.First(), Names.Joined(g.Select(p => p.PositionName))))];

    public static string Pair(PairGroup group)
    {
        var pair = group.First;
        return $"{pair.DriverName} in {pair.VehicleName}, {group.Where}{(pair.MountAfter is null ? "" : $", on {pair.MountAfter}")}: "
            + $"{pair.Before.Word()} → {pair.After.Word()}. {pair.Reason}";
    }
}

/// <summary>Pairs of one driver and vehicle that flip alike, and where.</summary>
internal sealed record PairGroup(PairChange First, string Where);
