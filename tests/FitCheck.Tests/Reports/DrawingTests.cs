using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Svg;
using Xunit;

namespace FitCheck.Tests.Reports;

public class DrawingTests
{
    private static readonly PositionDrawing Empty = new() { Position = "p", Name = "Somewhere" };

    [Fact]
    public void Nothing_known_is_drawn_dashed_and_says_so()
    {
        var svg = SectionDrawing.Draw("x",
            Empty with { Clearances = [new("glass", "Magnet to the glass", null, null, null, Status.Measure)] }).ToString();
        Assert.Contains("glass, down: unknown — measure", svg, StringComparison.Ordinal);
        Assert.Contains("edge dashed", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("edge body", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_clearance_tells_its_value_worst_cases_and_status()
    {
        var svg = SectionDrawing.Draw("x", SampleDrawings.LeftDoor).ToString();
        Assert.Contains(">Magnet to the glass: -3.2 mm (-5.2 to -1.2) — fail<", svg, StringComparison.Ordinal);
        Assert.Contains(". Basket to the edge of the hole: 4.5 mm (3.4 to 5.6) — pass.", svg, StringComparison.Ordinal);
        Assert.Contains("scale 1 : 2.5 on paper", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(1e9)]
    public void Absurd_numbers_still_give_a_drawing(double number)
    {
        var drawing = SampleDrawings.LeftDoor with
        {
            Body = [(0, number), (number, number)],
            FlangeRadius = number,
            FrontHeight = number,
            Travel = number,
            HoleRadius = number,
            PanelThickness = number,
            GrilleGap = number,
            Obstructions = [new("glass", number, number, Moving: true), new("skin", 60, 0, Moving: false)],
            Clearances = [new("glass", "glass", number, number, number, Status.Fail),
                new("back", "back", number, number, number, Status.Fail), new("hole", "hole", number, null, null, Status.Fail)],
        };
        var svg = SectionDrawing.Draw("x", drawing).ToString();
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_curve_without_points_or_limit_is_still_a_plot()
    {
        var load = new LoadCurve
        {
            Channel = "c",
            Name = "Output",
            Points = [],
            LowestOhm = double.NaN,
            LowestHz = double.NaN,
            Status = Status.Measure
        };
        var svg = LoadPlot.Draw("x", load).ToString();
        Assert.DoesNotContain("\"NaN", svg, StringComparison.Ordinal);
        Assert.Contains("lowest load of the output: unknown — measure", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_finding_without_value_or_limit_has_no_bar()
    {
        var finding = SampleResult.Build.Findings[0];
        Assert.Null(MarginBar.Draw("x", finding with { Value = null }));
        Assert.Null(MarginBar.Draw("x", finding with { Limit = null }));
    }
}
