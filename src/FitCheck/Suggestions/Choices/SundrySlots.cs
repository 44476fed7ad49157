using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>Small parts fitted at a position or standing in a wire: gasket ring, screws, tape, capacitor, L-pad.</summary>
internal static class SundrySlots
{
    private static readonly string[] Exchanged = ["gasket-ring", "screws", "foam-tape", "damping-sheet", "capacitor", "l-pad",
        "moisture-guard"];

    public static IEnumerable<Slot> Of(SlotContext g)
    {
        foreach (var slot in Exchanged.SelectMany(type => Present(g, type)))
            yield return slot;
        foreach (var slot in Missing(g, "gasket-ring",
            p => p.Driver is { Part.IsTweeter: false } && p.Cup is null && p.Position.Mounting.DoorCardGap is not null))
            yield return slot;
        foreach (var slot in Missing(g, "foam-tape", p => p.Adapter is not null && !g.Build.HasTreatment("damping-sheet", p.Position.Id)))
            yield return slot;
        // A second high-pass behind a first is a mistake, and a pad brings down only what a crossover leaves too loud or too strong.
        foreach (var slot in Missing(g, "capacitor", p => p.Driver is { Part.IsTweeter: true } && IsBare(g, Channel(g, p))))
            yield return slot;
        foreach (var slot in Missing(g, "l-pad", p => p.Driver is { Part.IsTweeter: true } && Channel(g, p) is { Crossover: not null }))
            yield return slot;
        foreach (var slot in Missing(g, "moisture-guard", p => p.OpenedWaterShed))
            yield return slot;
    }

    private static IEnumerable<Slot> Present(SlotContext g, string type)
    {
        foreach (var sites in g.Paired(g.Fit.Where(s => Item(g, s, type) is not null), s => Item(g, s, type)?.Text))
        {
            var now = Item(g, sites[0], type)!.Text;
            var at = sites.SelectMany(s => s.Positions).ToList();
            yield return new Slot(Called(type), at, now, BuildInputs.At(BuildInputs.Of(type), at), () =>
            [
                .. g.Stock.With<Sundry>("sundry", type).Where(s => s.Type == type && s.Id != now)
                    .Select(s => new Option(s.Id, [.. sites.Select(site => g.Editor.Replace(Item(g, site, type)!, s.Id))]) { Parts = [s] }),
                // Without a part, rules about it would fall silent, which is no answer; but one too many in a tweeter's wire can go.
                .. BuildInputs.Of(type) == "inline"
                    ? new[] { new Option(null, [.. sites.Select(site => Removed(g, site, type))]) { Rank = 1 } } : [],
            ]);
        }
    }

    private static IEnumerable<Slot> Missing(SlotContext g, string type, Func<FittedPosition, bool> wants)
    {
        var without =
            g.Build.Placed.Where(
                p => wants(p) && !p.Sundries.Exists(s => BuildInputs.Of(s.Part.Type) == BuildInputs.Of(type) && s.Part.Type == type)
                    && !g.Build.HasTreatment(type, p.Position.Id));
        foreach (var pair in g.Pairs(without.Select(p => p.Position.Id)))
        {
            yield return new Slot(Called(type), pair, null, BuildInputs.At(BuildInputs.Of(type), pair),
                () => g.Stock.With<Sundry>("sundry", type).Where(s => s.Type == type)
                .Select(s => new Option(s.Id, [Added(g, pair, s.Id)]) { Parts = [s] }));
        }
    }

    private static bool IsBare(SlotContext g, Channel? channel) =>
        channel is null
            || (channel.Crossover is null && Facts.Contexts.FilterCheck.Of(g.Build, channel, high: true) is null or { Exists: false });

    private static Channel? Channel(SlotContext g, FittedPosition placed) => g.Build.Channels.FirstOrDefault(c => c.Feeds.Contains(placed));

    // The only part of a list may go with it, when it stands in a tweeter's wire; then what is added has to stand elsewhere.
    private static TextEdit Added(SlotContext g, IReadOnlyList<string> pair, string id)
    {
        var own = g.Fit.Where(s => s.Positions.Count == pair.Count && s.Positions.All(pair.Contains)).ToList();
        if (own.Find(s => s.Map["with"] is YamlList list && !(list.Items is [YamlScalar only] && IsInLine(g, only))) is { } listed)
            return g.Editor.AddItem((YamlList)listed.Map["with"]!, id);
        return own.Where(s => s.Map["with"] is null).MaxBy(s => s["driver"] is not null ? 1 : 0) is { } site
            ? g.Editor.AddListed(site.Map, "with", id)
            : g.Editor.AddItem((YamlList)g.Root["fit"]!, $"at: [{string.Join(", ", pair)}]\nwith: [{id}]");
    }

    private static TextEdit Removed(SlotContext g, FitLine site, string type)
    {
        var list = (YamlList)site.Map["with"]!;
        return list.Items.Count == 1 ? g.Editor.RemoveKey(site.Map, "with")
            : g.Editor.RemoveItems(list, new HashSet<int> { list.Items.ToList().IndexOf(Item(g, site, type)!) }).Single();
    }

    private static bool IsInLine(SlotContext g, YamlScalar item) =>
        g.Stock.Catalog.Find(item.Text) is Sundry sundry && BuildInputs.Of(sundry.Type) == "inline";

    private static YamlScalar? Item(SlotContext g, FitLine site, string type) => (site.Map["with"] as YamlList)?.Items.OfType<YamlScalar>()
        .FirstOrDefault(i => g.Stock.Catalog.Find(i.Text) is Sundry s && s.Type == type);

    private static string Called(string type) =>
        type switch
        {
            "gasket-ring" => "gasket ring",
            "foam-tape" => "foam tape",
            "damping-sheet" => "damping sheet",
            "l-pad" => "L-pad",
            "moisture-guard" => "moisture guard",
            _ => type
        };
}
