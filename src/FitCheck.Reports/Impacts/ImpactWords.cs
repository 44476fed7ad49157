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
        var (refused, lost) = (result.Refused.Count(), result.Refused.Count(b => b.Fate == BuildFate.Gone));
        var accepted = result.Builds.Count(b => b.IsWorse && b.Accepted);
        var better = result.Builds.Count(b => b.Fate == BuildFate.Better);
        if (result.Entries.Count == 0 && result.Rules.Count == 0 && !result.Builds.Any(IsTold))
            return "Nothing that FitCheck reads is different.";
        var worse = refused switch
        {
            0 when accepted == 0 => "No build gets worse",
            0 => $"No build gets worse but {Sentences.Count(accepted, "accepted one", "accepted ones")}",
            _ => Refused(refused - lost, lost),
        };
        if (refused > 0 && accepted > 0)
            worse += $", beside {Sentences.Count(accepted, "accepted one", "accepted ones")}";
        return better == 0 ? worse + "." : $"{worse}; {Sentences.Count(better, "gets", "get")} better.";
    }

    // A build that is lost may have failed before: it is not worse, but nobody will see when it would be.
    private static string Refused(int worse, int lost)
    {
        var (gets, isLost) = ($"{Sentences.Count(worse, "build gets", "builds get")} worse",
            $"{Figures.Whole(lost)} {(lost == 1 ? "is" : "are")} lost");
        return lost == 0 ? gets : worse == 0 ? $"{Sentences.Count(lost, "build is", "builds are")} lost" : $"{gets} and {isLost}";
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
        (build.RenamedFrom is { } old ? $"(was {old}) " : "") + What(build)
            + (build.Waivers == 0 ? "" : $", on the strength of {Sentences.Count(build.Waivers, "waiver", "waivers")}");

    private static string What(BuildChange build) => build.Fate switch
    {
        BuildFate.Unreadable => "can no longer be read",
        BuildFate.Gone when build.Before is { } before => $"is lost: nothing judges it any more ({before.Word()} before)",
        BuildFate.Gone => "is gone; it could not be read before",
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

    /// <summary>A build that is told: it changes, has another name, or is new.</summary>
    public static bool IsTold(BuildChange build) => build.Fate != BuildFate.Same || build.RenamedFrom is not null;

    /// <summary>What becomes of a build, in one word.</summary>
    public static string FateWord(BuildChange build) => build switch
    {
        { IsWorse: true, Accepted: true } => "accepted",
        { Fate: BuildFate.Gone, IsWorse: true } => "lost",
        { IsWorse: true } => "worse",
        { Fate: BuildFate.Same } => "moved",
        _ => build.Fate.ToString().ToLowerInvariant(),
    };

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
