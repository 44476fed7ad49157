using FitCheck.Builds;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Validates catalog, rules and builds: schema, references, units, rule files and their examples, plausibility of the drivers.</summary>
public static class Lint
{
    /// <summary>What is wrong, in file order. Paths name builds, or folders with builds; without any, the builds inside the catalog folders are read.</summary>
    public static LintResult Run(IReadOnlyList<string> paths, Folders folders, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        var workshop = Workshop.Open(folders, Remembered.Nothing, problems, progress);
        var rules = workshop?.Rules ?? RuleSet.Load(folders.Rules, FactRegistry.Declarations, new ProblemList());
        foreach (var rule in rules.Rules)
        {
            problems.AddRange(RuleChecks.Of(rule));
            foreach (var result in RuleExamples.Run(rule).Where(r => !r.IsAsExpected))
                problems.Error(result.Example.At, $"the example `{result.Example.Name}` gives {result.Actual?.Word() ?? "none"}, expected {result.Example.Expect?.Word() ?? "none"}");
        }
        var builds = BuildPaths(paths, folders, problems).ToList();
        if (workshop is null)
            return new LintResult(problems.Sorted(), builds.Count) { Rules = rules.Help };
        var schemas = new Lazy<SchemaCheck>(() => new SchemaCheck());
        foreach (var path in builds)
        {
            progress?.Invoke($"reading {path}");
            BuildFiles.Read(path, workshop, Remembered.Nothing, schemas, problems);
        }
        problems.AddRange(Plausibility.Of(workshop.Catalog, workshop.Rules));
        return new LintResult(problems.Sorted(), builds.Count + workshop.Catalog.Ids.Count() + workshop.Rules.Rules.Count) { Rules = rules.Help };
    }

    private static IEnumerable<string> BuildPaths(IReadOnlyList<string> paths, Folders folders, ProblemList problems)
    {
        IReadOnlyList<string> roots = paths.Count > 0 ? paths : [.. folders.Catalog.Select(c => Path.Combine(c, "builds")).Where(Directory.Exists)];
        foreach (var root in roots)
        {
            if (!Directory.Exists(root))
            {
                yield return root;
                continue;
            }
            var files = Directory.GetFiles(root, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
            if (files.Count == 0)
                problems.Warn(new Location(root.Replace('\\', '/'), 0, 0), "no build files (*.yaml) in this folder", ProblemKind.NotRead);
            foreach (var file in files)
                yield return file;
        }
    }
}
