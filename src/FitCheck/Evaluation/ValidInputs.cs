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
internal sealed class ValidInputs
{
    private readonly RuleBytes _files;
    private readonly Task<RuleSet> _rules;
    private readonly string _key;

    private ValidInputs(PartsCatalog catalog, RuleBytes files, Task<RuleSet> rules, string key)
    {
        (Catalog, _files, _rules, _key) = (catalog, files, rules, key);
        Practice = files.Practice(new ProblemList());
    }

    /// <summary>What exists.</summary>
    public PartsCatalog Catalog { get; }

    /// <summary>What facts are reckoned with where nobody wrote a datum; there before the rules are.</summary>
    public Practice Practice { get; }

    /// <summary>What is acceptable. Known rules are being read while the build and its facts are worked out; this waits for them.</summary>
    public RuleSet Rules => _rules.GetAwaiter().GetResult();

    /// <summary>
    /// Opens both; validates them unless the same bytes were found valid before. Null when something is wrong; problems say what.
    /// </summary>
    public static ValidInputs? Open(Folders folders, ValidationCache cache, ProblemList problems, Action<string>? progress = null) =>
        OpenWithCatalog(folders, cache, problems, progress).Sound;

    /// <summary>
    /// Opens and validates catalog and rules. The catalog also comes where something is wrong, for those who tell what is wrong besides;
    /// the sound inputs are null then.
    /// </summary>
    public static (PartsCatalog Catalog, ValidInputs? Sound) OpenWithCatalog(Folders folders, ValidationCache cache, ProblemList problems,
        Action<string>? progress = null, bool keep = true, CancellationToken cancel = default)
    {
        progress?.Invoke("opening the catalog");
        // The rules are read on a thread of their own, as if they were known; if they are not, that was in vain and they are read again in
        // full.
        var told = new ProblemList();
        var reading = Beside.Run(() => RuleBytes.Of(folders.Rules, told));
        var known = Beside.Then(reading, Known);
        var catalog = PartsCatalog.Open(folders.Catalog, problems);
        TellUnread(folders, problems);
        var files = reading.GetAwaiter().GetResult();
        problems.AddRange(told.Sorted());
        cancel.ThrowIfCancellationRequested();
        var key = ValidationCache.Key(Parts(catalog, files));
        if (!problems.HasErrors && cache.Knows(key))
            return (catalog, new ValidInputs(catalog, files, known, key));
        if (QuickProgram.IsThis)
            throw new HandOverException();

        var rules = Validated(files, problems);
        Validate(catalog, progress, keep, cancel);
        return (catalog, Sound(new ValidInputs(catalog, files, Task.FromResult(rules), key), cache, problems));
    }

    /// <summary>
    /// Opens the same folders again: this state itself when no byte of them differs, else another one, in which entries and rules that
    /// stayed as they are need not be read again. Null when something is wrong; problems say what.
    /// </summary>
    public ValidInputs? Again(Folders folders, ValidationCache cache, ProblemList problems, Action<string>? progress,
        CancellationToken cancel)
    {
        var (files, catalog) = (RuleBytes.Of(folders.Rules, problems), PartsCatalog.Open(folders.Catalog, problems));
        TellUnread(folders, problems);
        var key = ValidationCache.Key(Parts(catalog, files));
        if (!problems.HasErrors && key == _key)
            return this;
        cancel.ThrowIfCancellationRequested();
        var isKnown = !problems.HasErrors && cache.Knows(key);
        var rules = files.AreAs(_files) ? _rules : Task.FromResult(isKnown ? Known(files) : Validated(files, problems));
        catalog.TakeOver(Catalog);
        if (!isKnown)
            Validate(catalog, progress, keep: true, cancel);
        return Sound(new ValidInputs(catalog, files, rules, key), cache, problems);
    }

    // An entry that lies beside the folders of the kinds is missed by every build. Beside the program nobody lays any.
    private static void TellUnread(Folders folders, ProblemList problems)
    {
        foreach (var root in folders.Catalog.Except(Folders.BesideProgram.Catalog, StringComparer.Ordinal).Where(Directory.Exists))
            CatalogFiles.TellUnread(root, problems);
    }

    // What was found valid need not be validated, and what only judges entries is of no use here.
    private static RuleSet Known(RuleBytes files) =>
        RuleSet.Load(files, FactRegistry.Declarations, new ProblemList(), examples: false, unless: s => s.IsOfCatalog());

    private static RuleSet Validated(RuleBytes files, ProblemList problems)
    {
        var rules = RuleSet.Load(files, FactRegistry.Declarations, problems, examples: true);
        rules.CheckTemplates(problems);
        return rules;
    }

    private static void Validate(PartsCatalog catalog, Action<string>? progress, bool keep, CancellationToken cancel) =>
        catalog.CheckAll(new SchemaCheck(), (done, all) => progress?.Invoke($"reading the catalog: {done} of {all}"), keep, cancel);

    private static ValidInputs? Sound(ValidInputs valid, ValidationCache cache, ProblemList problems)
    {
        if (problems.HasErrors)
            return null;
        cache.Add(valid._key);
        return valid;
    }

    private static IEnumerable<byte[]> Parts(PartsCatalog catalog, RuleBytes files)
    {
        yield return Encoding.UTF8.GetBytes(catalog.Digest);
        foreach (var part in files.Parts())
            yield return part;
    }
}
