using CsCheck;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Verdicts;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>
/// Status, margin and deciding limit at the edges. All is worked by hand from what DEVELOPERS.md and the rules promise: the worst case
/// settles; nominally beyond the limit of failing with tolerances that could save it is a measurement; what is guessed never passes, and
/// what only moves a value within its bounds matters where a limit lies between them.
/// </summary>
public sealed class VerdictTests
{
    private static readonly double Scale = Comparison.ScaleOf(Dimension.Metre);
    private static readonly Manner Both = new(CanWarn: true, CanFail: true, IsOfEntries: false, Scale);
    private static readonly LimitValue Fail = new(Status.Fail, LimitSide.Below, Mm(0));
    private static readonly LimitValue Warn = new(Status.Warn, LimitSide.Below, Mm(3));

    // Fails below 0 mm (limit 0), warns below 3 mm (limit 1).
    [Theory]
    [InlineData(3, 3, 3, nameof(Doubt.None), Status.Pass, 0, 1, false)] // on the limit is not beyond it
    // a picometre is rounding: 1e-9 of a millimetre
    [InlineData(3 - 1e-9, 3 - 1e-9, 3 - 1e-9, nameof(Doubt.None), Status.Pass, 0, 1, false)]
    [InlineData(2.999, 2.999, 2.999, nameof(Doubt.None), Status.Warn, -0.001, 1, false)] // a micrometre is not
    [InlineData(0, 0, 0, nameof(Doubt.None), Status.Warn, -3, 1, false)] // on the limit of failing it does not fail
    [InlineData(-0.001, -0.001, -0.001, nameof(Doubt.None), Status.Fail, -0.001, 0, false)]
    [InlineData(-3, -2, -0.001, nameof(Doubt.None), Status.Fail, -2, 0, false)] // beyond it in the best case too
    [InlineData(-3, -2, 0, nameof(Doubt.None), Status.Measure, -2, 0, true)] // beyond it, and the tolerances just save it
    [InlineData(-3, -2, 0, nameof(Doubt.Bounded), Status.Measure, -2, 0, false)] // then a missing datum is asked for, not a better reading
    [InlineData(-3, -2, 0, nameof(Doubt.Guessed), Status.Measure, -2, 0, false)]
    [InlineData(-2, 0, 2, nameof(Doubt.None), Status.Warn, 0, 0, true)] // nominally on the limit of failing it may still fail
    // may fail: a failure that is possible comes before a warning that is certain
    [InlineData(-1, 1, 2, nameof(Doubt.None), Status.Warn, 1, 0, true)]
    [InlineData(-1, 1, 2, nameof(Doubt.Bounded), Status.Measure, 1, 0, false)]
    [InlineData(0, 1, 2, nameof(Doubt.None), Status.Warn, -2, 1, false)] // can't fail, warns whatever it is
    [InlineData(0, 1, 2, nameof(Doubt.Bounded), Status.Warn, -2, 1, false)] // no datum makes it better
    [InlineData(0, 1, 2, nameof(Doubt.Guessed), Status.Warn, -2, 1, false)]
    [InlineData(1, 2, 4, nameof(Doubt.None), Status.Warn, -1, 1, false)] // short of a failure the nominal value decides
    [InlineData(1, 4, 7, nameof(Doubt.None), Status.Pass, 1, 1, false)]
    [InlineData(1, 4, 7, nameof(Doubt.Bounded), Status.Measure, 1, 1, false)] // the limit lies between the bounds
    [InlineData(3, 5, 7, nameof(Doubt.Bounded), Status.Pass, 2, 1, false)] // all that it can be is good
    [InlineData(3, 5, 7, nameof(Doubt.Guessed), Status.Measure, 2, 1, false)] // a guess never passes
    public void Between_a_limit_of_warning_and_one_of_failing(double low, double value, double high, string doubt, Status status,
        double margin, int deciding, bool inDoubt) =>
        AssertIs(status, margin, deciding, inDoubt, Verdict.Of(Mm(low, value, high, In(doubt)), [Fail, Warn], Both, Doubt.None));

    [Theory]
    [InlineData(-1, 1, 2, nameof(Doubt.None), Status.Measure, 1, false)] // no warning can tell of it
    [InlineData(-3, -1, 2, nameof(Doubt.None), Status.Measure, -1, true)]
    [InlineData(0, 1, 2, nameof(Doubt.None), Status.Pass, 1, false)]
    [InlineData(0, 1, 2, nameof(Doubt.Bounded), Status.Pass, 1, false)]
    [InlineData(0, 1, 2, nameof(Doubt.Guessed), Status.Measure, 1, false)]
    public void A_rule_that_only_fails_must_be_settled(double low, double value, double high, string doubt, Status status, double margin,
        bool inDoubt) =>
        AssertIs(status, margin, 0, inDoubt,
            Verdict.Of(Mm(low, value, high, In(doubt)), [Fail], Both with { CanWarn = false }, Doubt.None));

    [Theory]
    [InlineData(2, 4, 6, nameof(Doubt.None), Status.Warn, 1, true)] // its only limit is the outermost
    [InlineData(2, 2.5, 6, nameof(Doubt.None), Status.Warn, -0.5, true)]
    [InlineData(1, 2, 2.9, nameof(Doubt.None), Status.Warn, -1, false)]
    [InlineData(2, 4, 6, nameof(Doubt.Bounded), Status.Measure, 1, false)]
    [InlineData(3, 4, 6, nameof(Doubt.None), Status.Pass, 1, false)]
    public void A_rule_that_only_warns_must_be_settled_too(double low, double value, double high, string doubt, Status status,
        double margin, bool inDoubt) =>
        AssertIs(status, margin, 0, inDoubt,
            Verdict.Of(Mm(low, value, high, In(doubt)), [Warn], Both with { CanFail = false }, Doubt.None));

    [Fact]
    public void An_entry_that_contradicts_itself_is_told_at_once() =>
        AssertIs(Status.Warn, -2, 0, true, Verdict.Of(Mm(-3, -2, 0), [Fail, Warn], Both with { IsOfEntries = true }, Doubt.None));

    [Fact]
    public void Of_several_limits_the_one_that_is_broken_farthest_decides_and_of_a_pass_the_nearest()
    {
        LimitValue[] limits = [new(Status.Fail, LimitSide.Below, Mm(0)), new(Status.Fail, LimitSide.Above, Mm(30)),
            new(Status.Warn, LimitSide.Below, Mm(3)), new(Status.Warn, LimitSide.Above, Mm(20))];
        AssertIs(Status.Pass, 2, 3, false, Verdict.Of(Mm(18), limits, Both, Doubt.None));
        AssertIs(Status.Pass, 2, 2, false, Verdict.Of(Mm(5), limits, Both, Doubt.None));
        AssertIs(Status.Warn, -5, 3, false, Verdict.Of(Mm(25), limits, Both, Doubt.None));
        AssertIs(Status.Fail, -4, 1, false, Verdict.Of(Mm(34), limits, Both, Doubt.None));
        AssertIs(Status.Warn, 1, 1, true, Verdict.Of(Mm(27, 29, 31), limits, Both, Doubt.None));
    }

    [Fact]
    public void A_failure_for_certain_needs_no_other_limit_and_all_else_waits_for_it()
    {
        LimitValue[] limits = [Fail, new(Status.Warn, LimitSide.Below, Brief.Unknown)];
        AssertIs(Status.Fail, -1, 0, false, Verdict.Of(Mm(-1), limits, Both, Doubt.None));
        AssertIs(Status.Measure, double.NaN, 1, false, Verdict.Of(Mm(90), limits, Both, Doubt.None));
    }

    [Fact]
    public void An_unknown_value_is_told_against_the_strictest_limit()
    {
        AssertIs(Status.Measure, double.NaN, 1, false, Verdict.Of(Brief.Unknown, [Fail, Warn], Both, Doubt.None));
        AssertIs(Status.Measure, double.NaN, 0, false, Verdict.Of(Brief.Unknown, [Fail], Both, Doubt.None));
    }

    [Theory]
    [InlineData(nameof(Doubt.None), nameof(Doubt.None), Status.Pass)]
    [InlineData(nameof(Doubt.Guessed), nameof(Doubt.None), Status.Measure)]
    [InlineData(nameof(Doubt.None), nameof(Doubt.Guessed), Status.Measure)]
    [InlineData(nameof(Doubt.Bounded), nameof(Doubt.None), Status.Pass)]
    [InlineData(nameof(Doubt.None), nameof(Doubt.Bounded), Status.Pass)]
    public void A_guess_about_the_condition_or_a_limit_counts_as_one_about_the_value(string condition, string limit, Status status) =>
        Assert.Equal(status,
            Verdict.Of(Mm(9), [new(Status.Fail, LimitSide.Below, Mm(0, 0, 0, In(limit)))], Both with { CanWarn = false },
                In(condition)).Status);

    [Fact]
    public void Words_and_truths_have_no_margin()
    {
        LimitValue[] limits = [new(Status.Fail, LimitSide.Is, Brief.Of(FactValue.Of("none"))),
            new(Status.Warn, LimitSide.Is, Brief.Of(FactValue.Of("splice")))];
        AssertIs(Status.Fail, double.NaN, 0, false, Verdict.Of(Brief.Of(FactValue.Of("none")), limits, Both, Doubt.None));
        AssertIs(Status.Warn, double.NaN, 1, false, Verdict.Of(Brief.Of(FactValue.Of("splice")), limits, Both, Doubt.None));
        AssertIs(Status.Pass, double.NaN, 0, false, Verdict.Of(Brief.Of(FactValue.Of("plug")), limits, Both, Doubt.None));
        Assert.Equal(Status.Fail,
            Verdict.Of(Brief.Of(truth: true), [new(Status.Fail, LimitSide.Is, Brief.Of(truth: true))], Both, Doubt.None).Status);
    }

    // Values lie about the limits by whole millimetres, by rounding, and by little more than rounding.
    [Fact]
    public void What_the_floor_settles_is_what_all_limits_say() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[-1, 4], Gen.Int[0, 2], Gen.Int[-3, 3], Gen.Int[0, 2], Gen.Int[0, 2])
            .Sample((rule, at, half, by, fine, sure) =>
        {
            LimitValue[] limits = rule switch
            {
                0 => [Fail, Warn],
                1 => [Fail],
                2 => [Warn],
                _ =>
                [Warn with { Status = Status.Fail }, Fail with { Status = Status.Warn }]
            };
            var manner = Both with { CanWarn = rule != 1, CanFail = rule != 2 };
            var step = fine switch { 0 => 1e-13, 1 => 1e-12, _ => 3e-12 };
            var (value, doubt) = ((at * 1e-3) + (by * step), (Doubt)sure);
            var number = Uncertain.Within(value, half * 1e-3);
            return !new Floor(limits, manner).Settles(value, number.Low, number.High, doubt, out var soon)
                || soon.Equals(Verdict.Of(Brief.Of(number, doubt), limits, manner, Doubt.None));
        }, iter: 20_000);

    [Fact]
    public void The_floor_settles_what_is_well_beyond_it_and_nothing_between()
    {
        var floor = new Floor([Fail, Warn], Both);
        Assert.Equal([true, null, null, false],
            new[] { Mm(4), Mm(3), Mm(0), Mm(-1) }.Select(v => floor.Keeps(v.Number.Low, v.Number.High)));
        Assert.Null(floor.Keeps(-1e-3, 4e-3));
        Assert.False(new Floor([Fail, new(Status.Warn, LimitSide.Above, Mm(20))], Both).Exists);
        Assert.False(new Floor([Fail with { Value = Mm(0, 0, 0, Doubt.Guessed) }], Both).Exists);
        Assert.False(new Floor([Fail with { Value = Mm(-1, 0, 1) }], Both).Exists);
    }

    [Fact]
    public void Deciding_takes_no_memory()
    {
        LimitValue[] limits = [Fail, Warn];
        var value = Mm(-1, 1, 2);
        var worst = Status.Pass;
        Decide();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++)
            Decide();
        Assert.Equal((before, Status.Warn), (GC.GetAllocatedBytesForCurrentThread(), worst));

        void Decide() => worst = StatusWords.WorseOf(worst, Verdict.Of(value, limits, Both, Doubt.None).Status);
    }

    private static Doubt In(string doubt) => Enum.Parse<Doubt>(doubt);

    private static Brief Mm(double value) => Mm(value, value, value);

    private static Brief Mm(double low, double value, double high, Doubt doubt = Doubt.None) =>
        Brief.Of(new Uncertain(value * 1e-3, low * 1e-3, high * 1e-3, (high - low) * 0.5e-3), doubt);

    private static void AssertIs(Status status, double marginMm, int deciding, bool inDoubt, Verdict verdict)
    {
        Assert.Equal((status, deciding, inDoubt), (verdict.Status, verdict.Deciding, verdict.InDoubt));
        Assert.Equal(marginMm, verdict.Margin * 1e3, 9);
    }
}
