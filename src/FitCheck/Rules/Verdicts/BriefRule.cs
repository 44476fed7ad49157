using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>
/// A rule made ready to judge facts in brief: the status and the margin of <see cref="Judgement"/>, and nothing that tells why. That both agree is
/// proved by tests over random facts; a change of one is a change of the other.
/// </summary>
internal sealed class BriefRule
{
    private readonly Expression? _when;
    private readonly Expression _fact;
    private readonly (Status Status, Side Side, Expression Bound)[] _limits;
    private readonly bool[] _isConstant;
    private readonly Brief[] _bounds;
    private readonly double _scale;
    // Where all limits are lower ones that stand in the rule: the highest of them and what is above it for certain, and the one of failing.
    private readonly double _floor;
    private readonly double _clear = double.PositiveInfinity;
    private readonly double _failing;
    private readonly double _lost = double.NegativeInfinity;
    private readonly int _slot;
    private readonly bool _canWarn;
    private readonly bool _canFail;
    private readonly bool _isOfEntries;
    private readonly string[] _ofCondition;
    private readonly string[] _others;

    /// <param name="rule">The rule.</param>
    /// <param name="settled">Truths that are the same for whatever is judged; see <see cref="Expression.Given"/>.</param>
    public BriefRule(Rule rule, Func<string, bool?>? settled = null)
    {
        var when = settled is null ? rule.When : rule.When?.Given(settled);
        _when = when?.Constant?.Truth == true ? null : when;
        (_fact, _canWarn, _canFail) = (rule.Fact, rule.Warn is not null, rule.Fail is not null);
        _isOfEntries = rule.Subject.IsOfEntries();
        _ofCondition = [.. _when?.Names ?? []];
        _limits = [.. Limit.AllOf(rule).Select(l => (l.Status, l.Side, l.Bound))];
        _others = [.. _fact.Names.Concat(_limits.SelectMany(l => l.Bound.Names)).Distinct(StringComparer.Ordinal).Except(_ofCondition, StringComparer.Ordinal)];
        _isConstant = Array.ConvertAll(_limits, l => l.Bound.Constant is not null);
        _bounds = Array.ConvertAll(_limits, l => Brief.Of(l.Bound.Constant));
        _scale = Comparison.ScaleOf(rule.Fact.Type.Dimension);
        _slot = _fact.Slot;
        if (_limits.Length == 0 || !Array.TrueForAll(_limits, l => l.Side == Side.Below) || !Array.TrueForAll(_bounds, b => b.IsKnown && b.Number.IsExact))
            return;
        _floor = _bounds.Max(b => b.Number.Value);
        _clear = _floor + Comparison.MostNoise(_floor, _scale);
        if (_limits.Count(l => l.Status == Status.Fail) == 1)
        {
            _failing = _bounds[Array.FindIndex(_limits, l => l.Status == Status.Fail)].Number.Value;
            _lost = _failing - Comparison.MostNoise(_failing, _scale);
        }
    }

    /// <summary>True when, where it applies, its fact decides alone: a number with limits that stand in the rule.</summary>
    public bool IsPlain => _slot >= 0 && _clear < double.PositiveInfinity && (_when is null || Gate is not null);

    /// <summary>Where facts in brief have its fact, when it is one and no more; else -1.</summary>
    public int Slot => _slot;

    /// <summary>When it applies, if one fact tells; null when it always does, and when more is asked.</summary>
    public Gate? Gate => _when?.Gate;

    /// <summary>Whether a plain rule's fact keeps all limits or breaks that of failing, both for certain; null where it takes a closer look.</summary>
    /// <param name="value">SI; not-a-number where it is unknown.</param>
    /// <param name="halfWidth">By how much it may be off.</param>
    /// <param name="margin">To the limit that counts.</param>
    public bool? Keeps(double value, double halfWidth, out double margin)
    {
        bool? keeps = value - halfWidth > _clear ? true : value + halfWidth < _lost ? false : null;
        margin = keeps == false ? value - _failing : value - _floor;
        return keeps;
    }

    /// <summary>What a plain rule says of its fact where it applies.</summary>
    /// <param name="value">SI; not-a-number where it is unknown.</param>
    /// <param name="halfWidth">By how much it may be off.</param>
    /// <param name="isGuess">Whether a datum under it, or under its condition, is estimated.</param>
    public (Status Status, double Margin) Judge(double value, double halfWidth, bool isGuess)
    {
        if (value - halfWidth > _clear)
            return (isGuess ? Status.Measure : Status.Pass, value - _floor);
        if (value + halfWidth < _lost)
            return (Status.Fail, value - _failing);
        return double.IsNaN(value) ? (Status.Measure, double.NaN) : Judge([], Brief.Of(Uncertain.Within(value, halfWidth), isGuess), isGuess);
    }

    /// <summary>The facts that it asks for, each once.</summary>
    public IEnumerable<string> Names => _ofCondition.Concat(_others);

    /// <summary>Status and margin (SI; not-a-number where there is none); null when the rule does not apply. Not to be called on several threads at once.</summary>
    /// <param name="facts">By their slots in the rule's scope.</param>
    public (Status Status, double Margin)? Judge(ReadOnlySpan<Brief> facts)
    {
        if (_when is null)
            return Judge(facts, isGuess: false);
        var when = _when.Weigh(facts);
        return IsLeftOut(when) ? null : when.IsKnown ? Judge(facts, when.IsUnsure) : (Status.Measure, double.NaN);
    }

    /// <summary>The same of a table, which is asked for the rest only where the condition holds.</summary>
    public (Status Status, double Margin)? Judge(BriefTable table)
    {
        if (_when is null)
            return Judge(table.With(_others), isGuess: false);
        var when = _when.Weigh(table.With(_ofCondition));
        return IsLeftOut(when) ? null : when.IsKnown ? Judge(table.With(_others), when.IsUnsure) : (Status.Measure, double.NaN);
    }

    private static bool IsLeftOut(in Brief when) => when is { IsKnown: true, IsTrue: false };

    private (Status Status, double Margin) Judge(ReadOnlySpan<Brief> facts, bool isGuess)
    {
        if (_slot >= 0)
            return Judge(facts, facts[_slot], isGuess);
        var fact = _fact.Weigh(facts);
        return Judge(facts, fact, isGuess);
    }

    private (Status Status, double Margin) Judge(ReadOnlySpan<Brief> facts, in Brief fact, bool isGuess)
    {
        if (!fact.IsKnown)
            return (Status.Measure, double.NaN);
        var guessed = fact.IsUnsure || isGuess;
        if (fact.Number.Low > _clear)
            return (guessed ? Status.Measure : Status.Pass, fact.Number.Value - _floor);
        if (fact.Number.High < _lost)
            return (Status.Fail, fact.Number.Value - _failing);
        var open = false;
        var (fails, perhapsFails, warns, perhapsWarns, any) = (Nearest.None, Nearest.None, Nearest.None, Nearest.None, Nearest.None);
        for (var i = 0; i < _limits.Length; i++)
        {
            if (!_isConstant[i])
                _bounds[i] = _limits[i].Bound.Weigh(facts);
            guessed |= _bounds[i].IsUnsure;
            open |= !_bounds[i].IsKnown;
            if (!_bounds[i].IsKnown)
                continue;
            var (broken, margin) = (IsBroken(i, fact), Margin(i, fact));
            any.Add(margin);
            if (broken == false)
                continue;
            if (_limits[i].Status == Status.Fail)
                (broken is null ? ref perhapsFails : ref fails).Add(margin);
            else
                (broken is null ? ref perhapsWarns : ref warns).Add(margin);
        }
        if (fails.Exists)
            return (Status.Fail, fails.Margin);
        if (open)
            return (Status.Measure, double.NaN);
        var doubtful = guessed ? Status.Measure : Status.Warn;
        if (perhapsFails.Exists)
            return (_canWarn && (_isOfEntries || !(perhapsFails.Margin < 0)) ? doubtful : Status.Measure, perhapsFails.Margin);
        if (warns.Exists)
            return (Status.Warn, warns.Margin);
        if (perhapsWarns.Exists && (guessed || !_canFail || perhapsWarns.Margin < 0))
            return (doubtful, perhapsWarns.Margin);
        return (guessed ? Status.Measure : Status.Pass, any.Margin);
    }

    private bool? IsBroken(int limit, in Brief fact) => _limits[limit].Side switch
    {
        Side.Below => Comparison.Less(fact.Number, _bounds[limit].Number, _scale),
        Side.Above => Comparison.Less(_bounds[limit].Number, fact.Number, _scale),
        _ => fact.IsTrue == _bounds[limit].IsTrue && fact.Word == _bounds[limit].Word,
    };

    private double Margin(int limit, in Brief fact)
    {
        if (_limits[limit].Side == Side.Is)
            return double.NaN;
        var (value, bound) = (fact.Number.Value, _bounds[limit].Number.Value);
        return Comparison.Near(value, bound, _scale) ? 0 : _limits[limit].Side == Side.Below ? value - bound : bound - value;
    }

    // The margin of the nearest of some limits; not-a-number where it has none, and where there is no limit.
    private struct Nearest
    {
        public static readonly Nearest None = new() { Margin = double.NaN };

        private double _by;

        public bool Exists { get; private set; }

        public double Margin { get; private set; }

        public void Add(double margin)
        {
            var by = double.IsNaN(margin) ? 0 : margin;
            if (Exists && !(by < _by))
                return;
            (Exists, Margin, _by) = (true, margin, by);
        }
    }
}
