using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Rules.Conditions;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>Tries changes of a build: the changed text is read and judged by the same facts and rules as any build; only the messages are left out.</summary>
internal sealed class Bench
{
    private readonly PartsCatalog _catalog;
    private readonly RuleSet _rules;
    private readonly string _file;
    private readonly Lazy<SchemaCheck> _schemas = new(() => new SchemaCheck());
    private readonly Dictionary<string, Assessment> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Rule, string Key), Seen> _seen = [];
    private readonly Dictionary<string, decimal> _prices = new(StringComparer.Ordinal);
    private readonly Dictionary<Slot, decimal> _savings = [];
    private Dictionary<string, ListLine>? _listed;

    public Bench(string file, string text, PartsCatalog catalog, RuleSet rules)
    {
        (_file, Text, _catalog, _rules) = (file, text, catalog, rules);
        Root = (YamlMap)YamlReader.Read(new SourceText(file, text), new ProblemList())!;
        Build = ReadText(text)!;
        Scopes = new RuleScopes(Build);
    }

    public string Text { get; }
    public YamlMap Root { get; }
    public Build Build { get; }
    public RuleScopes Scopes { get; }
    /// <summary>Combinations that were judged in full.</summary>
    public int Judged { get; private set; }

    /// <summary>The build with these changes; null when they don't go together.</summary>
    public Build? Read(IReadOnlyList<Change> changes) => TextOf(changes) is { } text ? ReadText(text) : null;

    public Entry? Find(string id) => _catalog.Find(id);

    /// <summary>The text with these changes; null when they don't go together.</summary>
    public string? TextOf(IEnumerable<Change> changes) => TextEdit.Apply(Text, changes.OrderBy(c => c.Slot.Index).SelectMany(c => c.Option.Edits));

    /// <summary>What the rules say of the build with these changes.</summary>
    public Assessment Assess(IReadOnlyList<Change> changes)
    {
        var key = KeyOf(changes);
        if (!_known.TryGetValue(key, out var assessment))
            _known[key] = assessment = Judge(changes);
        return assessment;
    }

    /// <summary>What is known of the build with these changes without judging it: findings whose every cause was seen before.</summary>
    public IEnumerable<Issue> Foreseen(IReadOnlyList<Change> changes)
    {
        foreach (var seen in _seen.Values)
        {
            if (seen.Issues.TryGetValue(KeyOf(changes, seen.Atoms), out var issue))
                yield return issue;
        }
    }

    /// <summary>What the build costs with these changes; nothing when they can't be made together.</summary>
    public decimal PriceOf(IReadOnlyList<Change> changes)
    {
        var key = KeyOf(changes);
        if (!_prices.TryGetValue(key, out var price))
            _prices[key] = price = _known.TryGetValue(key, out var known) ? known.Price : Read(changes) is { } build ? Shopping.List(build).Sum(l => l.Sum.Amount) : 0;
        return price;
    }

    /// <summary>
    /// The most that another choice for a slot can save, whatever else is chosen. A pack may serve other places too: what is there now saves at most whole
    /// packs rounded up, and what comes costs at least whole packs rounded down.
    /// </summary>
    public decimal SavingOf(Slot slot)
    {
        if (_savings.TryGetValue(slot, out var saving))
            return saving;
        if (MostNow(slot) > 0)
        {
            var before = MostNow(slot);
            saving = Math.Max(0, before - slot.Options.Select(o => LeastCost(slot, o)).DefaultIfEmpty(before).Min());
        }
        return _savings[slot] = saving;
    }

    /// <summary>Whether an option may cost less than what is there.</summary>
    public bool Saves(Slot slot, Option option) => LeastCost(slot, option) < MostNow(slot);

    private decimal MostNow(Slot slot)
    {
        _listed ??= Shopping.List(Build).ToDictionary(l => l.Part, StringComparer.Ordinal);
        if (slot.Now is not { } now || _listed.GetValueOrDefault(now) is not { } line)
            return 0;
        var isPlaced = slot.Where.All(w => Build.Vehicle.Find(w) is not null);
        return isPlaced ? Math.Min(line.Sum.Amount, line.Price.Amount * ((slot.Where.Count + line.Pack - 1) / line.Pack)) : line.Sum.Amount;
    }

    private static decimal LeastCost(Slot slot, Option option) => option.Parts is [Driver or Adapter or Cup or Harness] and [var part]
        ? part.Price.Value.Amount * (slot.Where.Count / part.Pack) : 0;

    /// <summary>The rules of which a finding was seen that answers a question, in their order.</summary>
    public IEnumerable<string> SeenRules(Func<Issue, bool> asked) =>
        _seen.Values.SelectMany(s => s.Issues.Values).Where(asked).Select(i => i.Rule.Id).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    /// <summary>Everything that was seen of a rule.</summary>
    public IEnumerable<Issue> SeenOf(string rule) => _seen.Where(s => s.Key.Rule == rule).SelectMany(s => s.Value.Issues.Values);

    private Assessment Judge(IReadOnlyList<Change> changes)
    {
        Judged++;
        if (Read(changes) is not { } build)
            return Assessment.Impossible;
        var list = Shopping.List(build);
        var assessment = new Assessment(list, [.. Issues(build, FactRegistry.Of(build, list).Tables)]);
        foreach (var issue in assessment.Issues)
        {
            if (!_seen.TryGetValue(issue.Id, out var seen))
                _seen[issue.Id] = seen = new Seen(issue.Atoms, []);
            seen.Issues[KeyOf(changes, seen.Atoms)] = issue;
        }
        return assessment;
    }

    private IEnumerable<Issue> Issues(Build build, IReadOnlyList<FactTable> tables)
    {
        foreach (var rule in _rules.Rules)
        {
            foreach (var table in tables)
            {
                if (table.Subject != rule.Subject || Judgement.Of(rule, new FactInputs(rule.Scope, table.Values)) is not { } judgement)
                    continue;
                var clearance = rule.Unit is { } unit && unit.Dimension == Physics.Quantities.Dimension.Metre ? judgement.Margin : null;
                if (judgement.Status == Status.Pass && clearance is null)
                    continue;
                yield return new Issue(rule, table.Key, judgement.Status, Scopes.Of(rule, table.Key))
                {
                    Clearance = clearance,
                    Margin = judgement.Margin,
                    IsWaived = build.Waivers.Any(w => w.Rule == rule.Id && (w.Position is null || w.Position == table.Key)),
                };
            }
        }
    }

    /// <summary>The build that a text describes, with its shape checked too; null when something is wrong.</summary>
    public Build? Valid(string text)
    {
        var problems = new ProblemList();
        if (YamlReader.Read(new SourceText(_file, text), problems) is { } root)
            _schemas.Value.Check("build", root, problems);
        return problems.HasErrors ? null : ReadText(text);
    }

    /// <summary>The build that a text describes; null when it can't be.</summary>
    public Build? ReadText(string text)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText(_file, text), problems);
        var build = root is null ? null : BuildReader.Read(root, _catalog, problems);
        return problems.HasErrors ? null : build;
    }

    private static string KeyOf(IReadOnlyList<Change> changes, IReadOnlySet<string>? atoms = null)
    {
        var every = atoms is null || atoms.Contains(Atoms.All);
        return string.Join(' ', changes.Where(c => every || c.Slot.Atoms.Overlaps(atoms!)).OrderBy(c => c.Slot.Index).Select(c => $"{c.Slot.Index}:{c.Choice}"));
    }

    private sealed record Seen(IReadOnlySet<string> Atoms, Dictionary<string, Issue> Issues);
}
