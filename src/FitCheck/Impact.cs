using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Impacts;

namespace FitCheck;

/// <summary>What `impact` found: a result, or the reasons why there is none.</summary>
internal sealed record ImpactOutcome(ImpactResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>
/// What a change of catalog or rules does to every build and to the chart: both sides are read and checked in full, then compared.
/// </summary>
internal static class Impact
{
    /// <summary>Compares two sides. Bad input comes back as problems, never as an exception.</summary>
    /// <param name="from">The earlier side.</param>
    /// <param name="to">The later side.</param>
    /// <param name="accepted">The ids of builds that may get worse; `all` for every one.</param>
    /// <param name="cache">Inputs that are known to be valid.</param>
    /// <param name="progress">Told what is being done.</param>
    public static ImpactOutcome Run(SideFolder from, SideFolder to, IReadOnlyCollection<string> accepted, ValidationCache cache,
        Action<string>? progress = null)
    {
        var problems = new List<Problem>();
        var before = InputState.Read(from, cache, problems, progress);
        var after = InputState.Read(to, cache, problems, progress);
        if (before is null || after is null)
            return new ImpactOutcome(null, problems);
        var known = before.Builds.Keys.Union(after.Builds.Keys, StringComparer.Ordinal).ToList();
        foreach (var id in accepted.Where(a => a != "all" && !known.Contains(a)))
            problems.Add(
                new Problem(new Location("--accept", 0, 0), Severity.Error, $"no build `{id}` on either side{Nearest.Hint(id, known)}"));
        if (problems.Count > 0)
            return new ImpactOutcome(null, problems);
        progress?.Invoke("comparing the charts");
        var (entries, rules) = (EntryDifferences.Entries(before, after), EntryDifferences.Rules(before, after));
        var (pairs, compared) = PairDifferences.Of(before, after);
        return new ImpactOutcome(new ImpactResult
        {
            Program = ProgramName.WithVersion,
            From = from.Name,
            To = to.Name,
            Entries = entries,
            Rules = rules,
            Builds = new BuildDifferences(before, after, entries, rules).All(accepted),
            Pairs = pairs,
            PairsCompared = compared,
        }, []);
    }
}
