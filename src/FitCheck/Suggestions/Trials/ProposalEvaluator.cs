using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;
using FitCheck.Schemas;
using FitCheck.Suggestions.Choices;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// Tries changes of a build: the changed text is read and judged by the same facts and rules as any build; only the messages are left out.
/// </summary>
internal sealed class ProposalEvaluator
{
    /// <summary>So many options of a slot are best prepared together.</summary>
    public const int Ahead = 32;

    private readonly PartsCatalog _catalog;
    private readonly RuleSet _rules;
    private readonly DateOnly? _today;
    private readonly CancellationToken _cancel;
    private readonly string _file;
    private readonly Lazy<SchemaCheck> _schemas = new(() => new SchemaCheck());
    private readonly Dictionary<ChangeKey, ProposalVerdict> _known = [];
    private readonly Dictionary<string, InputSet> _bases = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Rule, string Key), Seen> _seen = [];
    private readonly NotesOfThreads _notes = new();
    private readonly SolvedLoads _solved = new();
    private readonly Dictionary<(Subject, string Key), Seen?[]> _seenOfTables = [];
    private readonly Dictionary<ChangeKey, decimal> _prices = [];
    private readonly Dictionary<Slot, decimal> _savings = [];
    private Dictionary<string, ListLine>? _listed;
    private (ChangeKey Key, Build? Build)? _last;

    /// <param name="file">What the build is called.</param>
    /// <param name="text">The build as it is written.</param>
    /// <param name="catalog">What may be chosen.</param>
    /// <param name="rules">What judges it.</param>
    /// <param name="today">The day by which the end of a waiver is judged; null for today, UTC.</param>
    /// <param name="cancel">Looked at before each change is tried.</param>
    public ProposalEvaluator(string file, string text, PartsCatalog catalog, RuleSet rules, DateOnly? today = null,
        CancellationToken cancel = default)
    {
        (_file, Text, _catalog, _rules, _today, _cancel) = (file, text, catalog, rules, today, cancel);
        Root = (YamlMap)YamlReader.Read(new SourceText(file, text), new ProblemList())!;
        Build = ReadText(text)!;
        Scopes = new FindingInputs(Build);
    }

    public string Text { get; }
    public YamlMap Root { get; }
    public Build Build { get; }
    public FindingInputs Scopes { get; }

    /// <summary>
    /// What a person calls a place of the build: a position by the vehicle's name for it, an output or a device by its own.
    /// </summary>
    public string NameOf(string place) => Build.Vehicle.Find(place)?.Name ?? place;

    public CancellationToken Cancel => _cancel;
    /// <summary>Combinations that were judged in full.</summary>
    public int Judged { get; private set; }

    /// <summary>The build with these changes; null when they don't go together.</summary>
    public Build? Read(IReadOnlyList<Change> changes)
    {
        // Asked for one finding, then another, then all.
        var key = ChangeKey.Of(changes);
        if (_last?.Key != key)
            _last = (key, Changed(changes));
        return _last.Value.Build;
    }

    public Entry? Find(string id) => _catalog.Find(id);

    /// <summary>The text with these changes; null when they don't go together.</summary>
    public string? TextOf(IEnumerable<Change> changes, IReadOnlyList<TextEdit>? besides = null) =>
        TextEdit.Apply(Text, Edits(changes, besides));

    /// <summary>Whether <see cref="TextOf"/> would be a text.</summary>
    public static bool CanMake(IEnumerable<Change> changes, IReadOnlyList<TextEdit>? besides = null) =>
        TextEdit.GoTogether(Edits(changes, besides));

    private static IEnumerable<TextEdit> Edits(IEnumerable<Change> changes, IReadOnlyList<TextEdit>? besides) =>
        (besides ?? []).Concat(changes.OrderBy(c => c.Slot.Index).SelectMany(c => c.Option.Edits));

    /// <summary>What the rules say of the build with these changes.</summary>
    public ProposalVerdict Assess(IReadOnlyList<Change> changes)
    {
        var key = ChangeKey.Of(changes);
        if (!_known.TryGetValue(key, out var assessment))
            _known[key] = assessment = Judge(changes);
        return assessment;
    }

    /// <summary>
    /// What is known to be no pass of the build with these changes without judging it: findings whose every cause was seen before.
    /// </summary>
    public IEnumerable<RuleVerdict> Foreseen(IReadOnlyList<Change> changes) =>
        _bases.Values.Where(b => b.HasTroubles).SelectMany(b => b.Troubles(b.KeyOf(changes)));

    /// <summary>
    /// What one finding of the build as it stands becomes with these changes, judged alone: far less work than all of them. Null when it is
    /// gone.
    /// </summary>
    public RuleVerdict? Again(RuleVerdict issue, IReadOnlyList<Change> changes)
    {
        var seen = _seen[issue.Id];
        var key = seen.Basis.KeyOf(changes);
        if (seen.Of.TryGetValue(key, out var known))
            return known;
        var (isPossible, again) = Alone(issue, seen, Read(changes));
        if (isPossible)
            seen.Add(key, again);
        return again;
    }

    /// <summary>
    /// Works out the same findings, and the price, for further choices of a slot, on all processors, before they are asked for one by one.
    /// </summary>
    public void Prepare(IReadOnlyList<RuleVerdict> issues, IReadOnlyList<Change> changes, IEnumerable<Change> further)
    {
        Seen[] seen = [.. issues.Select(i => _seen[i.Id])];
        IReadOnlyList<Change>[] open = [.. further.Select(f => (IReadOnlyList<Change>)[.. changes, f])
            .Where(c => Array.Exists(seen, s => !s.Of.ContainsKey(s.Basis.KeyOf(c))))];
        var found = new (decimal Price, (bool IsPossible, RuleVerdict? Issue)[] Issues)[open.Length];
        Parallel.For(0, open.Length, new ParallelOptions { CancellationToken = _cancel }, i =>
        {
            var build = Changed(open[i]);
            found[i] = (PriceOf(build),
                [.. seen.Select((s, n) => s.Of.ContainsKey(s.Basis.KeyOf(open[i])) ? (false, null) : Alone(issues[n], s, build))]);
        });
        for (var i = 0; i < open.Length; i++)
        {
            var (price, issuesThen) = found[i];
            _prices[ChangeKey.Of(open[i])] = price;
            for (var n = 0; n < seen.Length; n++)
            {
                if (issuesThen[n].IsPossible)
                    seen[n].Add(seen[n].Basis.KeyOf(open[i]), issuesThen[n].Issue);
            }
        }
    }

    private Build? Changed(IReadOnlyList<Change> changes) => TextOf(changes) is { } text ? ReadText(text) : null;

    private (bool IsPossible, RuleVerdict? Issue) Alone(RuleVerdict issue, Seen seen, Build? build) =>
        build is not null && Table(build, issue) is { } table ? (true, Judge(build, issue.Rule, table, seen.Basis.Atoms)) : (false, null);

    // The whole build is worked out only for what reads the whole of it.
    private FactTable? Table(Build build, RuleVerdict issue) => issue.Rule.Subject != Subject.Build
        ? FactRegistry.Of(build, issue.Rule.Subject, issue.Key, _rules.Practice, _solved)
        : issue.IsOfList ? BuildFacts.OfList(build, Shopping.List(build))
        : FactRegistry.Of(build, Shopping.List(build), _rules.Practice, _solved).Tables
            .FirstOrDefault(t => t.Subject == Subject.Build && t.Key == issue.Key);

    /// <summary>What the build costs with these changes; nothing when they can't be made together.</summary>
    public decimal PriceOf(IReadOnlyList<Change> changes)
    {
        var key = ChangeKey.Of(changes);
        if (!_prices.TryGetValue(key, out var price))
            _prices[key] =
                price = _known.TryGetValue(key, out var known) ? known.Price : PriceOf(Read(changes));
        return price;
    }

    private static decimal PriceOf(Build? build) => build is null ? 0 : Shopping.List(build).Sum(l => l.Sum.Amount);

    /// <summary>
    /// The most that another choice for a slot can save, whatever else is chosen. A pack may serve other places too: what is there now
    /// saves at most whole packs rounded up, and what comes costs at least whole packs rounded down.
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

    /// <summary>Whether a part of the build as it stands has to be ordered.</summary>
    public bool HasPartToOrder => Listed.Values.Any(l => l.Availability == "to-order");

    private Dictionary<string, ListLine> Listed =>
        _listed ??= Shopping.List(Build).ToDictionary(l => l.Part, StringComparer.Ordinal);

    private decimal MostNow(Slot slot)
    {
        var isPlaced = slot.Where.All(w => Build.Vehicle.Find(w) is not null);
        return slot.Parts.Select(p => Listed.GetValueOrDefault(p)).OfType<ListLine>()
                .Sum(line =>
                isPlaced ? Math.Min(line.Sum.Amount, line.Price.Amount * ((slot.Where.Count + line.Pack - 1) / line.Pack))
                    : line.Sum.Amount)
            + slot.Spares.Sum(s => Listed.GetValueOrDefault(s)?.Sum.Amount ?? 0);
    }

    // Half of a set may lie in the box of the other half already; both halves together are bought for as many sides as there are.
    private decimal LeastCost(Slot slot, Option option) => option.Parts switch
    {
        [Driver or Adapter or Cup or Harness] and [var part] => Build.PriceOf(part).Amount * (slot.Where.Count / part.Pack),
        [ComponentSet set] when slot.Where.Count(w => Build.Vehicle.Find(w)?.Role == "tweeter") is var tweeters
            && 2 * tweeters == slot.Where.Count => Build.PriceOf(set).Amount * (tweeters / set.Pack),
        _ => 0,
    };

    /// <summary>The rules of which a finding was seen that answers a question, in their order.</summary>
    public IEnumerable<string> SeenRules(Func<RuleVerdict, bool> asked) =>
        _seen.Values.SelectMany(s => s.Issues).Where(asked).Select(i => i.Rule.Id).Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);

    /// <summary>Everything that was seen of a rule.</summary>
    public IEnumerable<RuleVerdict> SeenOf(string rule) => _seen.Where(s => s.Key.Rule == rule).SelectMany(s => s.Value.Issues);

    /// <summary>What the rules say when nothing is taken from combinations judged before.</summary>
    public ProposalVerdict Anew(IReadOnlyList<Change> changes) =>
        Changed(changes) is { } build ? new ProposalEvaluator(_file, Text, _catalog, _rules, _today, _cancel).Judge(build, changes)
            : ProposalVerdict.Impossible;

    private ProposalVerdict Judge(IReadOnlyList<Change> changes)
    {
        Judged++;
        return Read(changes) is { } build ? Judge(build, changes) : ProposalVerdict.Impossible;
    }

    // A rule whose finding rests on nothing that differs from a combination judged before says the same again, and facts that only it asks
    // for are not computed.
    private ProposalVerdict Judge(Build build, IReadOnlyList<Change> changes)
    {
        var list = Shopping.List(build);
        var tables = FactRegistry.Of(build, list, _rules.Practice, _solved).Tables
            .ToLookup(t => t.Subject, t => (Facts: t, Seen: SeenOf(t)));
        var issues = new List<RuleVerdict>();
        var keys = new Dictionary<InputSet, ChangeKey>();
        for (var i = 0; i < _rules.Rules.Count; i++)
        {
            var rule = _rules.Rules[i];
            foreach (var (table, seenOfTable) in tables[rule.Subject])
            {
                var seen = seenOfTable[i] ??= SeenOf(rule, table.Key);
                if (!keys.TryGetValue(seen.Basis, out var key))
                    keys[seen.Basis] = key = seen.Basis.KeyOf(changes);
                if (!seen.Of.TryGetValue(key, out var issue))
                    seen.Add(key, issue = Judge(build, rule, table, seen.Basis.Atoms));
                if (issue is not null)
                    issues.Add(issue);
            }
        }
        return new ProposalVerdict(list, issues);
    }

    // By the places of the rules.
    private Seen?[] SeenOf(FactTable table)
    {
        if (!_seenOfTables.TryGetValue((table.Subject, table.Key), out var seen))
            _seenOfTables[(table.Subject, table.Key)] = seen = new Seen?[_rules.Rules.Count];
        return seen;
    }

    private Seen SeenOf(Rule rule, string key)
    {
        if (_seen.TryGetValue((rule.Id, key), out var seen))
            return seen;
        var atoms = Scopes.Of(rule, key);
        var words = string.Join(' ', atoms.Order(StringComparer.Ordinal));
        if (!_bases.TryGetValue(words, out var basis))
            _bases[words] = basis = new InputSet(atoms);
        return _seen[(rule.Id, key)] = new Seen(basis);
    }

    // Null when the rule has nothing to say, or passes without a clearance.
    private RuleVerdict? Judge(Build build, Rule rule, FactTable table, IReadOnlySet<string> atoms)
    {
        if (_notes.Judge(rule, table) is not { } verdict)
            return null;
        double? margin = double.IsNaN(verdict.Margin) ? null : verdict.Margin;
        double? clearance = IsOfClearance(rule) && _notes.Room(rule, table) is var room && !double.IsNaN(room) ? room : null;
        if (verdict.Status == Status.Pass && clearance is null)
            return null;
        return new RuleVerdict(rule, table.Key, verdict.Status, atoms)
        {
            Clearance = clearance,
            Margin = margin,
            IsWaived = build.Waivers.Any(w => w.Rule == rule.Id && (w.Position is null || w.Position == table.Key)),
        };
    }

    // What is short of a limit of warning has room all the same: a clearance is what is left before it fails.
    private static bool IsOfClearance(Rule rule) =>
        rule is { Subject: Subject.Position, Fail: not null, Unit.Dimension: var dimension }
            && dimension == Physics.Quantities.Dimension.Metre;

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
        _cancel.ThrowIfCancellationRequested();
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText(_file, text), problems);
        var build = root is null ? null : BuildReader.Read(root, _catalog, problems, _today);
        return problems.HasErrors ? null : build;
    }

    /// <summary>What a rule said of a subject, by those of the changes on which that rests; null for nothing.</summary>
    private sealed class Seen(InputSet basis)
    {
        public InputSet Basis => basis;
        public Dictionary<ChangeKey, RuleVerdict?> Of { get; } = [];
        public IEnumerable<RuleVerdict> Issues => Of.Values.OfType<RuleVerdict>();

        public void Add(ChangeKey key, RuleVerdict? issue)
        {
            Of[key] = issue;
            if (issue is { Status: not Status.Pass })
                basis.Add(key, issue);
        }
    }
}
