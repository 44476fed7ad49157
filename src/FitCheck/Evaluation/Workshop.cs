using System.Text;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using FitCheck.Schemas;

namespace FitCheck.Evaluation;

/// <summary>Catalog and rules, opened and known to be valid.</summary>
internal sealed class Workshop
{
    private readonly Task<RuleSet> _rules;

    private Workshop(PartsCatalog catalog, Task<RuleSet> rules) => (Catalog, _rules) = (catalog, rules);

    /// <summary>What exists.</summary>
    public PartsCatalog Catalog { get; }

    /// <summary>What is acceptable. Known rules are being read while the build and its facts are worked out; this waits for them.</summary>
    public RuleSet Rules => _rules.GetAwaiter().GetResult();

    /// <summary>Opens both; validates them unless the same bytes were found valid before. Null when something is wrong; problems say what.</summary>
    public static Workshop? Open(Folders folders, Remembered remembered, ProblemList problems, Action<string>? progress = null) =>
        OpenWithCatalog(folders, remembered, problems, progress).Sound;

    /// <summary>The same, with the catalog also where something is wrong, for those who tell what is wrong besides.</summary>
    public static (PartsCatalog Catalog, Workshop? Sound) OpenWithCatalog(Folders folders, Remembered remembered, ProblemList problems, Action<string>? progress = null)
    {
        // The rules are read on a thread of their own, as if they were known; if they are not, that was in vain and they are read again in full.
        var told = new ProblemList();
        var reading = Task.Run(() => RuleBytes.Of(folders.Rules, told));
        var known = reading.ContinueWith(r => RuleSet.Load(r.Result, FactRegistry.Declarations, new ProblemList(), examples: false, unless: s => s.IsOfCatalog()), TaskScheduler.Default);
        var catalog = PartsCatalog.Open(folders.Catalog, problems);
        var files = reading.GetAwaiter().GetResult();
        problems.AddRange(told.Sorted());
        var digest = Remembered.Key(Parts(catalog, files));
        if (!problems.HasErrors && remembered.Knows(digest))
            return (catalog, new Workshop(catalog, known));
        if (QuickProgram.IsThis)
            throw new HandOverException();

        var whole = Validated(catalog, files, problems, progress);
        if (problems.HasErrors)
            return (catalog, null);
        remembered.Add(digest);
        return (catalog, whole);
    }

    private static Workshop Validated(PartsCatalog catalog, RuleBytes files, ProblemList problems, Action<string>? progress)
    {
        var rules = RuleSet.Load(files, FactRegistry.Declarations, problems, examples: true);
        rules.CheckTemplates(problems);
        catalog.CheckAll(new SchemaCheck(), (done, all) => progress?.Invoke($"reading the catalog: {done} of {all}"));
        return new Workshop(catalog, Task.FromResult(rules));
    }

    private static IEnumerable<byte[]> Parts(PartsCatalog catalog, RuleBytes files)
    {
        yield return Encoding.UTF8.GetBytes(catalog.Digest);
        foreach (var (file, bytes, layer) in files.Files)
        {
            yield return Encoding.UTF8.GetBytes($"{layer}:{file.Id}");
            yield return bytes;
        }
    }
}
