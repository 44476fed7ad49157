using FitCheck.Catalog;

namespace FitCheck.Builds.Readable;

/// <summary>What `readings` of a build call a datum.</summary>
/// <param name="At">Of what: a position, a device of the build or an entry.</param>
/// <param name="Kind">By whose schema: the kind of the entry, <see cref="Position"/>, <see cref="Line"/> or <see cref="Device"/>.</param>
/// <param name="Of">The keys from there.</param>
internal readonly record struct DatumKey(string At, string Kind, string Of)
{
    /// <summary>A position of the vehicle.</summary>
    public const string Position = "position";
    /// <summary>A line of `fit`, by its position.</summary>
    public const string Line = "fit";
    /// <summary>A device of the build, or the cable that devices share.</summary>
    public const string Device = "device";

    // Where to write what no entry of the catalog is about, and what no reading answers of it.
    private const string Readings = "the `readings` of the build", OwnEntry = "an entry of its own (`fitcheck new part vehicle`)";

    /// <summary>The entry that would have it; null for what a build says.</summary>
    public Entry? Entry { get; init; }

    /// <summary>Of an entry; null without one. Of a radio that nobody knows it is asked first which it is.</summary>
    public static DatumKey? In(Entry? entry, string of) => entry switch
    {
        null => null,
        SourceUnit { UnrecordedOf: { } vehicle } => new(vehicle.Id, vehicle.Kind, "factory_source") { Entry = vehicle },
        _ => new(entry.Id, entry.Kind, of) { Entry = entry },
    };

    /// <summary>
    /// Where to write it for every build, `catalog/vehicles/alder-mpv.yaml, position front-door-left`; null for what a build says.
    /// </summary>
    public string? Where => Entry is Vehicle { StandIn: not null } ? AnswerShape.Of(this) is null ? OwnEntry : Readings
        : Kind != Position ? Entry?.At.File
        : $"{Entry?.At.File ?? "the vehicle's entry"}, position {(Entry as Vehicle)?.Find(At)?.MirrorOf?.Value ?? At}";

    /// <summary>By what it names; whole entries are not compared.</summary>
    public bool Equals(DatumKey other) => (At, Kind, Of) == (other.At, other.Kind, other.Of);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(At, Kind, Of);
}
