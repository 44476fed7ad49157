using FitCheck.Facts;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>One thread's way through drivers and places of one kind: straight on the panel, and on every spacer or in every cup.</summary>
internal sealed class Walk(KindRules onPanel, KindTable panels, KindRules onMount, KindTable table, PlaceSide[] places, MountSide[] mounts, Spot spot, int rules)
{
    private const RestsOn DriverAndMount = RestsOn.Driver | RestsOn.Mount;
    private const RestsOn DriverAndPlace = RestsOn.Driver | RestsOn.Place;

    private readonly Brief[] _panelSheet = onPanel.Sheet();
    private readonly Brief[] _sheet = onMount.Sheet();
    private readonly Mated _bare = new(null, null);
    // For each place what is said of it and the driver, whatever carries it.
    private readonly Partial[] _here = new Partial[places.Length];
    // For each place the rule that others must not fail before.
    private readonly int[] _bar = new int[places.Length];
    private readonly Mated[] _mated = [.. mounts.Select(m => new Mated(null, m))];

    /// <summary>For each place the best mounting (0 is the panel itself, others one more than their index) and what the rules say of it.</summary>
    public void Through(DriverSide driver, Span<(int Mount, Outcome Outcome)> best)
    {
        if (places.Length == 0)
            return;
        spot.Driver = driver;
        _bare.Turn(driver);
        spot.Set(places[0], null, _bare);
        onPanel.Work(RestsOn.Driver, spot, _panelSheet);
        onMount.Work(RestsOn.Driver, spot, _sheet);
        var bareDriver = onPanel.Ask(RestsOn.Driver, spot, _panelSheet);
        var ofDriver = onMount.Ask(RestsOn.Driver, spot, _sheet);
        for (var i = 0; i < places.Length; i++)
        {
            spot.Set(places[i], null, _bare);
            onPanel.Put(RestsOn.Place, panels.Places[i], _panelSheet);
            var shared = onPanel.AskShared(spot, _panelSheet);
            best[i] = (0, bareDriver.With(panels.Said[i]).With(shared).With(onPanel.Ask(DriverAndPlace, spot, _panelSheet)).ToOutcome(rules));
            _here[i] = ofDriver.With(shared);
            if (onMount.Asks(DriverAndPlace))
            {
                onMount.Put(RestsOn.Place, table.Places[i], _sheet);
                _here[i] = _here[i].With(onMount.Ask(DriverAndPlace, spot, _sheet));
            }
            Raise(i, best[i].Outcome);
        }
        foreach (var mount in mounts)
            Mounted(mount, best);
    }

    private void Mounted(MountSide mount, Span<(int Mount, Outcome Outcome)> bests)
    {
        var mated = _mated[mount.Index];
        var isTurned = false;
        var quick = table.Quick[mount.Index];
        for (var i = 0; i < quick.Length; i++)
        {
            // One of which a rule fails earlier is no better.
            if (quick[i].Failed < _bar[quick[i].Place])
                continue;
            ref readonly var candidate = ref table.Candidates[mount.Index][i];
            ref var best = ref bests[candidate.Place];
            if (!isTurned)
                Mate(mated, places[candidate.Place], mount);
            isTurned = true;
            if (mated.Said.Failed < best.Outcome.Failed)
                continue;
            var said = _here[candidate.Place].With(candidate.Said).With(mated.Said);
            // What is said so far only gets worse.
            if (!said.ToOutcome(rules).IsBetterThan(best.Outcome))
                continue;
            if (onMount.MayAskPair(said))
            {
                spot.Set(places[candidate.Place], mount, mated);
                onMount.Put(RestsOn.Place, table.Places[candidate.Place], _sheet);
                onMount.Put(RestsOn.Mount | RestsOn.Place, candidate.Facts, _sheet);
                onMount.Work(DriverAndPlace, spot, _sheet);
                HandOn(mated);
                said = onMount.AskPair(spot, _sheet, said, best.Outcome);
                if (!said.HasFailed && said.ToOutcome(rules).IsBetterThan(best.Outcome))
                    said = said.With(mated.Rest ??= onMount.Ask(DriverAndMount, spot, _sheet, canFail: false));
            }
            var outcome = said.ToOutcome(rules);
            if (!outcome.IsBetterThan(best.Outcome))
                continue;
            best = (mount.Index + 1, outcome);
            Raise(candidate.Place, outcome);
        }
    }

    // Where a rule fails whatever carries the driver, and earlier than on the panel, nothing is better.
    private void Raise(int place, in Outcome best) => _bar[place] = _here[place].Failed < best.Failed ? int.MaxValue : best.Failed;

    private void Mate(Mated mated, PlaceSide place, MountSide mount)
    {
        mated.Turn(spot.Driver);
        spot.Set(place, mount, mated);
        onMount.Put(RestsOn.Mount, table.Mounts[mount.Index], _sheet);
        mated.Said = onMount.Ask(DriverAndMount, spot, _sheet, canFail: true);
    }

    private void HandOn(Mated mated)
    {
        if (mated.HasFacts)
        {
            onMount.Put(DriverAndMount, mated.Facts, _sheet);
            return;
        }
        onMount.Work(DriverAndMount, spot, _sheet);
        mated.Facts = onMount.Taken(DriverAndMount, _sheet, mated.Facts);
        mated.HasFacts = true;
    }
}
