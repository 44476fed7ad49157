using System.Text;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.LintCache;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;
using FitCheck.Schemas;

namespace FitCheck;

/// <summary>Validates rules, catalog and builds: rule files and their examples, schema, references, units, plausibility.</summary>
internal static class Lint
{
    /// <summary>
    /// What is wrong, in file order. Paths name builds, or folders with builds; without any, the builds inside the catalog folders are
    /// read.
    /// </summary>
    /// <param name="paths">Builds, or folders with builds.</param>
    /// <param name="folders">Catalog and rules.</param>
    /// <param name="cache">What earlier runs found of inputs that have not changed.</param>
    /// <param name="progress">Told what goes on.</param>
    public static LintResult Run(IReadOnlyList<string> paths, Folders folders, ValidationCache cache, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        var schemas = new SchemaCheck();
        var files = RuleBytes.Of(folders.Rules, problems);
        var rulesKey =
            ValidationCache.Key([Encoding.UTF8.GetBytes("lint"), .. files.Parts()]);
        // New rules are read and tried while the catalog is.
        var (sound, told) = (!problems.HasErrors, new ProblemList());
        var reading = QuickProgram.IsThis ? Task.FromResult(Rules(files, rulesKey, cache, sound, told))
            : Beside.Run(() => Rules(files, rulesKey, cache, sound, told));
        var rules = new Lazy<RuleSet>(() => reading.GetAwaiter().GetResult().All.Value);
        var judge = new Lazy<EntryJudge>(() => new EntryJudge(reading.GetAwaiter().GetResult().OfEntries.Value));
        var notes =
            cache.FileFor(ValidationCache.Key([.. folders.Catalog.Select(f => Encoding.UTF8.GetBytes(Path.GetFullPath(f)))]) + ".notes");
        var count = 0;
        var catalog = LintedCatalog.Read(folders.Catalog, CachedLint.Read(notes, rulesKey), Examine, problems);
        catalog.Tell();
        reading.GetAwaiter().GetResult();
        problems.AddRange(told.Sorted());
        var builds = BuildPaths(paths, folders, problems).ToList();
        Builds(builds, [.. folders.Catalog, .. paths.Where(Directory.Exists)], folders.Catalog, catalog, rules, rulesKey,
            new Lazy<SchemaCheck>(schemas), cache, problems, progress);
        var all = WithJudged(problems.Sorted(), [.. catalog.Judged(judge)]);
        if (catalog.HasChanged)
            catalog.Notes.Write(notes, rulesKey);
        return new LintResult(all, builds.Count + catalog.Count + files.Files.Count) { RulesWhenAsked = new(() => rules.Value.Help) };

        ExaminedEntry Examine(string id, EntryText text)
        {
            progress?.Invoke($"reading the catalog: {Interlocked.Increment(ref count)} entries");
            return ExaminedEntry.Of(id, text, schemas, judge.Value);
        }
    }

    // Where a rule says the same as the reader, in the shop's own words, its word stands.
    private static IReadOnlyList<Problem> WithJudged(IReadOnlyList<Problem> read, IReadOnlyList<Problem> judged)
    {
        var places = judged.Select(p => p.At).ToHashSet();
        var all = new ProblemList();
        all.AddRange(judged);
        all.AddRange(read.Where(p => p.Severity != Severity.Error || ExaminedEntry.IsOfForm(p) || !places.Contains(p.At)));
        return all.Sorted();
    }

    // Rules that were found good are not read again before an entry or a build has to be judged.
    private static (Lazy<RuleSet> All, Lazy<RuleSet> OfEntries) Rules(RuleBytes files, string key, ValidationCache cache, bool sound,
        ProblemList problems)
    {
        if (sound && cache.Knows(key))
            return (Known(null), Known(s => !s.IsOfEntries()));
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var own = new ProblemList();
        var rules = RuleSet.Load(files, FactRegistry.Declarations, own, examples: true);
        rules.CheckTemplates(own);
        files.TellHidden(own);
        foreach (var rule in rules.Rules)
            own.AddRange(RuleChecks.Of(rule));
        if (own.Count == 0 && sound)
            cache.Add(key);
        problems.AddRange(own.Sorted());
        return (new Lazy<RuleSet>(rules), new Lazy<RuleSet>(rules));

        Lazy<RuleSet> Known(Func<Subject, bool>? unless) =>
            new(() => RuleSet.Load(files, FactRegistry.Declarations, new ProblemList(), examples: false, unless));
    }

    private static void Builds(
        IReadOnlyList<string> paths, IReadOnlyList<string> fences, IReadOnlyList<string> folders, LintedCatalog catalog,
        Lazy<RuleSet> rules, string rulesKey, Lazy<SchemaCheck> schemas, ValidationCache cache, ProblemList problems,
        Action<string>? progress)
    {
        // Whatever stands in a file that can't be read would be missed by every build.
        if (paths.Count == 0 || problems.All.Any(p => p.Kind == ProblemKind.Unreadable))
            return;
        var texts = paths.Select(p => BuildFiles.PlainBytes(p, fences)).ToList();
        var key = texts.Contains(null) ? null
            : ValidationCache.Key(
            [Encoding.UTF8.GetBytes("builds " + rulesKey + catalog.Digest),
                .. paths.Zip(texts).SelectMany(p => new[] { Encoding.UTF8.GetBytes(p.First), p.Second! })]);
        if (key is not null && cache.Knows(key))
            return;
        // What is wrong with entries has been told.
        var (own, entries) = (new ProblemList(), PartsCatalog.Open(folders, new ProblemList()));
        foreach (var (path, text) in paths.Zip(texts))
        {
            progress?.Invoke($"reading {path}");
            HiddenLetters.Tell(path.Replace('\\', '/'), 1, text, own);
            if (BuildFiles.Read(path, fences, entries, ValidationCache.Nothing, schemas, own) is { } read)
                Waivers.Refuse(read.Build, () => rules.Value, own, canJudge: !problems.HasErrors);
        }
        if (key is not null && own.Count == 0 && !problems.HasErrors)
            cache.Add(key);
        problems.AddRange(own.Sorted());
    }

    /// <summary>The build files that a run reads.</summary>
    internal static IEnumerable<string> BuildPaths(IReadOnlyList<string> paths, Folders folders, ProblemList problems)
    {
        IReadOnlyList<(string Named, string Path)> roots = paths.Count > 0 ? [.. paths.Select(p => (p, p))]
            : [.. folders.Catalog.Select(c => (c, Path.Combine(c, "builds"))).Where(r => Directory.Exists(r.Item2))];
        foreach (var (named, root) in roots)
        {
            if (!Directory.Exists(root))
            {
                yield return root;
                continue;
            }
            var told = problems.Count;
            var files = InputFolder.Files(named, root, [".yaml"], problems);
            if (files.Count == 0 && problems.Count == told)
                problems.Warn(new Location(root.Replace('\\', '/'), 0, 0), "no build files (*.yaml) in this folder", ProblemKind.NotRead);
            foreach (var file in files)
                yield return file.Path;
        }
    }
}
