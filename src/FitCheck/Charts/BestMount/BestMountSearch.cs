using FitCheck.Charts.Pairs;
using FitCheck.Facts.Values;
using FitCheck.Findings;

namespace FitCheck.Charts.BestMount;

/// <summary>One thread's way through drivers and places of one kind: straight on the panel, and on every spacer or in every cup.</summary>
internal sealed class BestMountSearch(KindRules onPanel, KindTable panels, KindRules onMount, KindTable table, ChartedPlace[] places,
    PlacedPairFacts pair, int rules)
{
    // More than any place in the order of judging, and less than the bar that nothing takes.
    private const int NoFailure = int.MaxValue - 1;
    private const RestsOn DriverAndMount = RestsOn.Driver | RestsOn.Mount;
    private const RestsOn DriverAndPlace = RestsOn.Driver | RestsOn.Place;

    private readonly Brief[] _panelSheet = onPanel.Sheet();
    private readonly Brief[] _sheet = onMount.Sheet();
    private readonly DriverOnMount _bare = new(null);
    // For each place what is said of it and the driver, whatever carries it.
    private readonly PartialVerdict[] _here = new PartialVerdict[places.Length];
    // For each place the rule that others must not fail before.
    private readonly int[] _bar = new int[places.Length];
    // The places in the order of their bars, and where each bar begins.
    private readonly int[] _ofBar = new int[places.Length];
    private readonly int[] _ends = new int[rules + 2];
    private readonly LengthTerm[] _there = onMount.FirstLook is { } first ? Array.ConvertAll(places, p => first.There(p)) : [];
    // By what carries every driver alike.
    private readonly DriverOnMount?[] _mated = new DriverOnMount?[table.Kinds];

    /// <summary>
    /// For each place the best mounting (0 is the panel itself, others one more than their index) and what the rules say of it.
    /// </summary>
    /// <param name="driver">The driver.</param>
    /// <param name="asked">The places that are asked about.</param>
    /// <param name="best">Where that is put; nothing is where nobody asks.</param>
    public void Through(ChartedDriver driver, bool[] asked, Span<(int Mount, PairVerdict Outcome)> best)
    {
        if (places.Length == 0)
            return;
        pair.Driver = driver;
        _bare.Turn(driver);
        pair.Set(places[0], null, _bare);
        onPanel.Work(RestsOn.Driver, pair, _panelSheet);
        onMount.Work(RestsOn.Driver, pair, _sheet);
        var bareDriver = onPanel.Ask(RestsOn.Driver, pair, _panelSheet);
        var ofDriver = onMount.Ask(RestsOn.Driver, pair, _sheet);
        for (var i = 0; i < places.Length; i++)
        {
            if (!asked[i])
            {
                (best[i], _bar[i]) = (default, int.MaxValue);
                continue;
            }
            pair.Set(places[i], null, _bare);
            onPanel.Put(RestsOn.Place, panels.Places[i], _panelSheet);
            var shared = onPanel.AskShared(pair, _panelSheet);
            best[i] = (0, bareDriver.With(panels.Said[i]).With(shared).With(onPanel.Ask(DriverAndPlace, pair, _panelSheet))
                .ToOutcome(rules));
            _here[i] = ofDriver.With(shared);
            if (onMount.Asks(DriverAndPlace))
            {
                onMount.Put(RestsOn.Place, table.Places[i], _sheet);
                _here[i] = _here[i].With(onMount.Ask(DriverAndPlace, pair, _sheet));
            }
            Raise(i, best[i].Outcome);
        }
        SortByBar();
        // Where nothing can be better than the panel itself, nothing else is asked about.
        if (_ends[^1] == 0)
            return;
        foreach (var mount in table.Asked)
        {
            if (table.Candidates[mount.Index].Length == places.Length)
                Universal(mount, best);
            else
                Special(mount, best);
        }
    }

    // Where one goes everywhere, only the places are looked at that it may better.
    private void Universal(ChartedMount mount, Span<(int Mount, PairVerdict Outcome)> bests)
    {
        var mated = Mate(mount);
        var judged = table.Judged[mount.Index];
        var first = mated.Said.HasFailed ? null : onMount.FirstLook;
        for (var bar = 0; bar <= Math.Min(mated.Said.Failed, rules); bar++)
        {
            foreach (var place in _ofBar.AsSpan(_ends[bar], _ends[bar + 1] - _ends[bar]))
            {
                ref var best = ref bests[place];
                if (mated.Said.Failed < _bar[place] || (first is not null && first.IsWorse(_there[place], mated.Needed, best.Outcome)))
                    continue;
                if (MayBetter(place, table.Judgements[judged[place]], mated, best.Outcome))
                    Mounted(mount, mated, table.Candidates[mount.Index][place], ref best);
            }
        }
    }

    private void Special(ChartedMount mount, Span<(int Mount, PairVerdict Outcome)> bests)
    {
        DriverOnMount? mated = null;
        var (covered, judged) = (table.Covered[mount.Index], table.Judged[mount.Index]);
        for (var i = 0; i < covered.Length; i++)
        {
            // One of which a rule fails earlier is no better.
            var place = covered[i];
            if (Math.Min(table.Judgements[judged[i]].Failed, NoFailure) < _bar[place])
                continue;
            mated ??= Mate(mount);
            if (MayBetter(place, table.Judgements[judged[i]], mated, bests[place].Outcome))
                Mounted(mount, mated, table.Candidates[mount.Index][i], ref bests[place]);
        }
    }

    // Whether what is said so far is better than the best, and with the rule that is asked first: what more is asked only makes it worse.
    private bool MayBetter(int place, in PartialVerdict mounted, DriverOnMount mated, in PairVerdict best)
    {
        ref readonly var here = ref _here[place];
        ref readonly var carried = ref mated.Said;
        var failed = Math.Min(mounted.Failed, Math.Min(here.Failed, carried.Failed));
        if (failed != int.MaxValue)
        {
            var margin = failed == mounted.Failed ? mounted.FailedMargin : failed == here.Failed ? here.FailedMargin : carried.FailedMargin;
            return failed != best.Failed ? failed > best.Failed : margin > best.Margin;
        }
        var worst = StatusWords.WorseOf(mounted.Worst, StatusWords.WorseOf(here.Worst, carried.Worst));
        var least = Math.Min(mounted.Least, Math.Min(here.Least, carried.Least));
        if (onMount.FirstLook is { } first)
        {
            var spare = LengthTerm.Difference(_there[place], mated.Needed);
            var keeps = first.Rule.Keeps(spare.Si, spare.Low, spare.High, out var metres);
            if (keeps == false)
                return first.Order != best.Failed ? first.Order > best.Failed : PairVerdict.Nanometres(metres) > best.Margin;
            if (keeps == true)
                (worst, least) = (spare.IsGuess ? StatusWords.WorseOf(worst, Status.Measure) : worst,
                    Math.Min(least, PairVerdict.Nanometres(metres)));
        }
        return worst != best.Status ? worst < best.Status : least > best.Margin;
    }

    private void Mounted(ChartedMount mount, DriverOnMount mated, in Candidate candidate, ref (int Mount, PairVerdict Outcome) best)
    {
        var said = _here[candidate.Place].With(candidate.Said).With(mated.Said);
        if (onMount.MayAskPair(said))
        {
            pair.Set(places[candidate.Place], mount, mated);
            onMount.Put(RestsOn.Place, table.Places[candidate.Place], _sheet);
            onMount.Put(RestsOn.Mount | RestsOn.Place, candidate.Facts, _sheet);
            onMount.Work(DriverAndPlace, pair, _sheet);
            HandOn(mated);
            said = onMount.AskPair(pair, _sheet, said, best.Outcome);
            if (!said.HasFailed && said.ToOutcome(rules).IsBetterThan(best.Outcome))
                said = said.With(mated.Rest ??= onMount.Ask(DriverAndMount, pair, _sheet, canFail: false));
        }
        var outcome = said.ToOutcome(rules);
        if (!outcome.IsBetterThan(best.Outcome))
            return;
        best = (mount.Index + 1, outcome);
        Raise(candidate.Place, outcome);
    }

    // Where a rule fails whatever carries the driver, nothing gets farther, or keeps more of that rule's margin.
    private void Raise(int place, in PairVerdict best)
    {
        ref readonly var here = ref _here[place];
        var isLost = here.Failed < best.Failed || (here.Failed == best.Failed && here.FailedMargin <= best.Margin);
        _bar[place] = isLost ? int.MaxValue : best.Failed;
    }

    // Places that nothing can better are left out.
    private void SortByBar()
    {
        Array.Clear(_ends);
        foreach (var bar in _bar)
        {
            if (bar <= rules)
                _ends[bar + 1]++;
        }
        for (var i = 1; i < _ends.Length; i++)
            _ends[i] += _ends[i - 1];
        var next = _ends.AsSpan().ToArray();
        for (var place = 0; place < _bar.Length; place++)
        {
            if (_bar[place] <= rules)
                _ofBar[next[_bar[place]]++] = place;
        }
    }

    private DriverOnMount Mate(ChartedMount mount)
    {
        var mated = _mated[mount.Alike] ??= new DriverOnMount(mount);
        onMount.Put(RestsOn.Mount, table.Mounts[mount.Index], _sheet);
        if (mated.IsOf(pair.Driver))
            return mated;
        mated.Turn(pair.Driver);
        pair.Set(places[0], mount, mated);
        mated.Said = onMount.Ask(DriverAndMount, pair, _sheet, canFail: true);
        if (!mated.Said.HasFailed && onMount.FirstLook is { } first)
            mated.Needed = first.Needed(mated);
        return mated;
    }

    private void HandOn(DriverOnMount mated)
    {
        if (mated.HasFacts)
        {
            onMount.Put(DriverAndMount, mated.Facts, _sheet);
            return;
        }
        onMount.Work(DriverAndMount, pair, _sheet);
        mated.Facts = onMount.Taken(DriverAndMount, _sheet, mated.Facts);
        mated.HasFacts = true;
    }
}
