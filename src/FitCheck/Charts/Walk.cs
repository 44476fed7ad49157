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
    private Mated?[] _mated = [];

    /// <summary>For each place the best mounting (0 is the panel itself, others one more than their index) and what the rules say of it.</summary>
    public void Through(DriverSide driver, Span<(int Mount, Outcome Outcome)> best)
    {
        if (places.Length == 0)
            return;
        spot.Driver = driver;
        var bare = new Mated(driver, null);
        _mated = new Mated?[mounts.Length];
        spot.Set(places[0], null, bare);
        onPanel.Work(RestsOn.Driver, spot, _panelSheet);
        onMount.Work(RestsOn.Driver, spot, _sheet);
        var ofDriver = onMount.Ask(RestsOn.Driver, spot, _sheet);
        for (var i = 0; i < places.Length; i++)
        {
            spot.Set(places[i], null, bare);
            onPanel.Put(RestsOn.Place, panels.Places[i], _panelSheet);
            best[i] = (0, onPanel.AskAll(spot, _panelSheet).ToOutcome(rules));
            if (table.Candidates[i].Length > 0)
                Mounted(i, ofDriver, ref best[i]);
        }
    }

    private void Mounted(int place, in Partial ofDriver, ref (int Mount, Outcome Outcome) best)
    {
        onMount.Put(RestsOn.Place, table.Places[place], _sheet);
        onMount.Work(DriverAndPlace, spot, _sheet);
        var here = ofDriver.With(onMount.Ask(DriverAndPlace, spot, _sheet));
        foreach (ref readonly var candidate in table.Candidates[place].AsSpan())
        {
            var mated = _mated[candidate.Mount] ?? Mate(candidate.Mount, places[place]);
            var said = here.With(candidate.Said).With(mated.Said!.Value);
            if (!said.HasFailed)
            {
                // What is said so far only gets worse.
                if (!new Outcome(said.Worst, rules, said.Least).IsBetterThan(best.Outcome))
                    continue;
                spot.Set(places[place], mounts[candidate.Mount], mated);
                onMount.Put(RestsOn.Mount, table.Mounts[candidate.Mount], _sheet);
                onMount.Put(RestsOn.Mount | RestsOn.Place, candidate.Facts, _sheet);
                onMount.Put(DriverAndMount, mated.Facts, _sheet);
                said = said.With(onMount.Ask(RestsOn.Pair, spot, _sheet));
                if (!said.HasFailed && new Outcome(said.Worst, rules, said.Least).IsBetterThan(best.Outcome))
                    said = said.With(mated.Rest ??= onMount.Ask(DriverAndMount, spot, _sheet, canFail: false));
            }
            var outcome = said.ToOutcome(rules);
            if (outcome.IsBetterThan(best.Outcome))
                best = (candidate.Mount + 1, outcome);
        }
    }

    private Mated Mate(int mount, PlaceSide place)
    {
        var mated = new Mated(spot.Driver, mounts[mount]);
        spot.Set(place, mounts[mount], mated);
        onMount.Put(RestsOn.Mount, table.Mounts[mount], _sheet);
        onMount.Work(DriverAndMount, spot, _sheet);
        mated.Facts = onMount.Taken(DriverAndMount, _sheet);
        mated.Said = onMount.Ask(DriverAndMount, spot, _sheet, canFail: true);
        return _mated[mount] = mated;
    }
}
