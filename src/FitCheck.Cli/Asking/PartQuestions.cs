using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Findings;

namespace FitCheck.Cli.Asking;

/// <summary>The questions about one place: driver or set, spacer or cup, harness adapter.</summary>
internal sealed class PartQuestions(PartsCatalog catalog, Vehicle vehicle, ChartResult chart, IQuestions ask)
{
    private static readonly Choice None = new("", "none");

    /// <summary>What goes to these positions; a set that was chosen for the woofer on the same wires brings the tweeter.</summary>
    public PlaceDraft Place(PlaceGroup group, IReadOnlyList<PlaceDraft> already, IReadOnlyList<PlaceGroup> chosen)
    {
        var (driver, set) =
            already.FirstOrDefault(p => p.Set is not null && group.IsTweeter && p.Group.SharesOutputWith(group))?.Set is { } bought
                && Member(bought, group) is { } tweeter
            ? (tweeter, bought) : Driver(group, chosen.Any(g => g.IsTweeter && !group.IsTweeter && g.SharesOutputWith(group)));
        var mounts = new List<Part?>();
        foreach (var position in group.Positions)
            mounts.Add(Mount(position, driver, mounts));
        return new PlaceDraft(group, driver, set, mounts, Harness(group, driver));
    }

    private (Driver Driver, ComponentSet? Set) Driver(PlaceGroup group, bool withSets)
    {
        var offers = Rows(group).GroupBy(r => r.Driver.Id, StringComparer.Ordinal).Where(g => g.Count() == group.Positions.Count)
            .Select(g => new Offer(g.First().Driver, StatusWords.Worst(g.Select(r => r.Status)), g.MaxBy(r => r.Status)!.Deciding))
            .ToList();
        if (withSets)
        {
            offers.AddRange(chart.Sets.Where(s => s.Places.Any(p => group.Holds(p.Position))).GroupBy(s => s.Set.Id, StringComparer.Ordinal)
                .Where(g => g.Count() == group.Positions.Count && Member(g.First().Set, group) is not null)
                .Select(g => new Offer(g.First().Set, StatusWords.Worst(g.Select(s => s.Status)), null)));
        }
        var ordered = offers.OrderBy(o => o.Status).ThenBy(o => o.Part.Price.Value.Amount).ThenBy(o => o.Part.Id, StringComparer.Ordinal)
            .ToList();
        var id = ask.One($"Which driver{(withSets ? " or set" : "")}: {group.Name}?",
            [.. ordered.Select(o => new Choice(o.Part.Id, o.Label))]).Id;
        return ordered.Find(o => o.Part.Id == id)!.Part switch
        {
            ComponentSet set => (Member(set, group)!, set),
            var part => ((Driver)part, null),
        };
    }

    // The same as on the other side, unless it is made for one side only.
    private Part? Mount(Position position, Driver driver, List<Part?> others)
    {
        var best = chart.Rows.FirstOrDefault(r => r.Position.Id == position.Id && r.Driver.Id == driver.Id)?.Mount;
        var all = catalog.IdsOf(driver.IsTweeter ? "cup" : "adapter").Select(catalog.Find).OfType<Part>().Where(p => Goes(p, position))
            .ToList();
        if (others.Count > 0 && (others[^1] is null || all.Contains(others[^1]!)))
            return others[^1];
        List<Part?> offers = [.. all.OrderBy(p => p.Id != best?.Id).ThenBy(p => p.Price.Value.Amount)
            .ThenBy(p => p.Id, StringComparer.Ordinal)];
        offers.Insert(best is null ? 0 : offers.Count, null);
        if (offers.Count == 1)
            return null;
        var what = driver.IsTweeter ? "cup" : "spacer";
        var id = ask.One($"Which {what}: {position.Name}?",
            [.. offers.Select(
                o => o is null ? None with { Label = $"none: straight on the panel{(best is null ? ", fits best" : "")}" }
                    : new Choice(o.Id, $"{o.Name}, {o.Price.Value}{(o.Id == best?.Id ? ", fits best" : "")}"))]).Id;
        return offers.Find(o => (o?.Id ?? "") == id);
    }

    private bool Goes(Part part, Position position) => part switch
    {
        Adapter adapter => Fit.Covers(adapter.Fits, vehicle.Id, position.Id) && (adapter.Handed == "no" || adapter.Handed == position.Side),
        Cup cup => Fit.Covers(cup.Fits, vehicle.Id, position.Id),
        _ => false,
    };

    // Only those that mate on both ends are worth a question; the factory plug may fit as it is.
    private Harness? Harness(PlaceGroup group, Driver driver)
    {
        var plug = group.Positions[0].Plug?.Value;
        if (plug is null || driver.Terminals is not { } terminals || (terminals.Type == "plug" && terminals.Family?.Value == plug))
            return null;
        var mating = catalog.IdsOf("harness").Select(catalog.Find).OfType<Harness>()
            .Where(h => h.From?.Value == plug && h.To?.Takes(terminals) == true).OrderBy(h => h.Price.Value.Amount).ToList();
        if (mating.Count == 0)
            return null;
        var id = ask.One($"Which harness adapter: {group.Name}?",
            [.. mating.Select(h => new Choice(h.Id, $"{h.Name}, {h.Price.Value}")),
                None with { Label = "none: wires are cut and spliced" }]).Id;
        return mating.Find(h => h.Id == id);
    }

    private Driver? Member(ComponentSet set, PlaceGroup group) =>
        (group.IsTweeter ? set.Tweeter : set.Woofer) is { } id ? catalog.Find(id.Value) as Driver : null;

    private IEnumerable<ChartRow> Rows(PlaceGroup group) => chart.Rows.Where(r => group.Holds(r.Position));

    private sealed record Offer(Part Part, Status Status, Finding? Deciding)
    {
        public string Label =>
            $"{Part.Name}, {Part.Price.Value}: {Status.Word()}{(Status == Status.Pass || Deciding is null ? "" : $" ({Deciding.Title})")}";
    }
}
