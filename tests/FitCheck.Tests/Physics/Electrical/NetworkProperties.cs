using System.Numerics;
using CsCheck;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using MathNet.Numerics.LinearAlgebra.Complex;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class NetworkProperties
{
    private const int Rounds = 500;

    [Fact]
    public void Agrees_with_modified_nodal_analysis_solved_by_MathNet() =>
        Gen.Select(RandomNetworks.Any, RandomNetworks.Hertz).Sample((parts, hz) =>
        {
            var nodes = parts.Max(p => Math.Max(p.From, p.To));
            // Another formulation than ours: the source current is an unknown of its own.
            var a = new DenseMatrix(nodes + 1, nodes + 1);
            foreach (var part in parts.Where(p => p.From != p.To))
            {
                var omega = 2 * Math.PI * hz;
                Complex y = part.Kind switch
                {
                    'R' => 1 / part.Value,
                    'L' => 1 / new Complex(0, omega * part.Value),
                    _ =>
                    new Complex(0, omega * part.Value)
                };
                foreach (var (row, column) in new[] { (part.From, part.To), (part.To, part.From) })
                {
                    if (row == 0)
                        continue;
                    a[row - 1, row - 1] += y;
                    if (column != 0)
                        a[row - 1, column - 1] -= y;
                }
            }

            a[nodes, RandomNetworks.Source - 1] = 1;
            a[RandomNetworks.Source - 1, nodes] = -1;
            var b = new DenseVector(nodes + 1);
            b[nodes] = 1;
            var x = a.LU().Solve(b);

            var ours = RandomNetworks.Build(parts).Solve(hz);
            for (var node = 1; node <= nodes; node++)
                Near(x[node - 1], ours.Voltage(node), 1);
            Near(x[nodes], ours.SourceCurrent, Complex.Abs(x[nodes]));
        }, iter: Rounds);

    [Fact]
    public void A_passive_network_never_gives_power() =>
        Gen.Select(RandomNetworks.Any, RandomNetworks.Hertz).Sample(
            (parts, hz) => RandomNetworks.Build(parts).Solve(hz).Impedance.Real >= 0, iter: Rounds);

    [Fact]
    public void A_resistor_more_never_raises_the_resistance_of_a_network_of_resistors() => // Rayleigh's monotonicity law
        Gen.Select(RandomNetworks.Resistors, Gen.Int[0, 9], Gen.Int[0, 9], RandomNetworks.Logarithmic(0.05, 50))
            .Sample((parts, from, to, ohm) =>
        {
            var nodes = parts.Max(p => Math.Max(p.From, p.To));
            var before = RandomNetworks.Build(parts).Solve(1000).Impedance.Real;
            var after = RandomNetworks.Build([.. parts, new RandomPart(from % (nodes + 1), to % (nodes + 1), 'R', ohm)])
                .Solve(1000).Impedance.Real;
            return after <= before * (1 + 1e-9);
        }, iter: Rounds);

    [Fact]
    public void A_branch_more_across_the_source_never_lowers_the_power_drawn() =>
        Gen.Select(RandomNetworks.Any, RandomNetworks.Hertz, RandomNetworks.Logarithmic(0.05, 50), RandomNetworks.Logarithmic(1e-6, 1e-3))
            .Sample((parts, hz, ohm, farad) =>
        {
            var network = RandomNetworks.Build(parts);
            var before = network.Solve(hz).SourceCurrent.Real;
            network.Add(RandomNetworks.Source, 0, new SeriesImpedance(ohm, Capacitance: farad));
            return network.Solve(hz).SourceCurrent.Real >= before * (1 - 1e-9);
        }, iter: Rounds);

    [Fact]
    public void Impedances_k_times_as_large_make_the_load_k_times_as_large_and_leave_voltages_alone() =>
        Gen.Select(RandomNetworks.Any, RandomNetworks.Hertz, RandomNetworks.Logarithmic(0.1, 10)).Sample((parts, hz, k) =>
        {
            var one = RandomNetworks.Build(parts).Solve(hz);
            var scaled = RandomNetworks.Build(parts, k).Solve(hz);
            Near(one.Impedance * k, scaled.Impedance, Complex.Abs(one.Impedance) * k);
            for (var node = 1; node <= parts.Max(p => Math.Max(p.From, p.To)); node++)
                Near(one.Voltage(node), scaled.Voltage(node), 1);
        }, iter: Rounds);

    [Fact]
    public void Resistors_in_parallel_follow_the_formula() =>
        RandomNetworks.Logarithmic(0.05, 50).Array[1, 6].Sample(ohms =>
        {
            var network = new Network();
            network.SetSource(1);
            foreach (var ohm in ohms)
                network.AddResistor(1, 0, ohm);
            Near(1 / ohms.Sum(r => 1 / r), network.Solve(100).Impedance, 1);
            Near(CombinedLoad.Parallel(ohms), network.Solve(100).Impedance, 1);
        }, iter: Rounds);

    [Fact]
    public void The_same_voltage_comes_back_when_source_and_probe_change_places() => // reciprocity: transfer admittance is symmetric
        Gen.Select(RandomNetworks.Any, RandomNetworks.Hertz).Sample((parts, hz) =>
        {
            var far = parts.Max(p => Math.Max(p.From, p.To));
            Near(Transfer(parts, hz, 1, far), Transfer(parts, hz, far, 1), Math.Max(1e-9, Complex.Abs(Transfer(parts, hz, 1, far))));
        }, iter: Rounds);

    // Current through a 1 ohm ammeter to ground at one place, with a source behind 1 ohm at another.
    private static Complex Transfer(RandomPart[] parts, double hz, int from, int to)
    {
        var network = new Network();
        foreach (var part in parts)
            part.AddTo(network);
        var source = parts.Max(p => Math.Max(p.From, p.To)) + 1;
        network.AddResistor(source, from, 1);
        network.AddResistor(to, 0, 1);
        network.SetSource(source);
        return network.Solve(hz).Voltage(to);
    }

    private static void Near(Complex expected, Complex actual, double scale) =>
        Assert.True(Complex.Abs(expected - actual) <= 1e-7 * Math.Max(scale, 1e-12), $"{actual} instead of {expected}");
}
