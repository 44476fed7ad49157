using FitCheck.Physics.Electrical.Loads;

namespace FitCheck.Facts.Contexts;

/// <summary>
/// Loads that were solved before, by their parts and values: both sides of a vehicle mostly have the same one, and what is tried of a build
/// leaves most of them as they are. For as many threads as ask.
/// </summary>
internal sealed class SolvedLoads
{
    // Each holds some tens of kilobytes; the oldest goes first.
    private const int Most = 500;

    private readonly Lock _lock = new();
    private readonly Dictionary<ChannelLoad, ChannelSweep> _sweeps = [];
    private readonly Queue<ChannelLoad> _byAge = [];

    /// <summary>The load from 20 Hz to 20 kHz.</summary>
    public ChannelSweep Of(ChannelLoad load)
    {
        lock (_lock)
        {
            if (_sweeps.TryGetValue(load, out var known))
                return known;
        }
        var sweep = load.Sweep();
        lock (_lock)
        {
            if (!_sweeps.TryAdd(load, sweep))
                return sweep;
            _byAge.Enqueue(load);
            if (_byAge.Count > Most)
                _sweeps.Remove(_byAge.Dequeue());
        }
        return sweep;
    }
}
