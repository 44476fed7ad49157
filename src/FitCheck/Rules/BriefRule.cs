using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;

namespace FitCheck.Rules;

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
    private readonly bool _canWarn;
    private readonly bool _canFail;
    private readonly string[] _ofCondition;
    private readonly string[] _others;

    /// <param name="rule">The rule.</param>
    /// <param name="settled">Truths that are the same for whatever is judged; see <see cref="Expression.Given"/>.</param>
    public BriefRule(Rule rule, Func<string, bool?>? settled = null)
    {
        var when = settled is null ? rule.When : rule.When?.Given(settled);
        _when = when?.Constant?.Truth == true ? null : when;
        (_fact, _canWarn, _canFail) = (rule.Fact, rule.Warn is not null, rule.Fail is not null);
        _ofCondition = [.. _when?.Names ?? []];
        _others = [.. rule.Names.Except(_ofCondition, StringComparer.Ordinal)];
        _limits = [.. Limit.AllOf(rule).Select(l => (l.Status, l.Side, l.Bound))];
        _isConstant = Array.ConvertAll(_limits, l => l.Bound.Constant is not null);
        _bounds = Array.ConvertAll(_limits, l => Brief.Of(l.Bound.Constant));
        _scale = Comparison.ScaleOf(rule.Fact.Type.Dimension);
    }

    /// <summary>The facts that it asks for, each once.</summary>
    public IEnumerable<string> Names => _ofCondition.Concat(_others);

    /// <summary>Status and margin (SI; not-a-number where there is none); null when the rule does not apply. Not to be called on several threads at once.</summary>
    /// <param name="facts">By their slots in the rule's scope.</param>
    public (Status Status, double Margin)? Judge(ReadOnlySpan<Brief> facts)
    {
        var when = When(facts);
        return IsLeftOut(when) ? null : Judge(facts, when);
    }

    /// <summary>The same of a table, which is asked for the rest only where the condition holds.</summary>
    public (Status Status, double Margin)? Judge(BriefTable table)
    {
        var when = When(table.With(_ofCondition));
        return IsLeftOut(when) ? null : Judge(table.With(_others), when);
    }

    private Brief When(ReadOnlySpan<Brief> facts) => _when is { } condition ? condition.Weigh(facts) : Brief.Of(true, unsure: false);

    private static bool IsLeftOut(in Brief when) => when is { IsKnown: true, IsTrue: false };

    private (Status Status, double Margin) Judge(ReadOnlySpan<Brief> facts, in Brief when)
    {
        if (!when.IsKnown)
            return (Status.Measure, double.NaN);
        var fact = _fact.Weigh(facts);
        if (!fact.IsKnown)
            return (Status.Measure, double.NaN);
        var guessed = fact.IsUnsure || when.IsUnsure;
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
            return (_canWarn ? doubtful : Status.Measure, perhapsFails.Margin);
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
