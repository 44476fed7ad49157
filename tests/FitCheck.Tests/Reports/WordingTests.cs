using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Json;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;
using Xunit;

namespace FitCheck.Tests.Reports;

public class WordingTests
{
    [Theory]
    [InlineData(0, 0, 0, 0, 0, "Nothing was checked: no rule applies to this build.")]
    [InlineData(0, 0, 0, 0, 2, "Nothing is left to judge: every finding on this build is waived.")]
    [InlineData(0, 0, 0, 1, 0, "This build goes together: the one check that applies passes.")]
    [InlineData(0, 0, 0, 14, 0, "This build goes together: all 14 checks pass.")]
    [InlineData(0, 0, 0, 14, 1, "This build goes together: all 14 checks pass, and 1 finding is waived.")]
    [InlineData(0, 0, 1, 14, 0, "This build goes together, with 1 point to look at.")]
    [InlineData(0, 0, 2, 14, 2, "This build goes together, with 2 points to look at, and 2 findings are waived.")]
    [InlineData(0, 1, 3, 14, 0, "This build can't be judged yet: 1 point waits for a measurement.")]
    [InlineData(0, 2, 3, 14, 0, "This build can't be judged yet: 2 points wait for a measurement.")]
    [InlineData(1, 0, 0, 0, 0, "This build does not go together as planned: 1 point has to change.")]
    [InlineData(2, 1, 0, 0, 0, "This build does not go together as planned: 2 points have to change, and 1 waits for a measurement.")]
    public void The_verdict_is_a_sentence(int fail, int measure, int warn, int pass, int waived, string sentence) =>
        Assert.Equal(sentence, Sentences.Verdict(new Tally(fail, measure, warn, pass, waived)));

    [Theory]
    [InlineData(4.2, 3, 1.2, 1)]
    [InlineData(2.4, 3, -0.6, 1)]
    [InlineData(25, 30, 5, -1)]
    [InlineData(35, 30, -5, -1)]
    [InlineData(3, 3, 0, 0)]
    public void The_good_side_follows_from_value_limit_and_margin(double value, double limit, double margin, int side)
    {
        var finding = SampleResult.Build.Findings[0] with { Value = Uncertain.Exact(value), Limit = limit, Margin = margin };
        Assert.Equal(side, Figures.GoodSide(finding));
    }

    [Theory]
    [InlineData(3.3217341, 3.32173)]
    [InlineData(0.1 + 0.2, 0.3)]
    [InlineData(-4e-17, 0)]
    [InlineData(123456789, 123457000)]
    public void Json_numbers_have_six_digits(double value, double written) => Assert.Equal(written, RoundedNumbers.Round(value));

    [Fact]
    public void Lines_break_at_spaces_and_never_within_a_path() =>
        Assert.Equal("see|builds/a-long-name.yaml:12:3|and more",
            string.Join('|', TextPage.Wrap("see builds/a-long-name.yaml:12:3 and more", 12)));

    [Fact]
    public void A_datum_that_several_findings_wait_for_is_measured_once()
    {
        var finding = SampleResult.Build.Findings.First(f => f.ToMeasure.Count > 0);
        var other = finding with { Rule = "mount/other", ToMeasure = [finding.ToMeasure[0] with { Passing = "70 mm or more" }] };
        var tasks = MeasureFirst.Of(SampleResult.Build with { Findings = [finding, other] });
        Assert.Equal("66.2 mm or more|70 mm or more", string.Join('|', Assert.Single(tasks).Outcomes.Select(o => o.Passing)));
    }

    // depth needed = max(z·cos θ + r·sin θ) − t, as the geometry has it.
    [Fact]
    public void The_drawn_body_reaches_as_deep_as_the_formula_says()
    {
        var drawing = SampleDrawings.LeftDoor;
        var tilt = drawing.TiltDeg * Math.PI / 180;
        var expected = drawing.Body.Max(p => (p.Z * Math.Cos(tilt)) + (p.R * Math.Sin(tilt))) - drawing.AdapterThickness;
        Assert.Equal(expected, new SectionGeometry(drawing).Deepest!.Value.Z, 9);
    }

    // front = t + (flange + front)·cos θ + R·sin θ + travel. The drawn corner is cut, so it may stay behind the formula, never pass it.
    [Fact]
    public void The_drawn_front_stays_within_the_formula()
    {
        var drawing = SampleDrawings.LeftDoor;
        var tilt = drawing.TiltDeg * Math.PI / 180;
        var reach = drawing.AdapterThickness + ((drawing.FlangeThickness!.Value + drawing.FrontHeight!.Value) * Math.Cos(tilt))
            + (drawing.FlangeRadius!.Value * Math.Sin(tilt)) + drawing.Travel!.Value;
        Assert.InRange(-new SectionGeometry(drawing).Foremost!.Value.Z, reach - 2, reach);
    }
}
