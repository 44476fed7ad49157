using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Numerics;

namespace FitCheck.Physics.Electrical.Loads;

/// <summary>
/// A channel over a range of frequencies, and its extremes, which are looked for when somebody asks: most ask for one of them.
/// </summary>
internal sealed class ChannelSweep
{
    private readonly ChannelNetwork _network;
    private ChannelState? _lowest, _largestPhase, _lowestEpdr;

    internal ChannelSweep(ChannelNetwork network, IReadOnlyList<ChannelState> states)
    {
        _network = network;
        States = states;
    }

    /// <summary>The channel at each frequency, ascending.</summary>
    public IReadOnlyList<ChannelState> States { get; }

    /// <summary>The state at the grid's point nearest to a frequency in Hz: the grid has more than 20 points an octave.</summary>
    public ChannelState Nearest(double hz)
    {
        var place = Math.Log(hz / States[0].Hz) / Math.Log(States[^1].Hz / States[0].Hz) * (States.Count - 1);
        return States[Math.Clamp((int)Math.Round(place), 0, States.Count - 1)];
    }

    /// <summary>Where |Z| is lowest.</summary>
    public ChannelState Lowest => _lowest ??= Refine(s => s.Ohm);

    /// <summary>Where the phase is farthest from zero, either sign.</summary>
    public ChannelState LargestPhase => _largestPhase ??= Refine(s => -Math.Abs(s.PhaseDeg));

    /// <summary>Where the equivalent peak dissipation resistance is lowest.</summary>
    public ChannelState LowestEpdr => _lowestEpdr ??= Refine(s => s.EpdrOhm);

    /// <summary>Lowest |Z|, ohm.</summary>
    public double MinOhm => Lowest.Ohm;

    /// <summary>Frequency of the lowest |Z|, Hz.</summary>
    public double MinHz => Lowest.Hz;

    /// <summary>Largest phase angle of the load, degrees, with its sign.</summary>
    public double LargestPhaseDeg => LargestPhase.PhaseDeg;

    /// <summary>Lowest equivalent peak dissipation resistance, ohm.</summary>
    public double MinEpdrOhm => LowestEpdr.EpdrOhm;

    /// <summary>Frequency, |Z| and phase, ready to be drawn.</summary>
    public IReadOnlyList<(double Hz, double Ohm, double PhaseDeg)> Points => [.. States.Select(s => (s.Hz, s.Ohm, s.PhaseDeg))];

    /// <summary>Level in dB across a driver against the source, at each frequency; the driver by the number of its branch.</summary>
    public double[] LevelDb(int branch)
    {
        var levels = new double[States.Count];
        for (var i = 0; i < levels.Length; i++)
            levels[i] = States[i].Drivers[branch].Db;
        return levels;
    }

    /// <summary>
    /// Power in watts into a driver when the source plays programme noise (IEC 60268-1) of an rms voltage in volts.
    /// </summary>
    public double ProgrammePower(int branch, double volts) =>
        volts * volts * ProgrammeNoise.Mean(hz => _network.At(hz).Drivers[branch].PowerPerVoltSquared);

    /// <summary>
    /// Share (0 to 1) of the power out of the source that ends in a driver, with programme noise; the rest heats wire, crossover and other
    /// drivers.
    /// </summary>
    public double ProgrammeShare(int branch) =>
        ProgrammePower(branch, 1) / ProgrammeNoise.Mean(hz => _network.At(hz).PowerPerVoltSquared);

    // The least of a quantity: the best grid point, then golden-section search between its neighbours, in log frequency.
    private ChannelState Refine(Func<ChannelState, double> quantity)
    {
        var best = 0;
        for (var i = 1; i < States.Count; i++)
        {
            if (quantity(States[i]) < quantity(States[best]))
                best = i;
        }

        var low = Math.Log(States[Math.Max(best - 1, 0)].Hz);
        var high = Math.Log(States[Math.Min(best + 1, States.Count - 1)].Hz);
        var found = _network.At(Math.Exp(GoldenSection.Minimum(x => quantity(_network.At(Math.Exp(x))), low, high)));
        return quantity(found) < quantity(States[best]) ? found : States[best];
    }
}
