using System.Collections.Concurrent;
using FitCheck.Catalog;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// Finds the best mounting of every driver at every place, and what the rules say of it, as <see cref="PairJudge"/> would: each fact is
/// worked out once for the things it rests on, and no more is asked of a pair once a rule fails. The answer is the same on any number of
/// threads.
/// </summary>
internal sealed class PairFinder
{
    private readonly PairRules _rules;
    private readonly IReadOnlySet<string> _accepts;
    private readonly bool _sieved;
    private readonly ConcurrentDictionary<object, int> _numbers = new();
    private readonly ChartedPlace[] _places;
    private readonly ILookup<string, int> _ofVehicle;
    private readonly ChartedMount[] _adapters;
    private readonly ChartedMount[] _cups;
    private readonly Dictionary<bool, Kind> _kinds = [];

    /// <summary>What is made ready once for all drivers of a kind, and the threads' ways through it that others go on with.</summary>
    private sealed record Kind(ChartedMount[] Mounts, KindTable Table, Func<BestMountSearch> Begin)
    {
        public ConcurrentBag<BestMountSearch> Begun { get; } = [];
    }

    /// <param name="rules">What judges.</param>
    /// <param name="accepts">Work that is accepted.</param>
    /// <param name="places">Every place.</param>
    /// <param name="mounts">What may carry a driver there.</param>
    /// <param name="sieved">False to judge also what a cheaper part does alike: the answer is the same, later.</param>
    public PairFinder(PairRules rules, IReadOnlySet<string> accepts, IReadOnlyList<(Vehicle Vehicle, Position Position)> places,
        Mounts mounts, bool sieved = true)
    {
        (_rules, _accepts, _sieved) = (rules, accepts, sieved);
        _places = [.. places.Select(p => new ChartedPlace(p.Vehicle, p.Position, rules.Practice, Number))];
        _ofVehicle = Enumerable.Range(0, _places.Length).ToLookup(i => _places[i].Vehicle.Id, StringComparer.Ordinal);
        _adapters = [.. mounts.Adapters.Select((a, i) => new ChartedMount(a, rules.Practice, i))];
        _cups = [.. mounts.Cups.Select((c, i) => new ChartedMount(c, rules.Practice, i))];
    }

    /// <summary>
    /// By place, then driver: the spacer or cup (null: straight on the panel) and the outcome. May be asked for some drivers after others.
    /// </summary>
    /// <param name="drivers">Those that are tried.</param>
    /// <param name="isAsked">Whether a driver is asked about at a place; null for everywhere. Elsewhere the answer means nothing.</param>
    /// <param name="cancel">Looked at between two drivers.</param>
    public (Part? Mount, PairVerdict Outcome)[] Find(IReadOnlyList<Driver> drivers, Func<Driver, Position, bool>? isAsked = null,
        CancellationToken cancel = default)
    {
        var found = new (Part?, PairVerdict)[_places.Length * drivers.Count];
        var charted = new ChartedDriver[drivers.Count];
        for (var i = 0; i < charted.Length; i++)
            charted[i] = new ChartedDriver(drivers[i], _rules.Practice,
                Number(("holes", HolePattern.Of(drivers[i].Holes), drivers[i].Oval)));
        foreach (var tweeters in new[] { false, true })
            Search(tweeters, charted, isAsked, found, cancel);
        return found;
    }

    /// <summary>How many mountings are asked about for a driver like this one, at all places together.</summary>
    internal int Candidates(Driver driver) =>
        KindOf(driver.IsTweeter, new ChartedDriver(driver, _rules.Practice, 0)).Table.Candidates.Sum(c => c.Length);

    private void Search(bool tweeters, ChartedDriver[] drivers, Func<Driver, Position, bool>? isAsked, (Part?, PairVerdict)[] found,
        CancellationToken cancel)
    {
        var asked = drivers.Select(d => d.Driver.IsTweeter == tweeters
            ? Array.ConvertAll(_places, p => isAsked?.Invoke(d.Driver, p.Position) ?? true) : []).ToArray();
        var chosen = Enumerable.Range(0, drivers.Length).Where(i => asked[i].Contains(true)).ToArray();
        if (chosen.Length == 0)
            return;
        cancel.ThrowIfCancellationRequested();
        if (!_kinds.TryGetValue(tweeters, out var kind))
            _kinds[tweeters] = kind = KindOf(tweeters, drivers[chosen[0]]);
        Parallel.ForEach(Partitioner.Create(0, chosen.Length, Math.Max(1, chosen.Length / 64)),
            new ParallelOptions { CancellationToken = cancel },
            () => (Search: kind.Begun.TryTake(out var begun) ? begun : kind.Begin(), Best: new (int, PairVerdict)[_places.Length]),
            (range, _, local) =>
        {
            for (var i = range.Item1; i < range.Item2; i++)
            {
                cancel.ThrowIfCancellationRequested();
                local.Search.Through(drivers[chosen[i]], asked[chosen[i]], local.Best);
                for (var place = 0; place < _places.Length; place++)
                {
                    var (mount, outcome) = local.Best[place];
                    found[(place * drivers.Length) + chosen[i]] = (mount == 0 ? null : kind.Mounts[mount - 1].Part, outcome);
                }
            }
            return local;
        }, local => kind.Begun.Add(local.Search));
    }

    private Kind KindOf(bool tweeters, ChartedDriver first)
    {
        var mounts = tweeters ? _cups : _adapters;
        var stand = new PlacedPairFacts(_accepts, _rules.Practice) { Driver = first };
        var (onPanel, onMount) = (Settled(stand, null), Settled(stand, mounts.Length > 0 ? mounts[0].Part : null));
        var shared = KindRules.Shared(_rules, onPanel, onMount);
        var worked = mounts.Length == 0 ? PlacedPairFacts.OnPanel : tweeters ? PlacedPairFacts.InCup : PlacedPairFacts.OnSpacer;
        var panels = new KindTable(PanelRules(), _places, [], _ => [], stand, _sieved);
        var table = new KindTable(MountRules(), _places, mounts, Covered, stand, _sieved);
        return new Kind(mounts, table, () => new BestMountSearch(PanelRules(), panels, MountRules(), table, _places,
            new PlacedPairFacts(_accepts, _rules.Practice) { Driver = first }, _rules.Judged.Count));

        // Rules keep notes while they judge, so every thread has its own.
        KindRules PanelRules() => new(_rules, onPanel, PlacedPairFacts.OnPanel, mounts: false, shared);

        KindRules MountRules() => new(_rules, onMount, worked, mounts: mounts.Length > 0, shared);
    }

    // From 1: 0 is left for what needs no number.
    private int Number(object value) => _numbers.GetOrAdd(value, _ => _numbers.Count + 1);

    // Nearly all are for one vehicle; they need not be asked about every place.
    private IEnumerable<int> Covered(ChartedMount mount)
    {
        var fits = Mounts.FitsOf(mount.Part);
        var asked = fits.Count == 0 ? Enumerable.Range(0, _places.Length) : fits.SelectMany(f => _ofVehicle[f.Vehicle.Value]).Distinct()
            .Order();
        return asked.Where(i => Fit.Covers(fits, _places[i].Vehicle.Id, _places[i].Position.Id));
    }

    // What is settled for a kind of pair is so for the first of it.
    private FactTable Settled(PlacedPairFacts pair, Part? mount) =>
        new Pair(_places[0].Vehicle, _places[0].Position, pair.Driver.Driver, mount).Facts(_accepts, _rules.Practice);
}
