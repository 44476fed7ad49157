using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>
/// What the filters before a driver leave to it, those of the solved network and the electronic ones together. What takes off the same at
/// every frequency, a wire or an L-pad, is left out of it.
/// </summary>
/// <param name="Band">Where it begins and ends.</param>
/// <param name="LevelsDb">Level at its terminals against that without filters, at the frequencies of the grid.</param>
/// <param name="Unsure">What it rests on that nobody recorded.</param>
internal sealed record DriverBand(PassBand Band, IReadOnlyList<double> LevelsDb, IReadOnlyList<Unsure> Unsure)
{
    /// <summary>The band at a position; null when the network before the driver can't be solved.</summary>
    public static DriverBand? Of(ChannelContext channel, string position)
    {
        if (channel.Of(position) is not ({ } branch, var index))
            return null;
        var levels = FrequencyGrid.Audio.Select(hz => Decibel.OfAmplitude(channel.ActiveGain(hz))).ToArray();
        IReadOnlyList<Unsure> unsure = channel.FiltersUnsure;
        // Electronic filters alone rest on nothing that is wired; passive ones of a driver not on what hangs beside it.
        var shared = channel.Load is { SharedElements.Count: > 0 } or { InSeries: > 1 };
        var passiveToo = branch.Physics.Elements is { Count: > 0 } || shared;
        if (passiveToo)
        {
            if (channel.Sweep is not { } sweep)
                return null;
            var (passive, loss) = (sweep.LevelDb(index), ResistiveLoss.Db(channel.Load!.SharedElements, branch.Physics)
                + SeriesLoss(channel.Load, index));
            for (var i = 0; i < levels.Length; i++)
                levels[i] += passive[i] - loss;
            unsure = [.. channel.UnsureWithinBounds.Where(u => shared || u.IsBounded), .. unsure];
        }
        // A section of a crossover that nobody recorded may be anything.
        if (branch.Unrecorded is { } unread)
            unsure = [.. unsure, unread with { Estimated = true }];
        return new DriverBand(PassBand.Of(FrequencyGrid.Audio, levels, HomeOf(branch.Placed?.Driver?.Part.Type)), levels, unsure)
        {
            RestsOnNetwork = passiveToo,
            Unrecorded = branch.Unrecorded,
        };
    }

    /// <summary>True when passive parts have a share in it.</summary>
    public bool RestsOnNetwork { get; private init; }

    /// <summary>What stands in the driver's branch and nobody recorded; null when all of it is.</summary>
    public Unsure? Unrecorded { get; private init; }

    /// <summary>The same with resistances that nobody measured at either bound.</summary>
    public IReadOnlyList<DriverBand> AtBounds { get; init; } = [];

    /// <summary>Something of the band, with all that those resistances can make of it.</summary>
    public Uncertain Within(Func<DriverBand, double> read) => Within(read(this), AtBounds.Select(read));

    /// <summary>Where two drivers meet: the frequency at which the softer one of them is loudest, and how loud it is there.</summary>
    public (double Hz, Uncertain Db) Meeting(DriverBand other)
    {
        var (hz, db) = Meeting(LevelsDb, other.LevelsDb);
        var all = from a in AtBounds.Append(this) from b in other.AtBounds.Append(other) select Meeting(a.LevelsDb, b.LevelsDb).Db;
        return (hz, Within(db, all));
    }

    private static (double Hz, double Db) Meeting(IReadOnlyList<double> one, IReadOnlyList<double> other)
    {
        var best = Enumerable.Range(0, one.Count).MaxBy(i => Math.Min(one[i], other[i]));
        return (FrequencyGrid.Audio[best], Math.Min(one[best], other[best]));
    }

    private static Uncertain Within(double nominal, IEnumerable<double> bounds)
    {
        var (low, high) = (nominal, nominal);
        foreach (var bound in bounds)
            (low, high) = (Math.Min(low, bound), Math.Max(high, bound));
        return new Uncertain(nominal, low, high, (high - low) / 2);
    }

    // Drivers one behind the other share the voltage by their resistance.
    private static double SeriesLoss(ChannelLoad load, int index) => index >= load.InSeries ? 0
        : Decibel.OfAmplitude(load.Branches[index].Driver.Re / load.Branches.Take(load.InSeries).Sum(b => b.Driver.Re));

    // In the middle of what such a driver plays (common practice, no source).
    private static double HomeOf(string? type) => type switch { "subwoofer" => 50, "tweeter" => 10_000, "woofer" => 300, _ => 1000 };
}
