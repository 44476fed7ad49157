using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Facts.Fitting;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.QuoteImport;

/// <summary>
/// Puts drivers and sets where they belong by role and where they fit by the chart. What has one possible place goes there first; then
/// spacers, cups and harnesses of the list that are made for a place count as a sign. Where nothing decides, that is told.
/// </summary>
internal sealed class DriverPlacing(Layout layout, PartsCatalog catalog, RuleSet rules)
{
    private readonly HashSet<(string Driver, string Position)> _fits = [];

    public void Place(IReadOnlyDictionary<string, IReadOnlyList<string>> asked)
    {
        var waiting = layout.Items.Where(i => i.Part is Driver or ComponentSet && !asked.ContainsKey(i.Part.Id)).ToList();
        Chart();
        while (waiting.Count > 0 && (Forced(waiting) ?? Signed(waiting)) is { } placed)
            waiting.Remove(placed);
        foreach (var item in waiting)
        {
            var options = Options(item);
            var forAll = options.Count > 0 && Sides(item, options[0]) >= options.Count;
            if (options.Count > 0)
                layout.Open.Add(new OpenPlace(item, forAll ? [.. options, Together(options)] : options));
            layout.Tell(item, options.Count == 0
                ? $"finds no free place in {layout.Vehicle.Name}; it stays on the quote only, unless `--at {item.Part.Id}=POSITION,…` "
                    + $"says where it goes"
                : $"could go to several places; it stays on the quote only, unless {Layout.Option(item.Part, options)} decides it"
                    + (forAll ? $", or for all of them {Layout.Option(item.Part, [Together(options)])}"
                        : ""));
        }
    }

    private void Chart()
    {
        var drivers = layout.Items.SelectMany(i => DriversOf(i.Part)).Select(d => d.Id).Distinct(StringComparer.Ordinal).ToList();
        if (drivers.Count == 0)
            return;
        var chart = PairChart.Of(catalog, rules, new ChartSlice { Vehicles = [layout.Vehicle.Id], Drivers = drivers }, new ProblemList());
        foreach (var row in chart?.Rows ?? [])
        {
            if (row.Status != Status.Fail)
                _fits.Add((row.Driver.Id, row.Position.Id));
        }
    }

    private QuoteItem? Forced(List<QuoteItem> waiting)
    {
        foreach (var item in waiting)
        {
            var options = Options(item);
            // Two packs may be two pairs, or one is too many: nobody but the seller knows.
            if (options.Count == 1)
                return Put(item, options);
        }
        return null;
    }

    private QuoteItem? Signed(List<QuoteItem> waiting)
    {
        foreach (var item in waiting)
        {
            var options = Options(item).Select(o => (Option: o, Signs: Signs(o))).OrderByDescending(o => o.Signs).ToList();
            if (options.Count > 1 && Sides(item, options[0].Option) == 1 && options[0].Signs > options[1].Signs)
                return Put(item, [options[0].Option]);
        }
        return null;
    }

    private QuoteItem Put(QuoteItem item, IReadOnlyList<Group> options)
    {
        foreach (var place in options.SelectMany(o => o.Places))
        {
            if (item.Part is ComponentSet set)
                place.Set = set;
            place.Driver = item.Part as Driver ?? DriverAt((ComponentSet)item.Part, place);
        }
        var spare = item.Pieces - options.Sum(o => Needed(item.Part, o));
        if (spare > 0)
            layout.Tell(item, $"has {spare} more on the list than there are places for it; check the number");
        if (!options.All(o => Fits(item.Part, o)))
            layout.Tell(item,
                $"fits no place of {layout.Vehicle.Name} by the chart; it is put where its role says ("
                    + $"{string.Join(" and ", options.Select(o => o.Ids))}), so that `fitcheck check` tells why");
        return item;
    }

    // Where it fits; when it fits nowhere, where its role would put it, so that the check can say why not.
    private List<Group> Options(QuoteItem item)
    {
        var all = item.Part is ComponentSet set ? SetOptions(set)
            : [.. layout.Groups.Where(g => !g.IsTaken && PlaceFacts.Suits(((Driver)item.Part).Type, g.Role))];
        all.RemoveAll(o => item.Pieces < Needed(item.Part, o));
        var fitting = all.FindAll(o => Fits(item.Part, o));
        return fitting.Count > 0 ? fitting : all;
    }

    // A woofer's and a tweeter's place on the same factory output; where no outputs are recorded, any two.
    private List<Group> SetOptions(ComponentSet set)
    {
        var free = layout.Groups.Where(g => !g.IsTaken).ToList();
        var woofers = free.Where(g => catalog.Find(set.Woofer?.Value ?? "") is Driver d && PlaceFacts.Suits(d.Type, g.Role)).ToList();
        var tweeters = free.Where(g => g.Role == "tweeter").ToList();
        var pairs = woofers.SelectMany(w => tweeters.Select(t => (w, t))).ToList();
        var wired = pairs.FindAll(p => p.w.Places.Select(Channel).ToHashSet(StringComparer.Ordinal).SetEquals(p.t.Places.Select(Channel)));
        return [.. (wired.Count > 0 ? wired : pairs).Select(p => new Group([.. p.w.Places, .. p.t.Places]))];
    }

    private static string Channel(PositionToFill place) => place.Position.FactoryChannel?.Value ?? "";

    private bool Fits(Part part, Group option) =>
        option.Places.All(
            p => (part as Driver ?? DriverAt((ComponentSet)part, p)) is { } driver && _fits.Contains((driver.Id, p.Position.Id)));

    private int Signs(Group option) => layout.Items.Count(i => option.Places.Any(p => i.Part switch
    {
        Adapter { Fits.Count: > 0 } adapter => !p.IsTweeter && Fit.Covers(adapter.Fits, layout.Vehicle.Id, p.Position.Id),
        Cup { Fits.Count: > 0 } cup => p.IsTweeter && Fit.Covers(cup.Fits, layout.Vehicle.Id, p.Position.Id),
        _ => false,
    }));

    private static Group Together(IReadOnlyList<Group> options) => new([.. options.SelectMany(o => o.Places)]);

    private static int Sides(QuoteItem item, Group option) => Math.Max(1, item.Pieces / Needed(item.Part, option));

    // A set serves one side with two drivers.
    private static int Needed(Part part, Group option) =>
        part is ComponentSet ? Math.Max(1, option.Places.Count(p => !p.IsTweeter)) : option.Places.Count;

    private Driver? DriverAt(ComponentSet set, PositionToFill place) =>
        catalog.Find((place.IsTweeter ? set.Tweeter : set.Woofer)?.Value ?? "") as Driver;

    private IEnumerable<Driver> DriversOf(Part part) => part switch
    {
        Driver driver => [driver],
        ComponentSet set => new[] { set.Woofer, set.Tweeter }.Select(d => catalog.Find(d?.Value ?? "")).OfType<Driver>(),
        _ => [],
    };
}
