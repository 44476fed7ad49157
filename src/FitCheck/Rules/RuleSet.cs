using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;

namespace FitCheck.Rules;

/// <summary>The rules of one or more directories, in ordinal order of their ids.</summary>
internal sealed class RuleSet
{
    private readonly Dictionary<string, Rule> _byId = new(StringComparer.Ordinal);

    public RuleSet(IEnumerable<Rule> rules)
    {
        foreach (var rule in rules)
            _byId[rule.Id] = rule;
        var sorted = new List<Rule>(_byId.Values);
        sorted.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
        Rules = sorted;
    }

    public IReadOnlyList<Rule> Rules { get; }

    /// <summary>What later directories did to the first one, in ordinal order of the rules' ids.</summary>
    public IReadOnlyList<RuleChange> Changes { get; private init; } = [];

    /// <summary>What facts are reckoned with where nobody wrote a datum.</summary>
    public Practice Practice
    {
        get => field ?? PracticeReader.OfProgram;
        private init;
    }

    /// <summary>What reports tell of them, in the same order.</summary>
    public IReadOnlyList<RuleHelp> Help => [.. Rules.Select(r => r.Help)];

    public Rule? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>
    /// Reads every rule of the directories; a file of a later one replaces, changes or switches off the earlier rule with the same id.
    /// </summary>
    /// <param name="directories">A missing one is a problem.</param>
    /// <param name="declared">Every fact that a rule may name.</param>
    /// <param name="problems">Where mistakes are told; a rule with one is left out.</param>
    /// <param name="checkTemplates">Also parse the messages, which costs the start-up of the template engine.</param>
    public static RuleSet Load(IReadOnlyList<string> directories, IReadOnlyList<Fact> declared, ProblemList problems,
        bool checkTemplates = false)
    {
        var rules = Load(RuleBytes.Of(directories, problems), declared, problems, examples: true);
        if (checkTemplates)
            rules.CheckTemplates(problems);
        return rules;
    }

    /// <summary>Reads rules from files that are in memory already.</summary>
    /// <param name="files">The files.</param>
    /// <param name="declared">Every fact that a rule may name.</param>
    /// <param name="problems">Where mistakes are told; a rule with one is left out.</param>
    /// <param name="examples">Whether their examples are read too.</param>
    /// <param name="unless">Rules that are plainly about one of these subjects are left out; null for none.</param>
    internal static RuleSet Load(RuleBytes files, IReadOnlyList<Fact> declared, ProblemList problems, bool examples,
        Func<Subject, bool>? unless = null)
    {
        var scopes = new FactScope[SubjectWords.All.Count];
        for (var i = 0; i < scopes.Length; i++)
            scopes[i] = new FactScope((Subject)i, declared);
        var onlyOne = files.Files is [] or [.., { Layer: 0 }];
        var layers = new RuleLayers(s => scopes[(int)s], problems);
        foreach (var (file, bytes, layer) in files.Files)
        {
            // Who has no use for some of them need not read them; where later directories may change them, it has to tell that.
            if (unless is not null && onlyOne && RuleFile.SubjectOf(bytes) is { } subject && unless(subject))
                continue;
            if (file.Read(bytes, problems, examples) is { } root)
                layers.Put(file, root, layer);
        }
        return new RuleSet(layers.Rules) { Changes = layers.Changes, Practice = files.Practice(problems) };
    }

    /// <summary>Tells messages that can't be parsed or that name something unknown, and parts asked for that can't exist.</summary>
    internal void CheckTemplates(ProblemList problems)
    {
        foreach (var rule in Rules)
        {
            MessageVariables.Check(rule, problems);
            AskedPart.Check(rule, problems);
        }
    }
}
