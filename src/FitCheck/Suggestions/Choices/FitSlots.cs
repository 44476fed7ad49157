using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Fitting;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// What is chosen at the positions: driver or set, spacer, cup, harness adapter, new wire, the module's place, and factory drivers on the
/// wire.
/// </summary>
internal static class FitSlots
{
    public static IEnumerable<Slot> Of(SlotContext g)
    {
        foreach (var slot in Keyed(g, "driver", "driver", (p, now) => Drivers(g, p, now), (p, now) => Sorts(g, p, now)))
            yield return slot;
        foreach (var slot in Keyed(g, "set", "driver", (p, now) => g.Stock.All<ComponentSet>("component-set").Where(s => Serves(s, p)),
            (_, _) => []))
            yield return slot;
        foreach (var slot in Adapters(g).Concat(Cups(g)).Concat(Harnesses(g)).Concat(Modules(g)).Concat(Cables(g)).Concat(Unplugged(g)))
            yield return slot;
    }

    // A woofer in the place of a coaxial would leave the treble out, and no rule asks for it back; unless a tweeter plays it, which no
    // other change takes away.
    private static string[] Sorts(SlotContext g, IReadOnlyList<Position> positions, string? now) =>
        (g.Stock.Catalog.Find(now ?? "") as Driver)?.Type switch
        {
            "woofer" => ["woofer", "coaxial"],
            "coaxial" when positions.All(p => g.Build.Placed.Any(t => IsBeside(g, t, p))) => ["coaxial", "woofer"],
            { } type => [type],
            null => [],
        };

    /// <summary>
    /// Whether a new tweeter is fed for the same side and row as a position: on its factory channel, or from the same output.
    /// </summary>
    public static bool IsBeside(SlotContext g, FittedPosition tweeter, Position position) =>
        tweeter.Driver is { Part.IsTweeter: true } && tweeter.Position.Id != position.Id
        && g.Build.Channels.FirstOrDefault(c => c.Feeds.Contains(tweeter)) is { } output
        && ((position.FactoryChannel is { } wire && wire.Value == tweeter.Position.FactoryChannel?.Value)
        || output.Feeds.Any(p => p.Position.Id == position.Id));

    private static IEnumerable<Driver> Drivers(SlotContext g, IReadOnlyList<Position> positions, string? now)
    {
        var types = Sorts(g, positions, now);
        // Where the build says how two coils are wired, a driver with one is no answer.
        var isWired = g.Build.Placed.Any(p => p.CoilsInSeries is not null && positions.Any(x => x.Id == p.Position.Id));
        return g.Stock.With<Driver>("driver", types)
            .Where(d => types.Contains(d.Type) && (!isWired || d.Coils == 2) && positions.All(p => PlaceFacts.Suits(d.Type, p.Role)));
    }

    public static bool Serves(ComponentSet set, IReadOnlyList<Position> positions) =>
        positions.All(p => p.Role == "tweeter" ? set.Tweeter is not null : set.Woofer is not null);

    private static IEnumerable<Slot> Adapters(SlotContext g)
    {
        foreach (var slot in Keyed(g, "adapter", "adapter", Fitting))
            yield return slot;
        foreach (var slot in Missing(g, "adapter", "adapter",
            p => p.Driver is { Part.IsTweeter: false } && p.Adapter is null && p.Cup is null, Fitting))
            yield return slot;

        IEnumerable<Adapter> Fitting(IReadOnlyList<Position> positions, string? now) =>
            g.Stock.For<Adapter>("adapter", g.Vehicle.Id)
                .Where(a => positions.Any(p => Fit.Covers(a.Fits, g.Vehicle.Id, p.Id) && (a.Handed == "no" || a.Handed == p.Side)));
    }

    private static IEnumerable<Slot> Cups(SlotContext g)
    {
        foreach (var slot in Keyed(g, "cup", "cup", Fitting))
            yield return slot;
        foreach (var slot in Missing(g, "cup", "cup", p => p.Driver is { Part.IsTweeter: true } && p.Cup is null, Fitting))
            yield return slot;

        IEnumerable<Cup> Fitting(IReadOnlyList<Position> positions, string? now) =>
            g.Stock.For<Cup>("cup", g.Vehicle.Id).Where(c => positions.All(p => Fit.Covers(c.Fits, g.Vehicle.Id, p.Id)));
    }

    private static IEnumerable<Slot> Harnesses(SlotContext g)
    {
        foreach (var slot in Keyed(g, "harness", "harness", Fitting))
            yield return slot;
        foreach (var slot in Missing(g, "harness", "harness", p => p.Driver is not null && p.Harness is null && p.NewWire is null, Fitting))
            yield return slot;

        // A plug of another family never mates, so only those of the vehicle's family are tried.
        IEnumerable<Harness> Fitting(IReadOnlyList<Position> positions, string? now) =>
            (positions.Select(p => p.Plug?.Value).FirstOrDefault(f => f is not null) is { } family
                ? g.Stock.With<Harness>("harness", family) : g.Stock.All<Harness>("harness")).Where(
                h => positions.All(p => p.Plug is null || p.Plug.Value == h.From?.Value));
    }

    // Laid elsewhere, the module is no longer told of at the position.
    private static IEnumerable<Slot> Modules(SlotContext g)
    {
        foreach (var sites in g.Paired(g.Fit.Where(s => s["module"] is not null), s => s["module"]))
        {
            var at = sites.SelectMany(s => s.Positions).ToList();
            yield return new Slot("module", at, sites[0]["module"], BuildInputs.At("module", at),
                () => [new Option(null, Taken(g, sites, "module"))]);
        }
    }

    // A thinner cable would pass for a load that is too low: it is never the answer. As thick a one may come on a longer roll.
    private static IEnumerable<Slot> Cables(SlotContext g)
    {
        foreach (var sites in g.Paired(g.Fit.Where(s => s.Map["new_wire"] is YamlMap), s => Cable(s)?.Text))
        {
            var at = sites.SelectMany(s => s.Positions).ToList();
            yield return new Slot("speaker cable", at, Cable(sites[0])?.Text, BuildInputs.At("wire", at),
                () => g.Stock.With<WiringPart>("wiring", "speaker-cable")
                .Where(w =>
                w.Type == "speaker-cable" && g.Stock.Catalog.Find(Cable(sites[0])?.Text ?? "") is WiringPart now && IsBetter(w, now))
                .Select(w => new Option(w.Id, [.. sites.Select(s => g.Editor.Replace(Cable(s)!, w.Id))]) { Parts = [w] }));
        }

        static bool IsBetter(WiringPart cable, WiringPart now) =>
            SupplyRunContext.PerMetreCold(cable) is { } ohm && SupplyRunContext.PerMetreCold(now) is { } ohmNow
            && (ohm < ohmNow || (ohm <= ohmNow && cable.Length?.Si > now.Length?.Si));

        static YamlScalar? Cable(FitLine site) => (site.Map["new_wire"] as YamlMap)?["cable"] as YamlScalar;
    }

    // A factory driver that stays on the wire can be unplugged.
    private static IEnumerable<Slot> Unplugged(SlotContext g)
    {
        var loaded = g.Build.Channels.SelectMany(c => c.Leftover).Select(p => p.Id).Distinct(StringComparer.Ordinal).ToList();
        foreach (var pair in g.Pairs(loaded))
        {
            yield return new Slot("factory driver", pair, null, BuildInputs.At("plug", pair), () =>
            {
                var kept = g.Fit.Where(s => s["keeps_factory_driver"] is not null && s.Positions.Any(pair.Contains)).ToList();
                return [new Option("disconnected", [.. Taken(g, kept, "keeps_factory_driver"), .. Added(g, pair, "disconnected", "true")])];
            });
        }
    }

    // What has sorts was chosen for its sound.
    private static IEnumerable<Slot> Keyed<T>(SlotContext g, string key, string atom,
        Func<IReadOnlyList<Position>, string?, IEnumerable<T>> fitting, Func<IReadOnlyList<Position>, string?, string[]>? sorts = null)
            where T : Part
    {
        foreach (var sites in g.Paired(g.Fit.Where(s => s[key] is not null), s => s[key]))
        {
            var at = sites.SelectMany(s => s.Positions).ToList();
            var now = sites[0][key];
            var positions = at.Select(p => g.Vehicle.Find(p)!).ToList();
            yield return new Slot(Called(key), at, now, BuildInputs.At(atom, at), () => Options(now))
            {
                Voices = sorts is null ? 0 : 1,
                Sorts = sorts?.Invoke(positions, now) ?? []
            };

            IEnumerable<Option> Options(string? now)
            {
                foreach (var part in fitting(positions, now).Where(p => p.Id != now))
                {
                    if (MirroredParts.Of(part, positions, g.Stock) is { } sided)
                        yield return new Option(sided.Name, MirroredParts.Edits(g, sites, key, sided)) { Parts = sided.Parts };
                }
            }
        }
    }

    private static IEnumerable<Slot> Missing<T>(SlotContext g, string key, string atom, Func<FittedPosition, bool> lacks,
        Func<IReadOnlyList<Position>, string?, IEnumerable<T>> fitting) where T : Part
    {
        foreach (var pair in g.Pairs(g.Build.Placed.Where(lacks).Select(p => p.Position.Id)))
        {
            yield return new Slot(Called(key), pair, null, BuildInputs.At(atom, pair), () =>
            {
                var positions = pair.Select(p => g.Vehicle.Find(p)!).ToList();
                return fitting(positions, null).Select(part => MirroredParts.Of(part, positions, g.Stock)).OfType<MirroredParts>()
                    .Select(sided =>
                    new Option(sided.Name,
                        [.. sided.ByValue(pair).SelectMany(v => Added(g, [.. v.Positions], key, v.Value))])
                    { Parts = sided.Parts });
            });
        }
    }

    /// <summary>A key for these positions: in the entry that is about them, else in a new one.</summary>
    public static IReadOnlyList<TextEdit> Added(SlotContext g, IReadOnlyList<string> positions, string key, string value)
    {
        var site = g.Fit.Where(s => s.Map[key] is null && s.Positions.Count == positions.Count && s.Positions.All(positions.Contains))
            .MaxBy(s => s["driver"] is not null ? 1 : 0);
        return site is not null ? [g.Editor.AddKey(site.Map, key, value)]
            : [g.Editor.AddItem((YamlList)g.Root["fit"]!, $"at: [{string.Join(", ", positions)}]\n{key}: {value}")];
    }

    private static IReadOnlyList<TextEdit> Taken(SlotContext g, IReadOnlyList<FitLine> sites, string key) =>
        [.. sites.Select(s => g.Editor.RemoveKey(s.Map, key))];

    private static string Called(string key) =>
        key switch { "adapter" => "spacer", "harness" => "harness adapter", "cup" => "tweeter cup", "set" => "component set", _ => key };
}
