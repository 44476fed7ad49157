using System.Numerics;
using FitCheck.Physics.Electrical.Networks;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class NetworkTests
{
    [Fact]
    public void A_divider_divides()
    {
        var network = Source();
        network.AddResistor(1, 2, 3);
        network.AddResistor(2, 0, 1);
        var solution = network.Solve(1000);
        Assert.Equal(0.25, solution.Voltage(2).Real, 1e-12);
        Assert.Equal(4, solution.Impedance.Real, 1e-12);
        Assert.Equal(0.25, solution.SourceCurrent.Real, 1e-12);
    }

    [Fact]
    public void A_part_of_zero_ohm_joins_its_nodes()
    {
        var network = Source();
        network.AddResistor(1, 2, 0);
        network.AddInductor(2, 3, 0);
        network.AddResistor(3, 0, 4);
        Assert.Equal(4, network.Solve(1000).Impedance.Real, 1e-5);
    }

    [Fact]
    public void A_short_across_the_source_draws_a_finite_current()
    {
        var network = Source();
        network.AddResistor(1, 0, 0);
        Assert.Equal(1e6, network.Solve(1000).SourceCurrent.Real, 1.0);
    }

    [Fact]
    public void A_lossless_resonance_gives_numbers()
    {
        const double hz = 1000, henry = 1e-3;
        var network = Source();
        network.AddResistor(1, 2, 10);
        network.AddInductor(2, 0, henry);
        network.AddCapacitor(2, 0, 1 / (Math.Pow(2 * Math.PI * hz, 2) * henry));
        var solution = network.Solve(hz);
        Assert.True(Complex.IsFinite(solution.Voltage(2)));
        Assert.Equal(1, Complex.Abs(solution.Voltage(2)), 1e-6);
    }

    [Fact]
    public void A_series_resonance_shorts_what_follows_and_swings_itself()
    {
        // By hand: 1 V over 1 ohm into L and C of 1 ohm each at 1 kHz. Together they are no resistance, so 1 A flows and the middle swings
        // by j·1 V.
        const double omega = 2 * Math.PI * 1000;
        var network = new Network();
        network.AddInductor(1, 0, 1 / omega);
        network.AddCapacitor(1, 2, 1 / omega);
        network.AddResistor(2, 3, 1);
        network.SetSource(3);
        var solution = network.Solve(1000);
        Assert.Equal(0, Complex.Abs(solution.Voltage(1) - Complex.ImaginaryOne), 1e-9);
        Assert.Equal(0, Complex.Abs(solution.Voltage(2)), 1e-9);
        Assert.Equal(1, solution.SourceCurrent.Real, 1e-9);
    }

    [Fact]
    public void A_source_without_a_load_sees_an_infinite_impedance()
    {
        var network = Source();
        network.AddResistor(1, 2, 10);
        Assert.Equal(double.PositiveInfinity, network.Solve(1000).Impedance.Real);
        Assert.Equal(1, network.Solve(1000).Voltage(2).Real, 1e-12);
    }

    [Fact]
    public void A_node_without_a_path_is_named()
    {
        var network = Source();
        network.AddResistor(1, 0, 4);
        network.AddResistor(2, 3, 4);
        var error = Assert.Throws<FloatingNodeException>(() => network.Solve(1000));
        Assert.Equal(2, error.Node);
        Assert.StartsWith("Node 2 of the network is connected to neither ground nor the source.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_source_there_is_nothing_to_solve()
    {
        var network = new Network();
        network.AddResistor(1, 0, 4);
        Assert.Throws<InvalidOperationException>(() => network.Solve(1000));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Values_that_cannot_be_are_refused(double value)
    {
        var network = Source();
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddCapacitor(1, 0, value));
        network.AddResistor(1, 0, 4);
        Assert.Throws<ArgumentOutOfRangeException>(() => network.Solve(value));
        if (value == 0)
            return;
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddResistor(1, 0, value));
        Assert.Throws<ArgumentOutOfRangeException>(() => network.AddInductor(1, 0, value));
    }

    [Fact]
    public void A_part_may_be_added_between_two_solutions()
    {
        var network = Source();
        network.AddResistor(1, 0, 4);
        Assert.Equal(4, network.Solve(1000).Impedance.Real, 1e-12);
        network.AddResistor(1, 2, 2);
        network.AddResistor(2, 0, 2);
        Assert.Equal(2, network.Solve(1000).Impedance.Real, 1e-12);
    }

    [Fact]
    public void Any_node_may_carry_the_source()
    {
        var network = new Network();
        network.AddResistor(1, 2, 3);
        network.AddResistor(1, 0, 1);
        network.SetSource(2, volts: 8);
        Assert.Equal(2, network.Solve(50).Voltage(1).Real, 1e-12);
    }

    private static Network Source()
    {
        var network = new Network();
        network.SetSource(1);
        return network;
    }
}
