using FitCheck.Catalog;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// One set in the place of single drivers: what plays the bass on both sides, and the tweeters beside it. It exchanges two things that were
/// chosen for their sound.
/// </summary>
internal static class SetSlots
{
    public static IEnumerable<Slot> Of(SlotContext g)
    {
        var lines = g.Paired(g.Fit.Where(s => s["driver"] is not null), s => s["driver"]).ToList();
        var placed = g.Build.Placed.ToDictionary(p => p.Position.Id, StringComparer.Ordinal);
        foreach (var tweeters in lines.Where(l => Places(l).All(p => placed[p].Driver is { Part.IsTweeter: true })))
        {
            foreach (var woofers in lines.Where(
                l => Places(l).Count == Places(tweeters).Count && Places(l).All(p => placed[p].Position.Role != "tweeter")))
            {
                if (Places(woofers).All(w => Places(tweeters).Exists(t => FitSlots.IsBeside(g, placed[t], placed[w].Position))))
                    yield return Slot(g, woofers, tweeters);
            }
        }
    }

    /// <summary>One set in the place of single drivers whose tweeters' places on the same wires nothing new fills.</summary>
    public static IEnumerable<Slot> OverOpen(SlotContext g)
    {
        var filled = g.Build.Placed.Where(p => p.Driver is not null).Select(p => p.Position.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var woofers in g.Paired(g.Fit.Where(s => s["driver"] is not null), s => s["driver"]))
        {
            var places = Places(woofers);
            var wires = places.Select(p => g.Vehicle.Find(p)!).Where(p => p.Role is not ("tweeter" or "subwoofer"))
                .Select(p => p.FactoryChannel?.Value).OfType<string>().ToHashSet(StringComparer.Ordinal);
            List<string> tweeters = [.. g.Vehicle.Positions.Where(p => p.Role == "tweeter" && p.FactoryChannel is { } wire
                && wires.Contains(wire.Value) && !filled.Contains(p.Id)).Select(p => p.Id)];
            if (tweeters.Count == places.Count)
                yield return Over(g, woofers, tweeters);
        }
    }

    private static Slot Over(SlotContext g, IReadOnlyList<FitLine> woofers, IReadOnlyList<string> tweeters)
    {
        List<string> at = [.. Places(woofers), .. tweeters];
        var now = woofers[0]["driver"]!;
        // What was said of the factory tweeters no longer holds.
        var told = g.Fit.Where(s => s.Positions.All(tweeters.Contains)).SelectMany(
            s => new[] { "disconnected", "keeps_factory_driver" }.Where(k => s[k] is not null).Select(k => (Line: s, Key: k))).ToList();
        return new Slot("component set", at, now, BuildInputs.At("driver", at),
            () => g.Stock.All<ComponentSet>("component-set").Where(s => FitSlots.Serves(s, [.. at.Select(p => g.Vehicle.Find(p)!)]))
            .Select(s => new Option(s.Id,
                [.. woofers.Select(site => g.Editor.Replace(site.Map, "driver", "set", s.Id)),
                    .. told.Select(t => g.Editor.Replace(t.Line.Map, t.Key, "set", s.Id)),
                    .. tweeters.Where(t => !told.Exists(x => x.Line.Positions.Contains(t))).ToList() is { Count: > 0 } open
                        ? FitSlots.Added(g, open, "set", s.Id) : []])
            { Parts = [s] }))
        { Voices = 2, Parts = [now] };
    }

    private static Slot Slot(SlotContext g, IReadOnlyList<FitLine> woofers, IReadOnlyList<FitLine> tweeters)
    {
        List<string> at = [.. Places(woofers), .. Places(tweeters)];
        List<FitLine> sites = [.. woofers, .. tweeters];
        string[] parts = [woofers[0]["driver"]!, tweeters[0]["driver"]!];
        return new Slot("component set", at, string.Join(" and ", parts), BuildInputs.At("driver", at),
            () => g.Stock.All<ComponentSet>("component-set")
            .Where(s => FitSlots.Serves(s, [.. at.Select(p => g.Vehicle.Find(p)!)]))
            .Select(s => new Option(s.Id, [.. sites.Select(site => g.Editor.Replace(site.Map, "driver", "set", s.Id))]) { Parts = [s] }))
        {
            Voices = parts.Length,
            Parts = parts,
            // A crossover that lies in the box of the set is not bought again.
            Spares = [.. g.Build.Channels.Where(c => c.Feeds.Any(f => at.Contains(f.Position.Id))).Select(c => c.Crossover?.Part.Id)
                .OfType<string>().Distinct(StringComparer.Ordinal)],
        };
    }

    private static List<string> Places(IReadOnlyList<FitLine> line) => [.. line.SelectMany(s => s.Positions)];
}
