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
    private readonly Rule _rule;
    private readonly (Status Status, Side Side, Expression Bound)[] _limits;
    private readonly Brief[] _bounds;
    private readonly double _scale;
    private readonly string[] _ofCondition;
    private readonly string[] _others;

    public BriefRule(Rule rule)
    {
        _rule = rule;
        _ofCondition = [.. rule.When?.Names ?? []];
        _others = [.. rule.Names.Except(_ofCondition, StringComparer.Ordinal)];
        _limits = [.. Limit.AllOf(rule).Select(l => (l.Status, l.Side, l.Bound))];
        _bounds = new Brief[_limits.Length];
        _scale = Comparison.ScaleOf(rule.Fact.Type.Dimension);
    }

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

    private Brief When(ReadOnlySpan<Brief> facts) => _rule.When is { } condition ? condition.Weigh(facts) : Brief.Of(true, unsure: false);

    private static bool IsLeftOut(in Brief when) => when is { IsKnown: true, IsTrue: false };

    private (Status Status, double Margin) Judge(ReadOnlySpan<Brief> facts, in Brief when)
    {
        if (!when.IsKnown)
            return (Status.Measure, double.NaN);
        var fact = _rule.Fact.Weigh(facts);
        if (!fact.IsKnown)
            return (Status.Measure, double.NaN);
        var guessed = fact.IsUnsure || when.IsUnsure;
        var open = false;
        for (var i = 0; i < _limits.Length; i++)
        {
            _bounds[i] = _limits[i].Bound.Weigh(facts);
            guessed |= _bounds[i].IsUnsure;
            open |= !_bounds[i].IsKnown;
        }
        return Compare(fact, guessed, open);
    }

    private (Status, double) Compare(in Brief fact, bool guessed, bool open)
    {
        if (Nearest(fact, Status.Fail, true) is { } failed)
            return (Status.Fail, failed);
        if (open)
            return (Status.Measure, double.NaN);
        var doubtful = guessed ? Status.Measure : Status.Warn;
        if (Nearest(fact, Status.Fail, null) is { } perhaps)
            return (_rule.Warn is null ? Status.Measure : doubtful, perhaps);
        if (Nearest(fact, Status.Warn, true) is { } warned)
            return (Status.Warn, warned);
        if (Nearest(fact, Status.Warn, null) is { } maybe && (guessed || _rule.Fail is null || maybe < 0))
            return (doubtful, maybe);
        return (guessed ? Status.Measure : Status.Pass, Nearest(fact, null, null, any: true) ?? double.NaN);
    }

    // The margin of the nearest limit with this status that is broken, not broken, or perhaps broken (null); not-a-number where the nearest has none.
    private double? Nearest(in Brief fact, Status? status, bool? broken, bool any = false)
    {
        double? nearest = null;
        var least = double.PositiveInfinity;
        for (var i = 0; i < _limits.Length; i++)
        {
            if (!_bounds[i].IsKnown || (!any && (_limits[i].Status != status || IsBroken(i, fact) != broken)))
                continue;
            var margin = Margin(i, fact);
            var by = double.IsNaN(margin) ? 0 : margin;
            if (nearest is null || by < least)
                (nearest, least) = (margin, by);
        }
        return nearest;
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
}
