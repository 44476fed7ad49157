using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>
/// The rules for one kind of pair, such as a woofer on a spacer: those that its settled facts rule out are gone, and the rest are sorted by what they
/// rest on, so that each is asked once for whatever decides it.
/// </summary>
internal sealed class KindRules
{
    private readonly Entry[] _all;
    private readonly Dictionary<RestsOn, Entry[]> _groups = [];
    private readonly Dictionary<RestsOn, Entry[]> _harmless = [];
    private readonly Func<Spot, Brief>[] _sources;
    private readonly Dictionary<RestsOn, int[]> _facts = [];
    private readonly Brief[] _settled;
    private readonly RestsOn[] _restsOn;

    private sealed record Entry(int Order, BriefRule Rule, int[] Slots, RestsOn RestsOn, bool IsLength);

    public KindRules(PairRules rules, FactTable settled, IReadOnlyDictionary<string, Func<Spot, Brief>> worked)
    {
        var scope = rules.Judged.Count > 0 ? rules.Judged[0].Scope : new FactScope(Subject.Position, []);
        _sources = new Func<Spot, Brief>[scope.Names.Count];
        _settled = new Brief[scope.Names.Count];
        _restsOn = new RestsOn[scope.Names.Count];
        var known = new Dictionary<string, FactValue>(StringComparer.Ordinal);
        foreach (var name in scope.Names)
        {
            _restsOn[scope.SlotOf(name)] = scope.Find(name)!.RestsOn;
            _sources[scope.SlotOf(name)] = worked.GetValueOrDefault(name) ?? (s => s.Other(name));
            if (scope.Find(name)!.RestsOn == RestsOn.Nothing && settled.Values.TryGetValue(name, out var value))
                _settled[scope.SlotOf(name)] = Brief.Of(known[name] = value);
        }
        var asked = new List<Entry>();
        for (var i = 0; i < rules.Judged.Count; i++)
        {
            var rule = rules.Judged[i];
            // What the settled facts alone make false is never asked.
            if (rule.When?.Evaluate(new FactInputs(scope, known, absentIsOpen: true)).Truth == false)
                continue;
            var slots = rule.Names.Where(n => scope.Find(n)!.RestsOn != RestsOn.Nothing).Select(scope.SlotOf).ToArray();
            asked.Add(new Entry(i, new BriefRule(rule), slots, PairRules.RestsOnOf(rule), rule.Unit?.Dimension == Dimension.Metre));
        }
        // A rule that can't fail says nothing of a pair that another rule fails.
        asked = [.. asked.OrderBy(e => rules.Judged[e.Order].Fail is null).ThenBy(e => e.Order)];
        _all = [.. asked];
        foreach (var group in asked.GroupBy(e => e.RestsOn))
            _groups[group.Key] = [.. group];
        foreach (var group in asked.Where(e => rules.Judged[e.Order].Fail is null).GroupBy(e => e.RestsOn))
            _harmless[group.Key] = [.. group];
        // What a rule asks that rests on more has to be handed on; what rests on a driver or a place alone is always.
        foreach (var group in asked.SelectMany(e => e.Slots.Where(s => _restsOn[s] != e.RestsOn || _restsOn[s] is RestsOn.Driver or RestsOn.Place)).Distinct().GroupBy(s => _restsOn[s]))
            _facts[group.Key] = [.. group];
    }

    /// <summary>Facts of one spot by their slots, with the settled ones in place.</summary>
    public Brief[] Sheet() => (Brief[])_settled.Clone();

    /// <summary>Puts the facts into a sheet that rest on just this and are handed on.</summary>
    public void Work(RestsOn on, Spot spot, Span<Brief> sheet)
    {
        foreach (var slot in _facts.GetValueOrDefault(on) ?? [])
            sheet[slot] = _sources[slot](spot);
    }

    /// <summary>Takes them from a sheet.</summary>
    public Brief[] Taken(RestsOn on, ReadOnlySpan<Brief> sheet)
    {
        var slots = _facts.GetValueOrDefault(on) ?? [];
        var taken = new Brief[slots.Length];
        for (var i = 0; i < slots.Length; i++)
            taken[i] = sheet[slots[i]];
        return taken;
    }

    /// <summary>Puts them back into another sheet.</summary>
    public void Put(RestsOn on, Brief[] taken, Span<Brief> sheet)
    {
        if (taken.Length == 0)
            return;
        var slots = _facts[on];
        for (var i = 0; i < slots.Length; i++)
            sheet[slots[i]] = taken[i];
    }

    /// <summary>What the rules say that rest on just this, in order, until one fails; their own facts are worked out when first asked for.</summary>
    /// <param name="on">What they rest on.</param>
    /// <param name="spot">Where.</param>
    /// <param name="sheet">Has the facts that rest on less.</param>
    public Partial Ask(RestsOn on, Spot spot, Span<Brief> sheet) =>
        _groups.TryGetValue(on, out var group) ? Ask(group, spot, sheet, on, exactly: true) : Partial.Nothing;

    /// <summary>The same of those that can fail alone, or of the others.</summary>
    public Partial Ask(RestsOn on, Spot spot, Span<Brief> sheet, bool canFail)
    {
        if (!_groups.TryGetValue(on, out var group))
            return Partial.Nothing;
        var harmless = _harmless.GetValueOrDefault(on) ?? [];
        return canFail ? Ask(group.AsSpan(0, group.Length - harmless.Length), spot, sheet, on, exactly: true) : Ask(harmless, spot, sheet, on, exactly: true);
    }

    /// <summary>What all rules say, in order, until one fails.</summary>
    /// <param name="spot">Where.</param>
    /// <param name="sheet">Has the facts that rest on the driver alone, and on the place alone.</param>
    public Partial AskAll(Spot spot, Span<Brief> sheet) => Ask(_all, spot, sheet, RestsOn.Pair, exactly: false);

    private Partial Ask(ReadOnlySpan<Entry> entries, Spot spot, Span<Brief> sheet, RestsOn on, bool exactly)
    {
        var said = Partial.Nothing;
        Span<bool> worked = stackalloc bool[sheet.Length];
        foreach (var entry in entries)
        {
            foreach (var slot in entry.Slots)
            {
                if (worked[slot] || (exactly ? _restsOn[slot] != on : _restsOn[slot] is RestsOn.Driver or RestsOn.Place))
                    continue;
                sheet[slot] = _sources[slot](spot);
                worked[slot] = true;
            }
            if (!Ask(entry, sheet, ref said))
                break;
        }
        return said;
    }

    private static bool Ask(Entry entry, ReadOnlySpan<Brief> sheet, ref Partial said)
    {
        if (entry.Rule.Judge(sheet) is not var (status, metres))
            return true;
        var margin = entry.IsLength ? Outcome.Nanometres(metres) : Outcome.NoMargin;
        if (status == Status.Fail)
        {
            said = new Partial(Status.Fail, entry.Order, margin, said.Least);
            return false;
        }
        said = said.With(status, margin);
        return true;
    }
}
