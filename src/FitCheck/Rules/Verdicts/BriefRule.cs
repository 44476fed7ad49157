using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>
/// A rule made ready to judge facts in brief: whether it applies, what its fact and its limits are, and what <see cref="Verdict"/> says of
/// them; nothing that tells why. Not to be used on several threads at once.
/// </summary>
internal sealed class BriefRule
{
    private readonly Expression? _when;
    private readonly Expression _fact;
    private readonly Expression?[] _bounds;
    private readonly LimitValue[] _limits;
    private readonly Manner _manner;
    private readonly Floor _floor;
    private readonly int _slot;
    private readonly string[] _ofCondition;
    private readonly string[] _others;

    /// <param name="rule">The rule.</param>
    /// <param name="settled">Truths that are the same for whatever is judged; see <see cref="Expression.Given"/>.</param>
    public BriefRule(Rule rule, Func<string, bool?>? settled = null)
    {
        var when = settled is null ? rule.When : rule.When?.Given(settled);
        _when = when?.Constant?.Truth == true ? null : when;
        _fact = rule.Fact;
        _slot = _fact.Slot;
        _manner = Manner.Of(rule);
        _ofCondition = [.. _when?.Names ?? []];
        var limits = Limit.AllOf(rule).ToArray();
        _others = [.. _fact.Names.Concat(limits.SelectMany(l => l.Bound.Names)).Distinct(StringComparer.Ordinal)
            .Except(_ofCondition, StringComparer.Ordinal)];
        // Those that stand in the rule are worked out here, once.
        _bounds = Array.ConvertAll(limits, l => l.Bound.Constant is null ? l.Bound : null);
        _limits = Array.ConvertAll(limits, l => new LimitValue(l.Status, l.Side, Brief.Of(l.Bound.Constant)));
        _floor = new Floor(_limits, _manner);
    }

    /// <summary>True when, where it applies, its fact decides alone: a number with limits that stand in the rule.</summary>
    public bool IsPlain => _slot >= 0 && _floor.Exists && (_when is null || Gate is not null);

    /// <summary>Where facts in brief have its fact, when it is one and no more; else -1.</summary>
    public int Slot => _slot;

    /// <summary>When it applies, if one fact tells; null when it always does, and when more is asked.</summary>
    public Gate? Gate => _when?.Gate;

    /// <summary>
    /// Whether a plain rule's fact keeps all limits or breaks that of failing, both for certain; null where it takes a closer look.
    /// </summary>
    /// <param name="value">SI; not-a-number where it is unknown.</param>
    /// <param name="low">The least that it may be.</param>
    /// <param name="high">The most.</param>
    /// <param name="margin">To the limit that decides; meant only where there is an answer.</param>
    public bool? Keeps(double value, double low, double high, out double margin)
    {
        var keeps = _floor.Keeps(low, high);
        margin = _floor.Margin(keeps != false, value);
        return keeps;
    }

    /// <summary>What a plain rule says of its fact where it applies.</summary>
    /// <param name="value">SI; not-a-number where it is unknown.</param>
    /// <param name="low">The least that it may be.</param>
    /// <param name="high">The most.</param>
    /// <param name="doubt">About a datum under it, or under its condition.</param>
    public Verdict Judge(double value, double low, double high, Doubt doubt)
    {
        if (_floor.Settles(value, low, high, doubt, out var verdict))
            return verdict;
        return Verdict.Of(Brief.Of(new Uncertain(value, low, high, Math.Max(high - value, value - low)), doubt), _limits, _manner, doubt);
    }

    /// <summary>
    /// What is said where nobody knows whether the rule applies: what passes if it does is nothing to ask about.
    /// </summary>
    public static Verdict WhereOpen(in Verdict ifSo) => ifSo.Status == Findings.Status.Pass ? ifSo : Verdict.Unknown;

    /// <summary>The facts that it asks for, each once.</summary>
    public IEnumerable<string> Names => _ofCondition.Concat(_others);

    /// <summary>What it says; null when it does not apply.</summary>
    /// <param name="facts">By their slots in the rule's scope.</param>
    public Verdict? Judge(ReadOnlySpan<Brief> facts)
    {
        if (_when is null)
            return Judge(facts, Doubt.None);
        var when = _when.Weigh(facts);
        return !when.IsKnown ? WhereOpen(Judge(facts, Doubt.None)) : when.IsTrue ? Judge(facts, when.Doubt) : null;
    }

    /// <summary>What it says of the facts of a table, which is asked for the rest only where the condition holds.</summary>
    public Verdict? Judge(BriefTable table)
    {
        if (_when is null)
            return Judge(table.With(_others), Doubt.None);
        var when = _when.Weigh(table.With(_ofCondition));
        return !when.IsKnown ? WhereOpen(Judge(table.With(_others), Doubt.None))
            : when.IsTrue ? Judge(table.With(_others), when.Doubt) : null;
    }

    /// <summary>
    /// How far the fact is from the nearest limit of failing, SI, negative beyond it; not-a-number where there is none or something is
    /// unknown. Meant only where the rule applies.
    /// </summary>
    public double Room(BriefTable table)
    {
        var facts = table.With(_others);
        var fact = _slot >= 0 ? facts[_slot] : _fact.Weigh(facts);
        var room = double.NaN;
        for (var i = 0; i < _limits.Length; i++)
        {
            var limit = _bounds[i] is { } bound ? _limits[i] with { Value = bound.Weigh(facts) } : _limits[i];
            if (limit.Status == Status.Fail && limit.Margin(fact, _manner.Scale) is var margin && !(margin >= room))
                room = double.IsNaN(margin) ? room : margin;
        }
        return room;
    }

    private Verdict Judge(ReadOnlySpan<Brief> facts, Doubt condition)
    {
        if (_slot >= 0)
            return Judge(facts, facts[_slot], condition);
        var fact = _fact.Weigh(facts);
        return Judge(facts, fact, condition);
    }

    private Verdict Judge(ReadOnlySpan<Brief> facts, in Brief fact, Doubt condition)
    {
        if (fact.IsKnown && _floor.Settles(fact.Number.Value, fact.Number.Low, fact.Number.High, fact.Doubt.Or(condition), out var verdict))
            return verdict;
        for (var i = 0; i < _limits.Length; i++)
        {
            if (_bounds[i] is { } bound)
                _limits[i] = _limits[i] with { Value = bound.Weigh(facts) };
        }
        return Verdict.Of(fact, _limits, _manner, condition);
    }
}
