using FitCheck.Reports.Svg;
using Xunit;

namespace FitCheck.Tests.Reports;

public class SvgWriterTests
{
    // IEEE 754, 4.3.1: half-way goes to the even digit. The last bit before it differs between the logarithms of two machines.
    [Theory]
    [InlineData(179.375, "179.38")]
    [InlineData(44.625, "44.62")]
    public void What_lies_half_way_but_for_its_last_bit_is_drawn_alike(double half, string drawn)
    {
        foreach (var x in new[] { Math.BitDecrement(half), half, Math.BitIncrement(half) })
        {
            using var svg = new SvgWriter("one", "bar", 230, 50, "a bar", null);
            svg.Line(new(x, 0), new(0, 0), "limit");

            Assert.Contains($" x1=\"{drawn}\"", svg.Finish().ToString(), StringComparison.Ordinal);
        }
    }
}
