using FitCheck.Drawings;
using FitCheck.Findings;
using FitCheck.Reports.Svg;
using Xunit;

namespace FitCheck.Tests.Reports;

public class WiringDrawingTests
{
    private static readonly SupplyLeg Leg = new() { Name = "Plover four-channel amplifier", Status = Status.Measure };

    [Fact]
    public void A_factory_driver_that_stays_is_dashed()
    {
        var svg = WiringDrawing.Draw("x", new WiringDiagram("front", "Front", "Plover", ["1"], [], null,
            [new("Left door", "Heron", "duo plug → tabs", false, IsFactory: false),
                new("Left sail", "factory driver, stays", "in parallel", true, IsFactory: true)])).ToString();
        Assert.Contains("key dashed", svg, StringComparison.Ordinal);
        Assert.Contains("Left sail: in parallel", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Signs_stand_at_both_ends_of_a_pair()
    {
        var svg = WiringDrawing.Draw("x",
            new WiringDiagram("front", "Front", "Plover", ["1", "2"], [], "Heron crossover",
                [new("Left door", "Heron", "duo plug → tabs", false, false)])).ToString();
        Assert.Equal(2, svg.Split(">+<").Length - 1);
        Assert.Equal(2, svg.Split(">−<").Length - 1);
    }

    [Fact]
    public void What_is_not_planned_is_told_as_missing_and_not_guessed()
    {
        var svg = SupplyDrawing.Draw("x", new SupplyDiagram(Leg with { Name = "the main cable", Gauge = "4 AWG" }, null, [Leg])).ToString();
        foreach (var words in new[] { "main fuse: none", "no distribution block", "no power cable", "no ground cable", "4 AWG, ? m" })
            Assert.Contains(words, svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-5)]
    public void Absurd_numbers_still_give_a_drawing(double number)
    {
        var leg = Leg with { DemandA = number, DropV = number, FuseA = number, FuseDistanceMm = number, LengthM = number, Gauge = "4 AWG" };
        var svg = SupplyDrawing.Draw("x", new SupplyDiagram(leg, "block", [leg, leg])).ToString();
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
    }
}
