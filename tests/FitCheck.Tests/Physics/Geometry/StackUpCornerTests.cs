using CsCheck;
using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

/// <summary>The worst case where a result jumps: all corners of the tolerances, and nothing that no corner has.</summary>
public class StackUpCornerTests
{
    // Cutout, depth, magnet's diameter and height, spacer, radius and depth of the thing; metres. A sheet of 1 mm, a car of 0.5 mm.
    private static readonly (string Name, double Nominal, double HalfWidth)[] Rod =
    [
        ("cutout", 0.141, 0.001), ("depth", 0.045, 0.0005), ("magnet", 0.100, 0.001), ("height", 0.013, 0.001), ("spacer", 0.010, 0.001),
        ("from radius", 0.0506, 0.0005), ("rod", 0.025, 0.0005),
    ];

    private static readonly (int Index, int Sign)[] Body = [(0, 1), (1, 1), (2, 1), (3, -1)];

    // By hand: the magnet is 50 mm from the axis and the rod 50.6 mm, so that the cone decides, 31.06 mm behind the flange and 21.06 mm
    // behind the panel: 3.9 mm are free. With the magnet at 50.5 mm and the rod at 50.1 mm they meet: 24.5 − (45.5 − 9) = −12 mm. No corner
    // is worse, for no part of the driver is deeper than 36.5 mm behind the panel.
    [Fact]
    public void What_alone_moves_nothing_reaches_over_the_edge_together()
    {
        var number = StackUp.OverCorners(Rod, Body, Free);

        Assert.Equal(0.0039, number.Value, 4);
        Assert.Equal(-0.012, number.Low, 6);
        Assert.True(StackUp.Of(Rod, Free).Low > -0.001, "turned one at a time, they all but miss each other");
    }

    // Any figures within the tolerances give a result within the worst case; the corners are tried for the body as a whole only.
    [Fact]
    public void No_driver_within_its_tolerances_is_worse_than_the_worst_case() =>
        Gen.Select(Gen.Double[0.09, 0.17], Gen.Double[0.03, 0.09], Gen.Double[0.05, 0.12], Gen.Double[0.008, 0.03], Gen.Double[0, 0.03],
            Gen.Double[0.02, 0.09], Gen.Double[0.02, 0.08], Gen.Double[-1, 1].Array[7])
            .Sample((cutout, depth, magnet, height, spacer, radius, rod, at) =>
            {
                double[] nominal = [cutout, depth, magnet, height, spacer, radius, rod];
                var inputs = Rod.Select((r, i) => r with { Nominal = nominal[i] }).ToArray();
                var number = StackUp.OverCorners(inputs, Body, Free);
                var one = Free([.. inputs.Select((r, i) => r.Nominal + (at[i] * r.HalfWidth))]);
                return number.Low - 1e-9 <= one && one <= number.High + 1e-9;
            }, iter: 20_000);

    // By hand: of a magnet 138 mm wide the edge 30.5 mm behind the flange lies 30.5·cos 0.3 − 69·sin 0.3 = 8.75 mm behind the flange's
    // centre, 30.5·sin 0.3 + 69·cos 0.3 = 74.93 mm from the hole's line. A sheet of 1 mm on a spacer of 8.2 mm has it between its faces;
    // on one of 7.2 mm it ends before, and on one of 9.2 mm it is cut where the magnet is narrower.
    [Fact]
    public void An_edge_that_a_middle_spacer_alone_puts_into_the_panel_counts()
    {
        (string, double, double)[] inputs = [("cutout", 0.140, 0), ("depth", 0.030, 0.0005), ("magnet", 0.138, 0), ("height", 0.025, 0),
            ("spacer", 0.0082, 0.001), ("tilt", 0.3, 0)];
        var high = 2 * ((0.0305 * Math.Sin(0.3)) + (0.069 * Math.Cos(0.3)));

        Assert.Equal(high, StackUp.OverCorners(inputs, [.. Body, (4, 0), (5, 0)], Hole).High, 9);
        Assert.True(StackUp.OverCorners(inputs, Body, Hole).High < high - 0.0001, "both ends alone miss it by a tenth of a millimetre");
    }

    // The hole on a tilted spacer: one corner below zero is one too many. Between two of the angles that are tried, 5 mrad from either, the
    // radius may be larger by 0.15 m · (1 − cos 0.005) = 2 µm. The least that it may need decides nothing that passes.
    [Fact]
    public void No_tilted_driver_within_its_tolerances_needs_a_larger_hole_than_the_worst_case() =>
        Gen.Select(Gen.Double[0.09, 0.17], Gen.Double[0.03, 0.09], Gen.Double[0.05, 0.12], Gen.Double[0.008, 0.03], Gen.Double[0, 0.03],
            Gen.Double[0.02, 0.3], Gen.Double[-1, 1].Array[6])
            .Sample((cutout, depth, magnet, height, spacer, tilt, at) =>
            {
                double[] nominal = [cutout, depth, magnet, height, spacer, tilt];
                double[] half = [0.001, 0.001, 0.001, 0.001, 0.001, 0.01];
                var inputs = nominal.Select((n, i) => ("", n, half[i])).ToArray();
                var number = StackUp.OverCorners(inputs, [.. Body, (4, 0), (5, 0)], Hole);
                var one = Hole([.. nominal.Select((n, i) => n + (at[i] * half[i]))]);
                return one <= number.High + 4e-6;
            }, iter: 20_000);

    private static double Free(double[] v) => v[6] - Math.Max(0, TiltedBody.DepthNeededBeyondRadius(Sheet(v), 0, v[4], v[5]) ?? 0);

    private static double Hole(double[] v) => 2 * TiltedBody.HoleRadiusNeeded(Sheet(v), v[5], v[4], 0.001);

    private static BodyProfile Sheet(double[] v) =>
        BodyProfile.FromSheet(v[0] / 2, v[1], Math.Min(v[2], v[0]) / 2, Math.Min(v[3], v[1]));
}
