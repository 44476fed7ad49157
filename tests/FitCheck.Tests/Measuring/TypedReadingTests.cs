using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Measuring;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Measuring;

/// <summary>What a person types with a calliper in the other hand.
/// An inch is 25.4 mm exactly (International Yard and Pound, 1959).</summary>
public class TypedReadingTests
{
    private static readonly AnswerShape Length = AnswerShape.Of(new DatumKey("front-door-left", DatumKey.Position, "mounting.depth"))!;
    private static readonly AnswerShape Recess = AnswerShape.Of(new DatumKey("front-door-left", DatumKey.Position, "mounting.recess"))!;
    private static readonly AnswerShape Truth = AnswerShape.Of(new DatumKey("front-door-left", DatumKey.Position, "wet"))!;
    private static readonly AnswerShape Resistance = AnswerShape.Of(new DatumKey("orrin-c165", "driver", "parameters.re"))!;

    [Theory]
    [InlineData("60.5", 60.5)]
    [InlineData("60,5", 60.5)]
    [InlineData("60.5 mm", 60.5)]
    [InlineData("60.5mm", 60.5)]
    [InlineData("6.05 cm", 60.5)]
    [InlineData("2 9/16 in", 65.0875)] // (2 + 9/16) x 25.4
    [InlineData("2 9/16\"", 65.0875)]
    [InlineData("2 9/16", 65.0875)] // a fraction is never of millimetres
    [InlineData("9/16", 14.2875)]
    [InlineData("2.5625 inches", 65.0875)]
    public void A_length_is_read_as_it_is_typed(string typed, double millimetres)
    {
        var (reading, wrong) = TypedReading.Of(Length, typed, inInches: false);

        Assert.Null(wrong);
        Assert.Equal(millimetres, QuantityText.Parse(reading!.Value)!.Value.Si * 1000, 9);
        Assert.Equal("0.5 mm", reading.Tolerance); // what a careful reading is worth: common practice, no source
    }

    [Theory]
    [InlineData("2.5", 63.5)]
    [InlineData("2 1/2", 63.5)]
    [InlineData("63.5 mm", 63.5)]
    public void Who_works_in_inches_types_bare_inches(string typed, double millimetres) =>
        Assert.Equal(millimetres, QuantityText.Parse(TypedReading.Of(Length, typed, inInches: true).Reading!.Value)!.Value.Si * 1000, 9);

    [Theory]
    [InlineData("60.5 ± 0.3", "60.5 mm", "0.3 mm")]
    [InlineData("60.5 +/- 0.3 mm", "60.5 mm", "0.3 mm")]
    [InlineData("2 9/16 in ± 1/32 in", "2 9/16 in", "1/32 in")]
    public void A_tolerance_may_be_typed(string typed, string value, string tolerance) =>
        Assert.Equal(new TypedReading(value, tolerance), TypedReading.Of(Length, typed, inInches: false).Reading);

    [Theory]
    [InlineData("1,250")] // one and a quarter, or a thousand?
    [InlineData("sixty")]
    [InlineData("-5")]
    [InlineData("60 ohm")]
    [InlineData("60 mm mm")]
    [InlineData("1/0")]
    [InlineData("60 ± x")]
    public void What_is_no_length_is_asked_for_again(string typed)
    {
        var (reading, wrong) = TypedReading.Of(Length, typed, inInches: false);

        Assert.Null(reading);
        Assert.Contains("expected a length", wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_are_taken_where_they_may_stand()
    {
        Assert.Equal(new TypedReading("none", null), TypedReading.Of(Recess, "None", inInches: false).Reading);
        Assert.Equal(new TypedReading("true", null), TypedReading.Of(Truth, "yes", inInches: false).Reading);
        Assert.Equal(new TypedReading("false", null), TypedReading.Of(Truth, "n", inInches: false).Reading);
        Assert.Null(TypedReading.Of(Truth, "perhaps", inInches: false).Reading);
        Assert.Equal(new TypedReading("3.4 ohm", null), TypedReading.Of(Resistance, "3.4", inInches: true).Reading);
        Assert.Null(TypedReading.Of(Resistance, "3.4 mm", inInches: false).Reading);
    }
}
