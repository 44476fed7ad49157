using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Findings;

namespace FitCheck.Cli.Asking;

/// <summary>The questions about one place: driver or set, spacer or cup, harness adapter.</summary>
internal sealed class PartQuestions(PartsCatalog catalog, Vehicle vehicle, ChartResult chart, DraftJudge judge, IQuestions ask)
{
    // So many drivers of a place that is still to come are tried beside an offer, and so many offers are judged at all: the others are
    // worse by the chart alone.
    private const int Ahead = 3, Judged = 40;

    private static readonly Choice None = new("", "none");

    /// <summary>
    /// The build with what goes to these positions; a set that was chosen for the woofer on the same wires brings the tweeter.
    /// </summary>
    /// <param name="group">The positions.</param>
    /// <param name="draft">What was answered before.</param>
    /// <param name="later">Places that are still to come.</param>
    public BuildDraft Place(PlaceGroup group, BuildDraft draft, IReadOnlyList<PlaceGroup> later)
    {
        var brought = draft.Places.FirstOrDefault(p => p.Set is not null && group.IsTweeter && p.Group.SharesOutputWith(group))?.Set;
        var place = brought is not null && Member(brought, group) is { } tweeter ? Best(group, tweeter, brought)
            : Driver(group, draft, later);
        for (var i = 0; i < place.Mounts.Count; i++)
            place = Mount(place, i, draft, later);
        place = Harness(place, draft, later);
        return draft with { Places = [.. draft.Places, place] };
    }

    private PlaceDraft Driver(PlaceGroup group, BuildDraft draft, IReadOnlyList<PlaceGroup> later)
    {
        var tweeters = later.Where(g => g.IsTweeter && !group.IsTweeter && g.SharesOutputWith(group)).ToList();
        List<(PlaceDraft Place, Status Status)> offers = [.. Offers(group)];
        if (tweeters.Count > 0)
        {
            offers.AddRange(chart.Sets.Where(s => s.Places.Any(p => group.Holds(p.Position))).GroupBy(s => s.Set.Id, StringComparer.Ordinal)
                .Where(g => g.Count() == group.Positions.Count && Member(g.First().Set, group) is not null)
                .Select(g => (Best(group, Member(g.First().Set, group)!, g.First().Set), StatusWords.Worst(g.Select(s => s.Status)))));
        }
        offers = [.. offers.OrderBy(o => o.Status).ThenBy(o => o.Place.Set is null).ThenBy(o => PartOf(o.Place).Price.Value.Amount)
            .ThenBy(o => PartOf(o.Place).Id, StringComparer.Ordinal).Take(Judged)];
        var verdicts = judge.BestOf([.. offers.Select(o => Completed(draft, o.Place, later))]);
        var ordered = offers.Select((o, i) => (o.Place, Verdict: verdicts[i])).OrderBy(o => o.Verdict.Rank).ThenBy(o => o.Place.Set is null)
            .ThenBy(o => o.Verdict).ToList();
        var id = ask.One($"Which driver{(tweeters.Count > 0 ? " or set" : "")}: {group.Name}?",
            [.. ordered.Select(
                o => new Choice(PartOf(o.Place).Id,
                    $"{PartOf(o.Place).Name}, {PartOf(o.Place).Price.Value}, {o.Verdict.Of(PartOf(o.Place).Id, o.Place.Driver.Id)}"))])
            .Id;
        return ordered.Find(o => PartOf(o.Place).Id == id).Place;
    }

    // The same as on the other side, unless it is made for one side only.
    private PlaceDraft Mount(PlaceDraft place, int index, BuildDraft draft, IReadOnlyList<PlaceGroup> later)
    {
        var (position, driver) = (place.Group.Positions[index], place.Driver);
        var all = catalog.IdsOf(driver.IsTweeter ? "cup" : "adapter").Select(catalog.Find).OfType<Part>().Where(p => Goes(p, position))
            .ToList();
        if (index > 0 && (place.Mounts[index - 1] is null || all.Contains(place.Mounts[index - 1]!)))
            return With(place, index, place.Mounts[index - 1]);
        if (all.Count == 0)
            return With(place, index, null);
        List<Part?> offers = [.. all.OrderBy(p => p.Price.Value.Amount).ThenBy(p => p.Id, StringComparer.Ordinal), null];
        // What fits both sides is judged on both.
        var verdicts = judge.BestOf([.. offers.Select(o => Completed(draft, Everywhere(place, index, o), later))]);
        List<(Part? Part, DraftVerdict Verdict)> ordered = [.. offers.Select((o, i) => (o, verdicts[i])).OrderBy(o => o.Item2)
            .ThenBy(o => o.o?.Id != place.Mounts[index]?.Id)];
        var what = driver.IsTweeter ? "cup" : "spacer";
        var id = ask.One($"Which {what}: {position.Name}?",
            [.. ordered.Select(o => o.Part is null ? None with { Label = $"none, straight on the panel, {o.Verdict.Of(place.Driver.Id)}" }
                : new Choice(o.Part.Id, $"{o.Part.Name}, {o.Part.Price.Value}, {o.Verdict.Of(o.Part.Id)}"))]).Id;
        return With(place, index, ordered.Find(o => (o.Part?.Id ?? "") == id).Part);
    }

    private PlaceDraft Everywhere(PlaceDraft place, int index, Part? mount)
    {
        var next = With(place, index, mount);
        for (var i = index + 1; i < place.Mounts.Count; i++)
        {
            if (mount is null || Goes(mount, place.Group.Positions[i]))
                next = With(next, i, mount);
        }
        return next;
    }

    private static PlaceDraft With(PlaceDraft place, int index, Part? mount) =>
        place with { Mounts = [.. place.Mounts.Select((m, i) => i == index ? mount : m)] };

    private bool Goes(Part part, Position position) => part switch
    {
        Adapter adapter => Fit.Covers(adapter.Fits, vehicle.Id, position.Id) && (adapter.Handed == "no" || adapter.Handed == position.Side),
        Cup cup => Fit.Covers(cup.Fits, vehicle.Id, position.Id),
        _ => false,
    };

    // Only those that mate on both ends are worth a question; the factory plug may fit as it is.
    private PlaceDraft Harness(PlaceDraft place, BuildDraft draft, IReadOnlyList<PlaceGroup> later)
    {
        var mating = Mating(place.Group, place.Driver);
        if (mating.Count == 0)
            return place;
        List<PlaceDraft> offers = [.. mating.Select(h => place with { Harness = h }), place with { Harness = null }];
        var verdicts = judge.BestOf([.. offers.Select(o => Completed(draft, o, later))]);
        List<(PlaceDraft Place, DraftVerdict Verdict)> ordered = [.. offers.Zip(verdicts).OrderBy(o => o.Second)];
        var id = ask.One($"Which harness adapter: {place.Group.Name}?",
            [.. ordered.Select(
                o => o.Place.Harness is not { } h ? None with { Label = $"none, wires are cut and spliced, {o.Verdict.Of()}" }
                : new Choice(h.Id, $"{h.Name}, {h.Price.Value}, {o.Verdict.Of(h.Id)}"))]).Id;
        return ordered.Find(o => (o.Place.Harness?.Id ?? "") == id).Place;
    }

    private List<Harness> Mating(PlaceGroup group, Driver driver)
    {
        var plug = group.Positions[0].Plug?.Value;
        if (plug is null || driver.Terminals is not { } terminals || (terminals.Type == "plug" && terminals.Family?.Value == plug))
            return [];
        return [.. catalog.IdsOf("harness").Select(catalog.Find).OfType<Harness>()
            .Where(h => h.From?.Value == plug && h.To?.Takes(terminals) == true).OrderBy(h => h.Price.Value.Amount)];
    }

    // The build with this place, and what of the places still to come could go with it.
    private IReadOnlyList<BuildDraft> Completed(BuildDraft draft, PlaceDraft place, IReadOnlyList<PlaceGroup> later)
    {
        IReadOnlyList<BuildDraft> drafts = [draft with { Places = [.. draft.Places, place] }];
        foreach (var group in later)
        {
            var set = drafts[0].Places.FirstOrDefault(p => p.Set is not null && group.IsTweeter && p.Group.SharesOutputWith(group))?.Set;
            // Only a tweeter has to go with what else hangs on its wires.
            List<PlaceDraft> next = set is not null && Member(set, group) is { } tweeter ? [Best(group, tweeter, set)]
                : [.. Offers(group).OrderBy(o => o.Status).ThenBy(o => o.Place.Driver.Price.Value.Amount).Take(group.IsTweeter ? Ahead : 1)
                    .Select(o => o.Place)];
            if (next.Count > 0)
                drafts = [.. drafts.SelectMany(d => next.Select(n => d with { Places = [.. d.Places, n] }))];
        }
        return drafts;
    }

    private IEnumerable<(PlaceDraft Place, Status Status)> Offers(PlaceGroup group) =>
        chart.Rows.Where(r => group.Holds(r.Position)).GroupBy(r => r.Driver.Id, StringComparer.Ordinal)
            .Where(g => g.Count() == group.Positions.Count)
            .Select(g => (Best(group, g.First().Driver, null), StatusWords.Worst(g.Select(r => r.Status))));

    // On what it fits best by the chart.
    private PlaceDraft Best(PlaceGroup group, Driver driver, ComponentSet? set) => new(group, driver, set,
        [.. group.Positions.Select(p => chart.Rows.FirstOrDefault(r => r.Position.Id == p.Id && r.Driver.Id == driver.Id)?.Mount)],
        Mating(group, driver).FirstOrDefault());

    private Driver? Member(ComponentSet set, PlaceGroup group) =>
        (group.IsTweeter ? set.Tweeter : set.Woofer) is { } id ? catalog.Find(id.Value) as Driver : null;

    private static Part PartOf(PlaceDraft place) => place.Set is { } set ? set : place.Driver;
}
