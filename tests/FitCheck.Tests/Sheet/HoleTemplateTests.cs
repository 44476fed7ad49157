using System.Globalization;
using System.Xml.Linq;
using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Reports.Sheet;
using Xunit;

namespace FitCheck.Tests.Sheet;

/// <summary>The template is drawn in millimetres: what is a unit in the drawing is one on paper.</summary>
public sealed class HoleTemplateTests
{
    private static readonly HolePlace Place = new("left-door", "Left front door", SampleSheet.Face(10.5), 158, 134.7);

    [Fact]
    public void A_unit_of_the_drawing_is_a_millimetre()
    {
        var svg = Drawing(Place);
        var box = ((string)svg.Attribute("viewBox")!).Split(' ');

        Assert.Equal($"{box[2]}mm", (string)svg.Attribute("width")!);
        Assert.Equal($"{box[3]}mm", (string)svg.Attribute("height")!);
        // A4 (ISO 216) is 210 mm wide, Letter (ANSI/ASME Y14.1) 215.9 mm; 10 mm of margin each
        Assert.InRange(double.Parse(box[2], CultureInfo.InvariantCulture), 100, 190);
    }

    [Fact]
    public void The_ruler_is_a_hundred_long()
    {
        var ruler = Assert.Single(Drawing(Place).Elements(), e => (string?)e.Attribute("class") == "ruler");
        Assert.Equal(100, Number(ruler, "x2") - Number(ruler, "x1"), 6);
    }

    [Fact]
    public void Holes_lie_on_their_circle_at_their_hours()
    {
        var screws = Drawing(Place).Elements().Where(e => e.Name.LocalName == "circle" && Number(e, "r") == 2.5).ToList();

        // By hand: 86·sin 45° = 60.81, so that two holes at 45° and 315° are 121.62 apart on one height.
        Assert.Equal(121.62, Math.Abs(Number(screws[0], "cx") - Number(screws[1], "cx")), 1);
        Assert.Equal(Number(screws[0], "cy"), Number(screws[1], "cy"), 6);
        Assert.Contains(Drawing(Place).Elements(), e => e.Name.LocalName == "circle" && Number(e, "r") == 79);
    }

    [Fact]
    public void A_hole_that_meets_none_is_marked_to_be_drilled_and_named()
    {
        var view = HoleTemplate.Of("t", "1", "Left front door", [Place]);

        Assert.Single(XElement.Parse(view.Drawing.ToString()).Elements(), e => (string?)e.Attribute("class") == "drill");
        // 315° is half past ten
        Assert.Contains(view.Legend, l => l.Contains("drill a pilot hole for the panel's screws at 10:30", StringComparison.Ordinal));
    }

    [Fact]
    public void Mirrored_places_share_a_template_with_an_arrow_each()
    {
        var view = HoleTemplate.Of("t", "1", "both", [Place, Place with { Name = "Right front door", Face = SampleSheet.Face(1.5) }]);

        Assert.Contains("Arrow A: thick side of the spacer, Left front door, at 4:30.", view.Legend); // opposite 10:30
        Assert.Contains("Arrow B: thick side of the spacer, Right front door, at 7:30.", view.Legend); // opposite 1:30
        Assert.Single(HolePatterns.Of(SampleSheet.Build).Templates("x"));
    }

    [Fact]
    public void A_hole_to_be_enlarged_is_drawn_as_the_cut()
    {
        var cut = Assert.Single(Drawing(Place with { HoleNeeded = 164 }).Elements(), e => (string?)e.Attribute("class") == "cut");
        Assert.Equal(82, Number(cut, "r"));
    }

    [Fact]
    public void An_oval_is_not_drawn_as_a_circle()
    {
        var svg = Drawing(Place with { Face = Place.Face with { IsOval = true, IsDriverOval = true } });
        Assert.All(svg.Elements().Where(e => e.Name.LocalName == "circle"), e => Assert.Equal(2.5, Number(e, "r"))); // the screws alone
    }

    [Fact]
    public void A_pattern_larger_than_the_paper_is_told_in_words()
    {
        var large = SampleSheet.Build
            with
        { Drawings = [SampleSheet.Build.Drawings[0] with { Face = Place.Face with { Panel = [new(0, 120, Meets: true)] } }] };
        var patterns = HolePatterns.Of(large);

        Assert.Empty(patterns.Templates("x"));
        Assert.Contains("on a circle of 240 mm, at 12:00", Assert.Single(patterns.TooLarge).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-5)]
    [InlineData(1e9)]
    public void Absurd_numbers_leave_no_trace(double number)
    {
        var face = new FaceDrawing
        {
            CutoutRadius = number,
            SpacerRadius = number,
            AimHour = number,
            PanelScrew = number,
            Panel = [new(number, 86, Meets: true), new(45, number, Meets: true), new(45, 86, Meets: false)]
        };
        var html = SampleSheet.Written(SampleSheet.Build with { Drawings = [SampleSheet.Build.Drawings[0] with { Face = face }] });

        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", html, StringComparison.Ordinal);
    }

    private static XElement Drawing(HolePlace place) => XElement.Parse(HoleTemplate.Of("t", "1", place.Name, [place]).Drawing.ToString());

    private static double Number(XElement element, string attribute) =>
        double.Parse((string)element.Attribute(attribute)!, CultureInfo.InvariantCulture);
}
