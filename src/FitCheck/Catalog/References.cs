using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A place that names an entry; <paramref name="Kind"/> is null where any part will do.</summary>
internal sealed record Reference(Yaml.Located<string> Target, string? Kind);

/// <summary>Follows the references from one entry to others.</summary>
internal static class References
{
    /// <summary>Every place of an entry that names another entry.</summary>
    public static IEnumerable<Reference> Of(Entry entry) => entry switch
    {
        Vehicle { FactorySource: { } source } => [new(source, "source-unit")],
        ComponentSet set => [.. Maybe(set.Woofer, "driver"), .. Maybe(set.Tweeter, "driver"), .. Maybe(set.Crossover, "crossover"), .. Parts(set.Contains)],
        WiringPart wiring => Parts(wiring.Contains),
        Adapter adapter => adapter.Fits.Select(f => new Reference(f.Vehicle, "vehicle")),
        Cup cup => cup.Fits.Select(f => new Reference(f.Vehicle, "vehicle")),
        _ => [],
    };

    private static IEnumerable<Reference> Maybe(Located<string>? target, string kind) => target is null ? [] : [new(target, kind)];

    private static IEnumerable<Reference> Parts(IReadOnlyList<Contained> contains) => contains.Select(c => new Reference(c.Part, null));

    public static void Check(Entry entry, PartsCatalog catalog, ProblemList problems)
    {
        switch (entry)
        {
            case Vehicle vehicle:
                catalog.Resolve<SourceUnit>(vehicle.FactorySource, "source-unit", problems);
                break;
            case ComponentSet set:
                catalog.Resolve<Driver>(set.Woofer, "driver", problems);
                catalog.Resolve<Driver>(set.Tweeter, "driver", problems);
                catalog.Resolve<Crossover>(set.Crossover, "crossover", problems);
                CheckContained(set.Contains, catalog, problems);
                break;
            case WiringPart wiring:
                CheckContained(wiring.Contains, catalog, problems);
                break;
            case Adapter adapter:
                CheckFits(adapter.Fits, catalog, problems);
                break;
            case Cup cup:
                CheckFits(cup.Fits, catalog, problems);
                break;
        }
    }

    private static void CheckContained(IReadOnlyList<Contained> contains, PartsCatalog catalog, ProblemList problems)
    {
        foreach (var item in contains)
        {
            if (catalog.KindOf(item.Part.Value) is null)
                problems.Error(item.Part.At, $"no part `{item.Part.Value}` in the catalog{Nearest.Hint(item.Part.Value, catalog.Ids)}", ProblemKind.UnknownName);
        }
    }

    private static void CheckFits(IReadOnlyList<Fit> fits, PartsCatalog catalog, ProblemList problems)
    {
        foreach (var fit in fits)
        {
            if (catalog.Resolve<Vehicle>(fit.Vehicle, "vehicle", problems) is not { } vehicle)
                continue;
            foreach (var position in fit.Positions)
            {
                if (vehicle.Find(position.Value) is null)
                    problems.Error(position.At, $"no position `{position.Value}` in {vehicle.Id}{Nearest.Hint(position.Value, vehicle.Positions.Select(p => p.Id))}", ProblemKind.UnknownName);
            }
        }
    }
}
