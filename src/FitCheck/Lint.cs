using FitCheck.Builds;
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
        var workshop = Workshop.OpenWhole(folders, problems, progress);
        var usable = !problems.HasErrors;
        foreach (var rule in workshop.Rules.Rules)
        {
            problems.AddRange(RuleChecks.Of(rule));
            foreach (var result in RuleExamples.Run(rule).Where(r => !r.IsAsExpected))
                problems.Error(result.Example.At, $"the example `{result.Example.Name}` gives {result.Actual?.Word() ?? "none"}, expected {result.Example.Expect?.Word() ?? "none"}");
        }
        var builds = BuildPaths(paths, folders, problems).ToList();
        var schemas = new Lazy<SchemaCheck>(() => new SchemaCheck());
        foreach (var path in usable ? builds : [])
        {
            progress?.Invoke($"reading {path}");
            BuildFiles.Read(path, workshop, Remembered.Nothing, schemas, problems);
        }
        return new LintResult(WithPlausibility(problems.Sorted(), workshop), builds.Count + workshop.Catalog.Ids.Count() + workshop.Rules.Rules.Count) { Rules = workshop.Rules.Help };
    }

    // Physics is for figures that can be read: a file with a slip of form is judged when that is mended. Where a rule says the same as the reader, in
    // the shop's own words, its word stands.
    private static IReadOnlyList<Problem> WithPlausibility(IReadOnlyList<Problem> read, Workshop workshop)
    {
        var malformed = read.Where(IsOfForm).Select(p => p.At.File).ToHashSet(StringComparer.Ordinal);
        var judged = Plausibility.Of(workshop.Catalog, workshop.Rules).Where(p => !malformed.Contains(p.At.File)).ToList();
        var places = judged.Select(p => p.At).ToHashSet();
        var all = new ProblemList();
        all.AddRange(judged);
        all.AddRange(read.Where(p => p.Severity != Severity.Error || IsOfForm(p) || !places.Contains(p.At)));
        return all.Sorted();
    }

    private static bool IsOfForm(Problem problem) => problem.Kind == ProblemKind.Unreadable || problem.Kind == ProblemKind.BrokenYaml || problem.Kind == ProblemKind.WrongShape;

    /// <summary>The build files that a run reads.</summary>
    internal static IEnumerable<string> BuildPaths(IReadOnlyList<string> paths, Folders folders, ProblemList problems)
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
