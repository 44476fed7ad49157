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
    private readonly ChartedDriver[] _drivers;
    private readonly ChartedPlace[] _places;
    private readonly ILookup<string, int> _ofVehicle;
    private readonly ChartedMount[] _adapters;
    private readonly ChartedMount[] _cups;

    public PairFinder(PairRules rules, IReadOnlySet<string> accepts, IReadOnlyList<(Vehicle Vehicle, Position Position)> places,
        IReadOnlyList<Driver> drivers, Mounts mounts)
    {
        (_rules, _accepts) = (rules, accepts);
        var numbers = new ConcurrentDictionary<object, int>();
        _drivers = [.. drivers.Select(d => new ChartedDriver(d, rules.Practice, Number(("holes", HolePattern.Of(d.Holes), d.Oval))))];
        _places = [.. places.Select(p => new ChartedPlace(p.Vehicle, p.Position, rules.Practice, Number))];
        _ofVehicle = Enumerable.Range(0, _places.Length).ToLookup(i => _places[i].Vehicle.Id, StringComparer.Ordinal);
        _adapters = [.. mounts.Adapters.Select((a, i) => new ChartedMount(a, rules.Practice, i))];
        _cups = [.. mounts.Cups.Select((c, i) => new ChartedMount(c, rules.Practice, i))];

        // From 1: 0 is left for what needs no number.
        int Number(object value) => numbers.GetOrAdd(value, _ => numbers.Count + 1);
    }

    /// <summary>By place, then driver: the spacer or cup (null: straight on the panel) and the outcome.</summary>
    /// <param name="cancel">Looked at between two drivers.</param>
    public (Part? Mount, PairVerdict Outcome)[] Find(CancellationToken cancel = default)
    {
        var found = new (Part?, PairVerdict)[_places.Length * _drivers.Length];
        Search(false, _adapters, found, cancel);
        Search(true, _cups, found, cancel);
        return found;
    }

    private void Search(bool tweeters, ChartedMount[] mounts, (Part?, PairVerdict)[] found, CancellationToken cancel)
    {
        var chosen = Enumerable.Range(0, _drivers.Length).Where(i => _drivers[i].Driver.IsTweeter == tweeters).ToArray();
        if (chosen.Length == 0 || _places.Length == 0)
            return;
        cancel.ThrowIfCancellationRequested();
        var stand = new PlacedPairFacts(_accepts, _rules.Practice) { Driver = _drivers[chosen[0]] };
        var (onPanel, onMount) = (Settled(stand, null), Settled(stand, mounts.Length > 0 ? mounts[0].Part : null));
        var shared = KindRules.Shared(_rules, onPanel, onMount);
        var worked = mounts.Length == 0 ? PlacedPairFacts.OnPanel : tweeters ? PlacedPairFacts.InCup : PlacedPairFacts.OnSpacer;
        var panels = new KindTable(PanelRules(), _places, [], _ => [], stand);
        var table = new KindTable(MountRules(), _places, mounts, Covered, stand);
        Parallel.ForEach(Partitioner.Create(0, chosen.Length, Math.Max(1, chosen.Length / 64)),
            new ParallelOptions { CancellationToken = cancel }, () =>
        {
            var pair = new PlacedPairFacts(_accepts, _rules.Practice) { Driver = _drivers[chosen[0]] };
            return (new BestMountSearch(PanelRules(), panels, MountRules(), table, _places, mounts, pair, _rules.Judged.Count),
                new (int, PairVerdict)[_places.Length]);
        }, (range, _, local) =>
        {
            for (var i = range.Item1; i < range.Item2; i++)
            {
                cancel.ThrowIfCancellationRequested();
                local.Item1.Through(_drivers[chosen[i]], local.Item2);
                for (var place = 0; place < _places.Length; place++)
                {
                    var (mount, outcome) = local.Item2[place];
                    found[(place * _drivers.Length) + chosen[i]] = (mount == 0 ? null : mounts[mount - 1].Part, outcome);
                }
            }
            return local;
        }, _ => { });

        // Rules keep notes while they judge, so every thread has its own.
        KindRules PanelRules() => new(_rules, onPanel, PlacedPairFacts.OnPanel, mounts: false, shared);

        KindRules MountRules() => new(_rules, onMount, worked, mounts: mounts.Length > 0, shared);
    }

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
