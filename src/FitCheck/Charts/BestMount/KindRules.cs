using FitCheck.Charts.Pairs;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// The rules for one kind of pair, such as a woofer on a spacer: those that its settled facts rule out are gone, and the rest are sorted by
/// what they rest on, so that each is asked once for whatever decides it.
/// </summary>
internal sealed class KindRules
{
    private const int Kinds = (int)RestsOn.Pair + 1;

    // By what they rest on.
    private readonly Entry[][] _groups = new Entry[Kinds][];
    private readonly int[] _canFail = new int[Kinds];
    private readonly Entry[] _shared;
    private readonly Func<PlacedPairFacts, Brief>[] _sources;
    private readonly int[][] _facts = new int[Kinds][];
    private readonly Brief[] _settled;
    private readonly RestsOn[] _restsOn;
    // For each slot the number of the asking for which its fact was last worked out.
    private readonly int[] _workedFor;
    // Facts that rest on what carries a driver alone, and are asked together with the driver.
    private readonly int[] _ofMountWithDriver;
    private readonly int _rules;
    private readonly int _firstOfPair = int.MaxValue;
    private int _asking;

    /// <param name="Order">Its place in the order of judging.</param>
    /// <param name="Rule">The rule.</param>
    private sealed record Entry(int Order, BriefRule Rule)
    {
        /// <summary>The number that decides alone, of a plain rule whose fact is one that a pair works out; null of any other.</summary>
        public Func<PlacedPairFacts, LengthTerm>? Number { get; init; }
        public Gate? Gate { get; init; }
        /// <summary>The number that has to be known, or unknown, for it to apply.</summary>
        public Func<PlacedPairFacts, LengthTerm>? GateNumber { get; init; }
        public required int[] Slots { get; init; }
        /// <summary>Those of the slots whose facts have to be put into the sheet and rest on just what the rule does.</summary>
        public required int[] Own { get; init; }
        public RestsOn RestsOn { get; init; }
        public bool IsLength { get; init; }
        public bool CanFail { get; init; }
        public bool IsSlow { get; init; }
    }

    /// <param name="rules">All that judge a chart.</param>
    /// <param name="settled">Facts of one pair of the kind: those that rest on nothing are the same for all.</param>
    /// <param name="worked">The numbers by name that a pair works out by itself.</param>
    /// <param name="mounts">Whether a spacer or a cup carries the driver; without, what rests on one rests on driver and place.</param>
    /// <param name="shared">Rules, by their place in the order of judging, that are asked once for this kind and another; see <see
    /// cref="Shared"/>.</param>
    public KindRules(PairRules rules, FactTable settled, IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> worked,
        bool mounts, IReadOnlySet<int> shared)
    {
        var scope = rules.Judged.Count > 0 ? rules.Judged[0].Scope : new FactScope(Subject.Position, []);
        _rules = rules.Judged.Count;
        _sources = new Func<PlacedPairFacts, Brief>[scope.Names.Count];
        _settled = new Brief[scope.Names.Count];
        _restsOn = new RestsOn[scope.Names.Count];
        _workedFor = new int[scope.Names.Count];
        var known = Settle(scope, settled, worked, mounts);
        var asked = Asked(rules, scope, known, worked);
        Array.Fill(_groups, []);
        Array.Fill(_facts, []);
        _shared = Sorted(asked.Where(e => shared.Contains(e.Order)));
        foreach (var group in asked.Where(e => !shared.Contains(e.Order)).GroupBy(e => e.RestsOn))
        {
            _groups[(int)group.Key] = Sorted(group);
            _canFail[(int)group.Key] = group.Count(e => e.CanFail);
            if (group.Key == RestsOn.Pair)
                _firstOfPair = group.Min(e => e.Order);
        }
        FirstLook = mounts ? _groups[(int)RestsOn.Pair].Select(e => LookAt(e, rules.Judged[e.Order])).FirstOrDefault(l => l is not null)
            : null;
        // What a rule asks that rests on more has to be handed on, but for numbers that are worked out where they are asked for.
        foreach (var group in asked.SelectMany(e => e.Slots.Where(s => _restsOn[s] != e.RestsOn
            && !(e.Number is not null && s == e.Rule.Slot))).Distinct().GroupBy(s => _restsOn[s]))
            _facts[(int)group.Key] = [.. group];
        var withDriver = asked.Where(e => e.RestsOn.HasFlag(RestsOn.Driver)).SelectMany(e => e.Slots).Distinct().ToArray();
        _ofMountWithDriver = Array.FindAll(_facts[(int)RestsOn.Mount], withDriver.Contains);
        IsWorkedByFigures = scope.Names.All(n => !withDriver.Contains(scope.SlotOf(n)) || worked.ContainsKey(n)
            || !_restsOn[scope.SlotOf(n)].HasFlag(RestsOn.Driver | RestsOn.Mount) || PlacedPairFacts.IsLookedUp(n));
    }

    // Where each fact comes from and what it rests on; those that are settled are put in place, and come back by their names.
    private Dictionary<string, FactValue> Settle(FactScope scope, FactTable settled,
        IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> worked, bool mounts)
    {
        var known = new Dictionary<string, FactValue>(StringComparer.Ordinal);
        foreach (var name in scope.Names)
        {
            _restsOn[scope.SlotOf(name)] = mounts ? scope.Find(name)!.RestsOn : OnPanel(scope.Find(name)!.RestsOn);
            _sources[scope.SlotOf(name)] = worked.GetValueOrDefault(name) is { } number ? s => number(s).ToBrief()
                : PlacedPairFacts.Other(name);
            if (scope.Find(name)!.RestsOn == RestsOn.Nothing && settled.Values.TryGetValue(name, out var value))
                _settled[scope.SlotOf(name)] = Brief.Of(known[name] = value);
        }
        return known;
    }

    // What the settled facts alone make false is never asked.
    private List<Entry> Asked(PairRules rules, FactScope scope, Dictionary<string, FactValue> known,
        IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> worked)
    {
        var asked = new List<Entry>();
        for (var i = 0; i < rules.Judged.Count; i++)
        {
            var rule = rules.Judged[i];
            if (rule.When?.Evaluate(new FactInputs(scope, known, absentIsOpen: true)).Truth != false)
                asked.Add(EntryOf(i, rule, new BriefRule(rule, Truth), scope, worked));
        }
        return asked;

        bool? Truth(string name) => known.GetValueOrDefault(name) is { Truth: { } truth, Unsure.Count: 0 } ? truth : null;
    }

    private Entry EntryOf(int order, Rule rule, BriefRule brief, FactScope scope,
        IReadOnlyDictionary<string, Func<PlacedPairFacts, LengthTerm>> worked)
    {
        var slots = brief.Names.Where(n => scope.Find(n)!.RestsOn != RestsOn.Nothing).Select(scope.SlotOf).ToArray();
        var restsOn = slots.Aggregate(RestsOn.Nothing, (all, slot) => all | _restsOn[slot]);
        var number = brief.IsPlain ? worked.GetValueOrDefault(rule.Fact.Names[0]) : null;
        return new Entry(order, brief)
        {
            Number = number,
            Gate = brief.Gate,
            GateNumber = brief.Gate is { IsOfKnown: true } ? worked.GetValueOrDefault(brief.Names.First()) : null,
            Slots = slots,
            Own = Array.FindAll(slots, s => _restsOn[s] == restsOn && (number is null || s != brief.Slot)),
            RestsOn = restsOn,
            IsLength = rule.Unit?.Dimension == Dimension.Metre,
            CanFail = rule.Fail is not null,
            IsSlow = brief.Names.Any(PlacedPairFacts.Slow.Contains),
        };
    }

    // A rule that can't fail says nothing of a pair that another rule fails; what is soon worked out may spare the rest.
    private static Entry[] Sorted(IEnumerable<Entry> entries) =>
        [.. entries.OrderBy(e => !e.CanFail).ThenBy(e => e.IsSlow).ThenBy(e => e.Order)];

    /// <summary>
    /// The rules, by their place in the order of judging, that rest on driver and place alone and say the same for both kinds.
    /// </summary>
    public static HashSet<int> Shared(PairRules rules, FactTable one, FactTable other)
    {
        return [.. Enumerable.Range(0, rules.Judged.Count).Where(i =>
            PairRules.RestsOnOf(rules.Judged[i]) == (RestsOn.Driver | RestsOn.Place) && IsSame(rules.Judged[i]))];

        bool IsSame(Rule rule) => rule.Names.Where(n => rule.Scope.Find(n)!.RestsOn == RestsOn.Nothing)
            .All(n => Brief.Of(one.Values.GetValueOrDefault(n)) == Brief.Of(other.Values.GetValueOrDefault(n)));
    }

    private static FirstLook? LookAt(Entry entry, Rule rule) => entry is { Number: not null, Gate: null, IsLength: true }
        && PlacedPairFacts.Spares.TryGetValue(rule.Fact.Names[0], out var spare)
        ? new FirstLook(entry.Order, entry.Rule, spare.There, spare.Needed) : null;

    private static RestsOn OnPanel(RestsOn on) => on.HasFlag(RestsOn.Mount) ? RestsOn.Driver | RestsOn.Place : on;

    /// <summary>
    /// Of the rules that rest on driver, mount and place the first that always applies and is of a number that is soon taken; else null.
    /// </summary>
    public FirstLook? FirstLook { get; }

    /// <summary>Facts of one pair by their slots, with the settled ones in place.</summary>
    public Brief[] Sheet() => (Brief[])_settled.Clone();

    /// <summary>Puts the facts into a sheet that rest on just this and are handed on.</summary>
    public void Work(RestsOn on, PlacedPairFacts pair, Span<Brief> sheet)
    {
        foreach (var slot in _facts[(int)on])
            sheet[slot] = _sources[slot](pair);
    }

    /// <summary>Takes them from a sheet.</summary>
    /// <param name="on">What they rest on.</param>
    /// <param name="sheet">Has them.</param>
    /// <param name="into">Room of an earlier taking that may be used again.</param>
    public Brief[] Taken(RestsOn on, ReadOnlySpan<Brief> sheet, Brief[]? into = null)
    {
        var slots = _facts[(int)on];
        var taken = into?.Length == slots.Length ? into : new Brief[slots.Length];
        for (var i = 0; i < slots.Length; i++)
            taken[i] = sheet[slots[i]];
        return taken;
    }

    /// <summary>Puts them back into another sheet.</summary>
    public void Put(RestsOn on, Brief[] taken, Span<Brief> sheet)
    {
        var slots = _facts[(int)on];
        for (var i = 0; i < slots.Length; i++)
            sheet[slots[i]] = taken[i];
    }

    /// <summary>
    /// Whether all that is asked of driver and mount together is worked out from the figures that <see cref="ChartedMount.Likeness"/> has.
    /// </summary>
    public bool IsWorkedByFigures { get; }

    /// <summary>What is handed on of a mount, in words, as far as it is asked together with a driver.</summary>
    public string HandedOn(ReadOnlySpan<Brief> sheet)
    {
        var words = new System.Text.StringBuilder();
        foreach (var slot in _ofMountWithDriver)
            words.Append(sheet[slot].ToString()).Append(' ');
        return words.ToString();
    }

    /// <summary>Whether any rule rests on just this.</summary>
    public bool Asks(RestsOn on) => _groups[(int)on].Length > 0;

    /// <summary>What the rules say that rest on just this; their own facts are worked out when first asked for.</summary>
    /// <param name="on">What they rest on.</param>
    /// <param name="pair">Where.</param>
    /// <param name="sheet">Has the facts that rest on less.</param>
    public PartialVerdict Ask(RestsOn on, PlacedPairFacts pair, Span<Brief> sheet) =>
        Ask(_groups[(int)on], pair, sheet, PartialVerdict.Nothing, PairVerdict.Worst);

    /// <summary>What the rules say that are shared with another kind.</summary>
    public PartialVerdict AskShared(PlacedPairFacts pair, Span<Brief> sheet) =>
        Ask(_shared, pair, sheet, PartialVerdict.Nothing, PairVerdict.Worst);

    /// <summary>What the rules say that rest on just this: of those that can fail alone, or of the others.</summary>
    public PartialVerdict Ask(RestsOn on, PlacedPairFacts pair, Span<Brief> sheet, bool canFail)
    {
        var (group, count) = (_groups[(int)on], _canFail[(int)on]);
        return Ask(canFail ? group.AsSpan(0, count) : group.AsSpan(count), pair, sheet, PartialVerdict.Nothing, PairVerdict.Worst);
    }

    /// <summary>False when a rule has failed that comes before all that rest on driver, mount and place.</summary>
    public bool MayAskPair(in PartialVerdict said) => said.Failed >= _firstOfPair;

    /// <summary>
    /// What all rules say that rest on driver, mount and place, put together with what others say; no more is asked once it is no better
    /// than the best.
    /// </summary>
    public PartialVerdict AskPair(PlacedPairFacts pair, Span<Brief> sheet, in PartialVerdict said, in PairVerdict best) =>
        Ask(_groups[(int)RestsOn.Pair], pair, sheet, said, best);

    private PartialVerdict Ask(ReadOnlySpan<Entry> entries, PlacedPairFacts pair, Span<Brief> sheet, PartialVerdict said,
        in PairVerdict best)
    {
        if (entries.IsEmpty)
            return said;
        _asking++;
        foreach (var entry in entries)
        {
            if (said.HasFailed && (!entry.CanFail || said.Failed < entry.Order))
                continue;
            if (Judge(entry, pair, sheet) is not { } verdict)
                continue;
            var margin = entry.IsLength ? PairVerdict.Nanometres(verdict.Margin) : PairVerdict.NoMargin;
            said = verdict.Status == Status.Fail ? said.WithFailed(entry.Order, margin) : said.With(verdict.Status, margin);
            // What is said so far only gets worse.
            if (!said.ToOutcome(_rules).IsBetterThan(best))
                break;
        }
        return said;
    }

    private Verdict? Judge(Entry entry, PlacedPairFacts pair, Span<Brief> sheet)
    {
        if (entry.Number is not { } number)
        {
            Work(entry, pair, sheet);
            return entry.Rule.Judge(sheet);
        }
        var doubt = Doubt.None;
        if (entry.Gate is var (slot, isOfKnown, isNegated))
        {
            if (entry.GateNumber is { } asked)
            {
                if (asked(pair).IsMissing != isNegated)
                    return null;
            }
            else
            {
                Work(entry, pair, sheet);
                ref readonly var gate = ref sheet[slot];
                if (!isOfKnown && !gate.IsKnown)
                {
                    var ifSo = number(pair);
                    return BriefRule.WhereOpen(entry.Rule.Judge(ifSo.Si, ifSo.Low, ifSo.High, ifSo.IsGuess ? Doubt.Guessed : doubt));
                }
                if ((isOfKnown ? gate.IsKnown : gate.IsTrue) == isNegated)
                    return null;
                doubt = isOfKnown ? Doubt.None : gate.Doubt;
            }
        }
        var term = number(pair);
        return entry.Rule.Judge(term.Si, term.Low, term.High, term.IsGuess ? Doubt.Guessed : doubt);
    }

    // Numbers that are asked for by themselves are not put into the sheet.
    private void Work(Entry entry, PlacedPairFacts pair, Span<Brief> sheet)
    {
        foreach (var slot in entry.Own)
        {
            if (_workedFor[slot] == _asking)
                continue;
            sheet[slot] = _sources[slot](pair);
            _workedFor[slot] = _asking;
        }
    }
}
