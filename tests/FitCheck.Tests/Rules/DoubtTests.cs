using FitCheck.Facts.Values;
using FitCheck.Rules;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>
/// What a finding tells that only the tolerances leave open: the nominal value first, then the worst case. Sentences by hand.
/// </summary>
public sealed class DoubtTests
{
    private const string Open = " The tolerances of the figures leave it open: it may be ";
    private const string Saved = " Only the tolerances of the figures could save it: it may be ";
    private const string Measure = " Measure before you give it up: Depth left behind the driver (3 mm or more and 20 mm or less)";

    [Theory]
    [InlineData(-1, 4, 9, "Fine, 4 mm." + Open + "-1 mm (typically ±5 mm), so try it before anything is cut.")]
    [InlineData(-1, 1, 2, "Doubtful, 1 mm against 3 mm, -2 mm." + Open + "-1 mm (typically ±1.5 mm), so try it before anything is cut.")]
    // on the limit is good
    [InlineData(-1, 0, 1, "Doubtful, 0 mm against 3 mm, -3 mm." + Open + "-1 mm (typically ±1 mm), so try it before anything is cut.")]
    [InlineData(-3, -2, 0, "Wrong, -2 mm against 0 mm, -2 mm." + Saved + "0 mm (typically ±1.5 mm)." + Measure)]
    [InlineData(0.5, 2, 2.5, "Doubtful, 2 mm against 3 mm, -1 mm.")] // certain
    [InlineData(2, 4, 6, "Fine, 4 mm.")] // the nominal value decides
    [InlineData(28, 29, 32, "Doubtful, 29 mm against 20 mm, -9 mm." + Open + "32 mm (typically ±2 mm), so try it before anything is cut.")]
    [InlineData(29, 31, 33, "Wrong, 31 mm against 30 mm, -1 mm." + Saved + "29 mm (typically ±2 mm)." + Measure)]
    public void Between_failing_and_not(double low, double value, double high, string message) =>
        Assert.Equal(message, Message("{ below: 3 mm, above: 20 mm }", "{ below: 0 mm, above: 30 mm }", Mm(low, value, high)));

    [Theory]
    [InlineData(2, 4, 6, "Fine, 4 mm." + Open + "2 mm (typically ±2 mm), so try it before anything is cut.")]
    [InlineData(2, 2.5, 6, "Doubtful, 2.5 mm against 3 mm, -0.5 mm." + Open + "6 mm (typically ±2 mm), so measure before you give it up.")]
    public void Where_the_worst_is_a_warning(double low, double value, double high, string message) =>
        Assert.Equal(message, Message("{ below: 3 mm }", "never", Mm(low, value, high)));

    [Fact]
    public void A_guess_in_doubt_is_measured() =>
        Assert.StartsWith("Measure ", Message("{ below: 3 mm }", "{ below: 0 mm }", Mm(-1, 4, 9).Guessed()), StringComparison.Ordinal);

    private static string Message(string warn, string fail, FactValue depth) =>
        Judge.Evaluate(Rule(SampleRule.About("depth_margin", warn, fail)), Table(("depth_margin", depth)), "b")!.Message;
}
