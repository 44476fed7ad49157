using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>What a rule asks of every subject, beside the values of its limits.</summary>
/// <param name="CanWarn">Whether it has a limit of warning.</param>
/// <param name="CanFail">Whether it has one of failing.</param>
/// <param name="IsOfEntries">Whether it is about what an entry says of itself, which nobody can measure.</param>
/// <param name="Scale">By which rounding is measured; see <see cref="Comparison.ScaleOf"/>.</param>
internal readonly record struct Manner(bool CanWarn, bool CanFail, bool IsOfEntries, double Scale)
{
    public static Manner Of(Rule rule) =>
        new(rule.Warn is not null, rule.Fail is not null, rule.Subject.IsOfEntries(), Comparison.ScaleOf(rule.Fact.Type.Dimension));
}

/// <summary>One limit of a rule with what it is for one subject.</summary>
internal readonly record struct LimitValue(Status Status, LimitSide Side, Brief Value)
{
    /// <summary>Whether a value is beyond it: certainly, certainly not, or null when bounds overlap. Both must be known.</summary>
    public bool? IsBroken(in Brief value, double scale) => Side switch
    {
        LimitSide.Below => Comparison.Less(value.Number, Value.Number, scale),
        LimitSide.Above => Comparison.Less(Value.Number, value.Number, scale),
        _ => value.IsTrue == Value.IsTrue && value.Word == Value.Word,
    };

    /// <summary>
    /// Distance in SI, positive on the good side and zero on the limit itself; not-a-number for truths, words and unknowns.
    /// </summary>
    public double Margin(in Brief value, double scale)
    {
        if (Side == LimitSide.Is || !value.IsKnown || !Value.IsKnown)
            return double.NaN;
        var (number, limit) = (value.Number.Value, Value.Number.Value);
        return Comparison.Near(number, limit, scale) ? 0 : Side == LimitSide.Below ? number - limit : limit - number;
    }
}

/// <summary>
/// What a rule says of a value. Here alone a status is decided, for check, chart, lint and suggest alike; the evidence is gathered
/// afterwards for whoever shows it.
/// </summary>
/// <param name="Status">The status.</param>
/// <param name="Margin">Distance to the deciding limit in SI, negative beyond it; not-a-number when the value or the limit is unknown or
/// no number.</param>
/// <param name="Deciding">Which limit decided; for a pass the nearest, for an unknown value the strictest; -1 for none.</param>
/// <param name="InDoubt">Whether only the tolerances of good data leave it open that the limit is kept: a warning, or a failure that they
/// could still save.</param>
internal readonly record struct Verdict(Status Status, double Margin, int Deciding, bool InDoubt = false)
{
    /// <summary>Nothing is known on which the rule could decide.</summary>
    public static readonly Verdict Unknown = new(Status.Measure, double.NaN, -1);

    /// <summary>
    /// The worst case must settle on which side of the outermost limit a value lies: one that is nominally beyond the limit of failing
    /// never goes together, and where its tolerances could save it, it waits for a measurement (but an entry that contradicts itself is
    /// told at once). A warning short of a failure goes by the nominal value: a margin that is good enough is not made a warning by the
    /// tolerances of good data. Bounds that hold all that a missing datum can be leave open only what lies between them.
    /// </summary>
    /// <param name="value">What is judged.</param>
    /// <param name="limits">Those that fail first, then those that warn.</param>
    /// <param name="manner">Of the rule.</param>
    /// <param name="condition">How sure it is that the rule applies.</param>
    public static Verdict Of(in Brief value, ReadOnlySpan<LimitValue> limits, in Manner manner, Doubt condition)
    {
        if (!value.IsKnown)
            return new(Status.Measure, double.NaN, Strictest(limits));
        var doubt = value.Doubt.Or(condition);
        var open = -1;
        var (fails, perhapsFails, warns, perhapsWarns, any) = (Nearest.None, Nearest.None, Nearest.None, Nearest.None, Nearest.None);
        for (var i = 0; i < limits.Length; i++)
        {
            ref readonly var limit = ref limits[i];
            if (!limit.Value.IsKnown)
            {
                open = open < 0 ? i : open;
                continue;
            }
            doubt = doubt.Or(limit.Value.Doubt);
            var (broken, margin) = (limit.IsBroken(value, manner.Scale), limit.Margin(value, manner.Scale));
            any.Add(i, margin);
            if (broken == false)
                continue;
            if (limit.Status == Status.Fail)
                (broken is null ? ref perhapsFails : ref fails).Add(i, margin);
            else
                (broken is null ? ref perhapsWarns : ref warns).Add(i, margin);
        }
        if (fails.Exists)
            return new(Status.Fail, fails.Margin, fails.Limit);
        if (open >= 0)
            return new(Status.Measure, double.NaN, open);
        var doubtful = doubt == Doubt.None ? Status.Warn : Status.Measure;
        if (perhapsFails.Exists)
        {
            var isBeyond = perhapsFails.Margin < 0;
            var status = manner.CanWarn && (!isBeyond || manner.IsOfEntries) ? doubtful : Status.Measure;
            var canBeSaved = doubt == Doubt.None && isBeyond && !value.Number.IsExact;
            return new(status, perhapsFails.Margin, perhapsFails.Limit, status == Status.Warn || canBeSaved);
        }
        if (warns.Exists)
            return new(Status.Warn, warns.Margin, warns.Limit);
        if (perhapsWarns.Exists && (doubt != Doubt.None || !manner.CanFail || perhapsWarns.Margin < 0))
            return new(doubtful, perhapsWarns.Margin, perhapsWarns.Limit, !manner.CanFail && doubtful == Status.Warn);
        return Kept(any.Margin, any.Limit, doubt);
    }

    /// <summary>Every limit is kept for certain.</summary>
    internal static Verdict Kept(double margin, int nearest, Doubt doubt) =>
        new(doubt == Doubt.Guessed ? Status.Measure : Status.Pass, margin, nearest);

    private static int Strictest(ReadOnlySpan<LimitValue> limits)
    {
        for (var i = 0; i < limits.Length; i++)
        {
            if (limits[i].Status == Status.Warn)
                return i;
        }
        return limits.Length > 0 ? 0 : -1;
    }

    // The nearest of some limits; the first of those that have no margin.
    private struct Nearest
    {
        public static readonly Nearest None = new() { Margin = double.NaN, Limit = -1 };

        private double _by;

        public readonly bool Exists => Limit >= 0;

        public int Limit { get; private set; }

        public double Margin { get; private set; }

        public void Add(int limit, double margin)
        {
            var by = double.IsNaN(margin) ? 0 : margin;
            if (Exists && !(by < _by))
                return;
            (Limit, Margin, _by) = (limit, margin, by);
        }
    }
}

/// <summary>
/// <see cref="Verdict.Of"/> where all limits are lower ones that stand in the rule as exact numbers, of a value that is beyond them by
/// more than rounding whatever it may be: above the highest of them none is broken, or perhaps broken, and that one is the nearest; below
/// the only one of failing that one is broken, and nothing else is asked. A value between these bounds is left to <see cref="Verdict.Of"/>.
/// </summary>
internal readonly struct Floor
{
    // The highest limit and what is above it for certain; the limit of failing and what is below it for certain.
    private readonly double _highest;
    private readonly double _clear = double.PositiveInfinity;
    private readonly double _failing;
    private readonly double _lost = double.NegativeInfinity;
    private readonly int _highestAt;
    private readonly int _failingAt;

    public Floor(ReadOnlySpan<LimitValue> limits, in Manner manner)
    {
        var fails = 0;
        for (var i = 0; i < limits.Length; i++)
        {
            if (limits[i] is not { Side: LimitSide.Below, Value: { IsKnown: true, Doubt: Doubt.None, Number.IsExact: true } })
                return;
            if (limits[i].Value.Number.Value > limits[_highestAt].Value.Number.Value)
                _highestAt = i;
            if (limits[i].Status == Status.Fail)
                (_failingAt, fails) = (i, fails + 1);
        }
        if (limits.Length == 0)
            return;
        _highest = limits[_highestAt].Value.Number.Value;
        _clear = _highest + Comparison.MostNoise(_highest, manner.Scale);
        if (fails != 1)
            return;
        _failing = limits[_failingAt].Value.Number.Value;
        _lost = _failing - Comparison.MostNoise(_failing, manner.Scale);
    }

    /// <summary>True when there is such a floor.</summary>
    public bool Exists => _clear < double.PositiveInfinity;

    /// <summary>
    /// Whether a value within bounds keeps all limits or breaks that of failing, both for certain; null where it takes a closer look.
    /// </summary>
    public bool? Keeps(double low, double high) => low > _clear ? true : high < _lost ? false : null;

    /// <summary>The margin to the limit that decides.</summary>
    public double Margin(bool keeps, double value) => value - (keeps ? _highest : _failing);

    /// <summary>The verdict, where it takes no closer look.</summary>
    public bool Settles(double value, double low, double high, Doubt doubt, out Verdict verdict)
    {
        if (Keeps(low, high) is not { } keeps)
        {
            verdict = default;
            return false;
        }
        verdict = keeps ? Verdict.Kept(Margin(true, value), _highestAt, doubt) : new(Status.Fail, Margin(false, value), _failingAt);
        return true;
    }
}
