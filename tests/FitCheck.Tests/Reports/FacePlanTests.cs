using FitCheck.Drawings;
using FitCheck.Reports.Svg;
using Xunit;

namespace FitCheck.Tests.Reports;

public class FacePlanTests
{
    private static readonly FaceDrawing Face = new()
    {
        CutoutRadius = 79,
        SpacerRadius = 92,
        Panel = [new(45, 86, Meets: true), new(135, 86, Meets: false)],
        AimHour = 10.5,
        TiltDeg = 8,
    };

    private static readonly PositionDrawing Position = new() { Position = "p", Name = "Somewhere", AdapterName = "a ring", Face = Face };

    [Fact]
    public void What_meets_is_a_dot_and_what_does_not_is_a_cross_and_named_by_its_hour()
    {
        var svg = FacePlan.Draw("x", Position)!.ToString();

        Assert.Contains("crosses meet none in the spacer: 4:30.", svg, StringComparison.Ordinal); // worked by hand: 135 degrees
        Assert.Contains("aimed at 10:30", svg, StringComparison.Ordinal);
        Assert.Single(svg.Split("<circle").Skip(1));
        Assert.Equal(2, svg.Split("class=\"clash\"").Length - 1);
    }

    [Fact]
    public void An_oval_is_not_drawn_as_a_circle()
    {
        var svg = FacePlan.Draw("x", Position with { Face = Face with { IsOval = true, FlangeRadius = 88 } })!.ToString();

        Assert.Contains("Oval outlines are not drawn.", svg, StringComparison.Ordinal);
        Assert.Contains("Thin: flange. As seen", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("dashed", svg, StringComparison.Ordinal);
        Assert.Contains("Full line: spacer; dashed: hole in the panel.", FacePlan.Draw("x", Position)!.ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Without_holes_there_is_no_drawing()
    {
        Assert.Null(FacePlan.Draw("x", Position with { Face = null }));
        Assert.Null(FacePlan.Draw("x", Position with { Face = Face with { Panel = [] } }));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-5)]
    [InlineData(1e9)]
    public void Absurd_numbers_leave_no_trace(double number)
    {
        var face = Face with
        {
            CutoutRadius = number,
            SpacerRadius = number,
            FlangeRadius = number,
            AimHour = number,
            Panel = [new(number, 86, Meets: true), new(45, 86, Meets: false)]
        };
        var svg = FacePlan.Draw("x", Position with { Face = face })?.ToString() ?? "";

        Assert.DoesNotContain("\"NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
    }
}
