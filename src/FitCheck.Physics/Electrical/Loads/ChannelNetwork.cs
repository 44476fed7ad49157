using System.Numerics;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Loads;

/// <summary>A <see cref="ChannelLoad"/> as a network with a source of 1 V. Of several threads that ask one waits for the other.</summary>
internal sealed class ChannelNetwork
{
    private const int Source = 1;
    private readonly Network _network = new();
    private readonly (DriverModel Driver, int Hot, int Cold)[] _drivers;
    private readonly List<(LadderElement Rung, int Hot, int Cold)> _rungs = [];

    internal ChannelNetwork(ChannelLoad load)
    {
        if (load.Branches.Count == 0)
            throw new ArgumentException("A channel needs at least one branch with a driver.", nameof(load));
        _network.SetSource(Source);
        var common = Ladder.Stamp(_network, load.SharedElements, Wire(Source, load.SharedWireResistance),
            nodes: _rungs);
        _drivers = new (DriverModel, int, int)[load.Branches.Count];
        var hot = common;
        for (var i = 0; i < _drivers.Length; i++)
        {
            // The return of one is the beginning of the next.
            var cold = i < load.InSeries - 1 ? _network.AddNode() : 0;
            _drivers[i] = Stamp(load.Branches[i], i < load.InSeries ? hot : common, cold);
            hot = cold;
        }
    }

    /// <summary>The state at a frequency in Hz (&gt; 0).</summary>
    public ChannelState At(double hz)
    {
        var solution = Solve(hz);
        var drivers = new DriverState[_drivers.Length];
        for (var i = 0; i < drivers.Length; i++)
        {
            var (driver, hot, cold) = _drivers[i];
            drivers[i] = new DriverState(solution.Voltage(hot) - solution.Voltage(cold), driver.Impedance(hz));
        }

        return new ChannelState(hz, solution.Impedance, drivers);
    }

    /// <summary>
    /// Voltage across each of these rungs at a frequency in Hz (&gt; 0), per volt of the source; null for one that is not in the network. A
    /// rung is found by itself, not by its values.
    /// </summary>
    public Complex?[] Across(IReadOnlyList<LadderElement> rungs, double hz)
    {
        var solution = Solve(hz);
        var across = new Complex?[rungs.Count];
        for (var i = 0; i < across.Length; i++)
        {
            foreach (var (rung, hot, cold) in _rungs)
            {
                if (ReferenceEquals(rung, rungs[i]))
                    across[i] = solution.Voltage(hot) - solution.Voltage(cold);
            }
        }
        return across;
    }

    /// <summary>States over ascending frequencies in Hz, with the extremes refined between the points.</summary>
    public ChannelSweep Sweep(IReadOnlyList<double> frequencies)
    {
        ArgumentNullException.ThrowIfNull(frequencies);
        var states = new ChannelState[frequencies.Count];
        for (var i = 0; i < states.Length; i++)
            states[i] = At(frequencies[i]);
        return new ChannelSweep(this, states);
    }

    // The network has one working matrix.
    private NetworkSolution Solve(double hz)
    {
        lock (_network)
            return _network.Solve(hz);
    }

    private (DriverModel Driver, int Hot, int Cold) Stamp(ChannelBranch branch, int common, int back)
    {
        var hot = Ladder.Stamp(_network, branch.Elements ?? [], Wire(common, branch.WireResistance), back, _rungs);
        var upper = hot;
        var lower = branch.AlsoInSeries.Count == 0 ? back : _network.AddNode();
        var first = (branch.Driver, upper, lower);
        branch.Driver.Stamp(_network, upper, lower);
        for (var i = 0; i < branch.AlsoInSeries.Count; i++)
        {
            upper = lower;
            lower = i == branch.AlsoInSeries.Count - 1 ? back : _network.AddNode();
            branch.AlsoInSeries[i].Stamp(_network, upper, lower);
        }

        return first;
    }

    private int Wire(int from, double resistance)
    {
        if (resistance == 0)
            return from;
        var to = _network.AddNode();
        _network.AddResistor(from, to, resistance);
        return to;
    }
}

/// <summary>A channel at one frequency, per volt of the source.</summary>
/// <param name="Hz">Frequency.</param>
/// <param name="Impedance">What the output sees, ohm.</param>
/// <param name="Drivers">In the order of the branches.</param>
internal sealed record ChannelState(double Hz, Complex Impedance, IReadOnlyList<DriverState> Drivers)
{
    /// <summary>|Z| in ohm.</summary>
    public double Ohm => Complex.Abs(Impedance);

    /// <summary>Phase of Z in degrees; positive when the load is inductive.</summary>
    public double PhaseDeg => Impedance.Phase * 180 / Math.PI;

    /// <summary>Equivalent peak dissipation resistance, ohm.</summary>
    public double EpdrOhm => Epdr.Of(Ohm, PhaseDeg);

    /// <summary>Real power out of the source per volt squared: Re(1/Z), siemens.</summary>
    public double PowerPerVoltSquared => (1 / Impedance).Real;
}

/// <summary>A driver in a channel at one frequency, per volt of the source.</summary>
/// <param name="Transfer">Voltage across the driver over the voltage of the source.</param>
/// <param name="Impedance">Impedance of the driver, ohm.</param>
internal readonly record struct DriverState(Complex Transfer, Complex Impedance)
{
    /// <summary>Level across the driver against the source, dB.</summary>
    public double Db => Decibel.OfAmplitude(Complex.Abs(Transfer));

    /// <summary>Real power into the driver per volt squared of the source: |H|²·Re(1/Z), siemens. Times V² it is watts.</summary>
    public double PowerPerVoltSquared
    {
        get
        {
            var magnitude = Complex.Abs(Transfer);
            return magnitude * magnitude * (1 / Impedance).Real;
        }
    }
}
