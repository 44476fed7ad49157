using FitCheck.Foundation.Problems;

namespace FitCheck.Catalog;

/// <summary>That an entry names another one.</summary>
/// <param name="Target">The id, and where it is named.</param>
/// <param name="Kind">The kind that the other must have; null for any part.</param>
/// <param name="Positions">Names that it must have: positions of a vehicle, channels of a source unit; of a driver in a set its part
/// there.</param>
internal sealed record Reference(Located<string> Target, string? Kind, IReadOnlyList<Located<string>> Positions);

/// <summary>What exists, as far as references to it ask.</summary>
internal interface ICatalogIndex
{
    /// <summary>All ids.</summary>
    IEnumerable<string> Ids { get; }

    /// <summary>The kind of an id, or null when there is none.</summary>
    string? KindOf(string id);

    /// <summary>The ids of a vehicle's positions, a source unit's channels, or the type of a driver.</summary>
    IReadOnlyList<string> PositionsOf(string vehicle);
}

/// <summary>Follows the references from one entry to others.</summary>
internal static class References
{
    public static IEnumerable<Reference> Of(Entry entry) => entry switch
    {
        Vehicle vehicle => One(vehicle.FactorySource, "source-unit",
            [.. vehicle.Positions.Select(p => p.FactoryChannel).OfType<Located<string>>().Distinct()]),
        ComponentSet set =>
            [.. Member(set.Woofer, "woofer"), .. Member(set.Tweeter, "tweeter"), .. One(set.Crossover, "crossover"),
                .. Contained(set.Contains)],
        WiringPart wiring => Contained(wiring.Contains),
        Adapter adapter => adapter.Fits.Select(InVehicle),
        Cup cup => cup.Fits.Select(InVehicle),
        _ => [],
    };

    /// <summary>Tells a reference to nothing, or to something of another kind.</summary>
    public static void Check(Reference reference, ICatalogIndex catalog, ProblemList problems)
    {
        var (target, at) = reference.Target;
        var found = catalog.KindOf(target);
        if (found is null || (reference.Kind is { } wanted && found != wanted))
        {
            problems.Error(at,
                PartsCatalog.Missing(target, reference.Kind, found,
                    catalog.Ids.Where(id => reference.Kind is null || catalog.KindOf(id) == reference.Kind)), ProblemKind.UnknownName);
            return;
        }
        // Channels and types are for a rule to judge.
        foreach (var position in found == "vehicle" ? reference.Positions : [])
        {
            if (catalog.PositionsOf(target) is var there && !there.Contains(position.Value, StringComparer.Ordinal))
                problems.Error(position.At, $"no position `{position.Value}` in {target}{Nearest.Hint(position.Value, there)}",
                    ProblemKind.UnknownName);
        }
    }

    /// <summary>What others ask of an entry by name.</summary>
    public static IReadOnlyList<string> NamesIn(Entry? entry) => entry switch
    {
        Vehicle vehicle => [.. vehicle.Positions.Select(p => p.Id)],
        SourceUnit source => [.. source.Channels.Select(c => c.Value)],
        Driver driver => [driver.Type],
        _ => [],
    };

    private static IEnumerable<Reference> One(Located<string>? target, string kind, params IReadOnlyList<Located<string>> names) =>
        target is null ? [] : [new Reference(target, kind, names)];

    private static IEnumerable<Reference> Member(Located<string>? target, string part) =>
        target is null ? [] : One(target, "driver", target with { Value = part });

    private static IEnumerable<Reference> Contained(IReadOnlyList<Contained> contains) =>
        contains.Select(c => new Reference(c.Part, null, []));

    private static Reference InVehicle(Fit fit) => new(fit.Vehicle, "vehicle", fit.Positions);
}
