using FitCheck.Catalog;

namespace FitCheck.Cli.Asking;

/// <summary>What was answered: the build that is going to be written.</summary>
internal sealed record BuildDraft
{
    public required Vehicle Vehicle { get; init; }
    public IReadOnlyList<string> Accepts { get; init; } = [];
    public IReadOnlyList<PlaceDraft> Places { get; init; } = [];
    /// <summary>Places whose factory driver is unplugged.</summary>
    public IReadOnlyList<PlaceGroup> Unplugged { get; init; } = [];
    /// <summary>Places whose factory driver plays on beside the new ones.</summary>
    public IReadOnlyList<PlaceGroup> Kept { get; init; } = [];
    /// <summary>What drives the places; null for the factory radio.</summary>
    public DriveDraft? Drive { get; init; }
    /// <summary>As written in a build; empty when money does not matter.</summary>
    public string Budget { get; init; } = "";

    /// <summary>
    /// True where the driver at a position is oval: whether a round ring goes on it is for the eye, and nobody is offered one.
    /// </summary>
    public bool IsOval(string position) => Places.Any(p => p.Driver.Oval && p.Group.Positions.Any(x => x.Id == position));

    /// <summary>The outputs that feed the places, in the order of the vehicle; a place that the factory feeds not has its own.</summary>
    public IReadOnlyList<(string Id, IReadOnlyList<Position> Feeds)> Outputs =>
    [
        .. Vehicle.Positions.Where(p => Places.Any(d => d.Group.Holds(p)) || Kept.Any(g => g.Holds(p)))
            .GroupBy(p => p.FactoryChannel?.Value ?? p.Id, StringComparer.Ordinal)
            .Select(g => (g.Key, (IReadOnlyList<Position>)[.. g])),
    ];
}

/// <summary>What goes to one place, usually on both sides of the vehicle.</summary>
/// <param name="Group">The positions.</param>
/// <param name="Driver">The driver.</param>
/// <param name="Set">The set that it comes from; null when it is bought singly.</param>
/// <param name="Mounts">The spacer or cup of each position, in their order; null straight on the panel.</param>
/// <param name="Harness">The harness adapter; null without.</param>
internal sealed record PlaceDraft(PlaceGroup Group, Driver Driver, ComponentSet? Set, IReadOnlyList<Part?> Mounts, Harness? Harness);

/// <summary>An amplifier behind the factory radio, and what it needs.</summary>
/// <param name="Amplifier">One output of it for each of the build's.</param>
/// <param name="Converter">The line converter before it; null where it takes what the radio gives.</param>
/// <param name="Cable">The power cable or kit; null for none.</param>
/// <param name="Place">Where it sits: `cargo`.</param>
/// <param name="HighPass">Whether its electronic high-pass is set.</param>
internal sealed record DriveDraft(Amplifier Amplifier, LineConverter? Converter, WiringPart? Cable, string Place, bool HighPass);

/// <summary>Positions that are alike but for their side.</summary>
internal sealed record PlaceGroup(string Name, IReadOnlyList<Position> Positions)
{
    public bool IsTweeter => Positions[0].Role == "tweeter";

    public string Ids => string.Join(", ", Positions.Select(p => p.Id));

    /// <summary>True for one of these positions, from whichever reading of the catalog it comes.</summary>
    public bool Holds(Position position) => Positions.Any(p => p.Id == position.Id);

    /// <summary>In the order of the vehicle.</summary>
    public static IReadOnlyList<PlaceGroup> Of(Vehicle vehicle) =>
    [
        .. vehicle.Positions.GroupBy(p => p.Side == "centre" ? p.Id : p.Id.Replace(p.Side, "side", StringComparison.Ordinal),
            StringComparer.Ordinal)
            .Select(g => new PlaceGroup(Reports.Wording.Names.Joined(g.Select(p => p.Name)), [.. g])),
    ];

    /// <summary>True when one of the outputs that feed these feeds one of those.</summary>
    public bool SharesOutputWith(PlaceGroup other) => Channels.Intersect(other.Channels, StringComparer.Ordinal).Any();

    public IEnumerable<string> Channels => Positions.Select(p => p.FactoryChannel?.Value).OfType<string>();
}
