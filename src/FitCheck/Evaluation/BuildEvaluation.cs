using FitCheck.Builds;
using FitCheck.Drawings;
using FitCheck.Facts;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Model;

namespace FitCheck.Evaluation;

/// <summary>A build in, a judged build out: its facts are computed, and every rule says what it finds of them.</summary>
internal static class BuildEvaluation
{
    /// <summary>Everything that is found of one build.</summary>
    public static BuildResult Judged(Build build, RuleSet rules) => Judged(build, rules.Practice, () => rules);

    /// <summary>Everything that is found of one build, by rules that may still be read while its facts are worked out.</summary>
    public static BuildResult Judged(Build build, Practice practice, Func<RuleSet> rulesWhenRead)
    {
        using var told = Lengths.OfBuild(build.Units);
        var list = Shopping.List(build);
        var (tables, positions, channels, devices) = FactRegistry.Of(build, list, practice);
        var rules = rulesWhenRead();
        var (findings, silent) = (new List<Finding>(), new SilentRules(tables, rules));
        var cautions = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var rule in rules.Rules)
        {
            foreach (var table in tables.Where(t => t.Subject == rule.Subject))
            {
                if (Judge.Evaluate(rule, table, build.Name) is not { } finding)
                {
                    silent.Add(rule, table);
                    continue;
                }
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
            DrawWiring.Supply(devices, tables, waived)), silent)
        {
            File = build.File,
            Name = build.Name,
            Notes = build.Notes,
            VehicleName = build.Vehicle.Name,
            StandIn = build.Vehicle.StandIn,
            Findings = waived,
            Facts = tables,
            List = list,
            Totals = Shopping.Totals(list),
            Budget = build.Budget?.Value,
            Lengths = Lengths.Told,
            Settings = StartingPoints.Of(build, tables),
            Cautions = [.. cautions, .. Loudness(tables)],
            Remarks = remarks,
            RuleChanges = rules.Changes,
            Expected = build.Expected,
        };
    }

    private static IEnumerable<string> Loudness(IReadOnlyList<FactTable> tables)
    {
        foreach (var table in tables)
        {
            if (table.Subject == Subject.Build && LoudnessFacts.Caution(table) is { } caution)
                yield return caution;
        }
    }
}
