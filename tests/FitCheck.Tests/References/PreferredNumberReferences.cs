using FitCheck.Physics.Numerics;
using Xunit;

namespace FitCheck.Tests.References;

public class PreferredNumberReferences
{
    [Fact]
    public void The_decades_are_those_of_the_standard()
    {
        // e12: S: IEC 60063 via handwiki.org, E series
        Assert.Equal([10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82], PreferredNumbers.E12.Select(v => v * 10),
            (a, b) => Math.Abs(a - b) < 1e-9);
        // e24: S: IEC 60063 via handwiki.org, E series
        Assert.Equal([10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
            PreferredNumbers.E24.Select(v => v * 10), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Theory]
    [InlineData("near.E12.13.2629", "derived from IEC 60063 via handwiki.org, E series", 13.2629, 12.0, -9.52)]
    [InlineData("near.E12.9.3782", "derived from IEC 60063 via handwiki.org, E series", 9.3782, 10.0, 6.63)]
    public void Nearest_of_E12(string id, string source, double wanted, double value, double errorPercent)
    {
        Reference.Near(id, source, value, PreferredNumbers.NearestE12(wanted), 1e-12);
        Reference.Near(id, source, errorPercent, ((PreferredNumbers.NearestE12(wanted) / wanted) - 1) * 100, 2e-3);
    }

    [Theory]
    [InlineData("near.E24.4.7777", "derived from IEC 60063 via handwiki.org, E series", 4.7777, 4.7, -1.63)]
    [InlineData("near.E24.0.8254", "derived from IEC 60063 via handwiki.org, E series", 0.8254, 0.82, -0.654)]
    [InlineData("near.E24.1.0", "derived from IEC 60063 via handwiki.org, E series", 1.0, 1.0, 0.0)]
    public void Nearest_of_E24(string id, string source, double wanted, double value, double errorPercent)
    {
        Reference.Near(id, source, value, PreferredNumbers.NearestE24(wanted), 1e-12);
        Reference.Near(id, source, errorPercent, ((PreferredNumbers.NearestE24(wanted) / wanted) - 1) * 100, 3e-3);
    }
}
