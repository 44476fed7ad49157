using FitCheck.Builds;
using FitCheck.Drawings;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>What `check` found: a result, or the reasons why there is none.</summary>
public sealed record CheckOutcome(CheckResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>The main job: builds are resolved against the catalog, facts are computed, rules judge them.</summary>
public static class Check
{
    /// <summary>Checks build files. Bad input comes back as problems, never as an exception.</summary>
    public static CheckOutcome Run(IReadOnlyList<string> files, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (BuildFiles.Open(files, folders, remembered, problems, progress) is not var (workshop, builds))
            return new CheckOutcome(null, problems.Sorted());
        var results = new List<BuildResult>();
        foreach (var build in builds.Select(b => b.Build))
        {
            progress?.Invoke($"checking {build.File}");
            results.Add(Judged(build, () => workshop.Rules));
        }
        return new CheckOutcome(new CheckResult(ProgramName.WithVersion, workshop.Catalog.Digest, results) { Rules = workshop.Rules.Help }, problems.Sorted());
    }

    private static IEnumerable<string> Loudness(IReadOnlyList<FactTable> tables)
    {
        foreach (var table in tables)
        {
            if (table.Subject == Subject.Build && LoudnessFacts.Caution(table) is { } caution)
                yield return caution;
        }
    }

    /// <summary>Everything that is found of one build.</summary>
    internal static BuildResult Judged(Build build, RuleSet rules) => Judged(build, () => rules);

    private static BuildResult Judged(Build build, Func<RuleSet> rulesWhenRead)
    {
        var list = Shopping.List(build);
        var (tables, positions, channels, devices) = FactRegistry.Of(build, list);
        var rules = rulesWhenRead();
        var findings = new List<Finding>();
        var cautions = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var rule in rules.Rules)
        {
            foreach (var table in tables.Where(t => t.Subject == rule.Subject))
            {
                if (Judge.Evaluate(rule, table, build.Name) is not { } finding)
                    continue;
                findings.Add(finding);
                if (rule.Caution is { } caution)
                    cautions.Add(caution);
            }
        }
        var (waived, remarks) = Waivers.Apply(build, findings, rules);
        waived.Sort(Finding.Compare);
        return new BuildResult(() => new Pictures(
            [.. positions.Select(p => Draw.Position(p, waived))],
            [.. channels.Where(c => c.Sweep is not null).Select(c => Draw.Load(c, waived))],
            [.. channels.Select(DrawWiring.Channel)],
            DrawWiring.Supply(devices, tables, waived)))
        {
            File = build.File,
            Name = build.Name,
            Notes = build.Notes,
            VehicleName = build.Vehicle.Name,
            Findings = waived,
            Facts = tables,
            List = list,
            Totals = Shopping.Totals(list),
            Budget = build.Budget?.Value,
            Settings = StartingPoints.Of(build, tables),
            Cautions = [.. cautions, .. Loudness(tables)],
            Remarks = remarks,
            RuleChanges = rules.Changes,
        };
    }
}
