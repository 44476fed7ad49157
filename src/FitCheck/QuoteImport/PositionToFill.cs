using FitCheck.Catalog;

namespace FitCheck.QuoteImport;

/// <summary>A position of the vehicle, and what of the list was put there so far.</summary>
internal sealed class PositionToFill(Position position)
{
    public Position Position => position;
    public ComponentSet? Set { get; set; }
    public Driver? Driver { get; set; }
    public Adapter? Adapter { get; set; }
    public Cup? Cup { get; set; }
    public Harness? Harness { get; set; }
    public List<Sundry> With { get; } = [];

    public bool IsTweeter => position.Role == "tweeter";

    /// <summary>True when a driver of its own or one of a set was put there.</summary>
    public bool IsTaken => Set is not null || Driver is not null;
}

/// <summary>Positions that are filled alike, such as both front doors.</summary>
internal sealed record Group(IReadOnlyList<PositionToFill> Places)
{
    public string Role => Places[0].Position.Role;

    public bool IsTaken => Places.Any(p => p.IsTaken);

    public string Ids => string.Join(',', Places.Select(p => p.Position.Id));

    /// <summary>Those of the left and the right side together; what stands in the middle for itself.</summary>
    public static IReadOnlyList<Group> Of(IEnumerable<PositionToFill> places) =>
        [.. places.GroupBy(p => Stem(p.Position.Id), StringComparer.Ordinal).Select(g => new Group([.. g]))];

    private static string Stem(string id) =>
        id.EndsWith("-left", StringComparison.Ordinal) ? id[..^"-left".Length]
            : id.EndsWith("-right", StringComparison.Ordinal) ? id[..^"-right".Length] : id;
}
