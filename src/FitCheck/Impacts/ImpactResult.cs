using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Impacts;

/// <summary>What became of something from one side to the other.</summary>
public enum Change
{
    Added,
    Removed,
    Altered,
}

/// <summary>One value that differs; a path such as `positions[front-door-left].mounting.depth`. Null: the key is not there.</summary>
public sealed record KeyChange(string Path, string? Before, string? After, Location At)
{
    public override string ToString() => (Before, After) switch
    {
        (null, { } now) => $"{Path} {now} is new",
        ({ } was, null) => $"{Path} {was} is gone",
        _ => $"{Path} {Before} → {After}",
    };
}

/// <summary>An entry of the catalog that differs, with every key that does.</summary>
/// <param name="Change">What became of it.</param>
/// <param name="Kind">Its kind, `driver`.</param>
/// <param name="Id">Its id.</param>
/// <param name="Keys">Those that differ; empty for an entry that was added or removed, or that only looks different.</param>
/// <param name="At">Where it stands, or stood.</param>
public sealed record EntryChange(Change Change, string Kind, string Id, IReadOnlyList<KeyChange> Keys, Location At);

/// <summary>A rule that differs, in words: `warns below 8 mm instead of below 5 mm`.</summary>
public sealed record RuleEdit(Change Change, string Rule, string Title, string What, Location At);

/// <summary>Something that was changed, and that a finding rests on.</summary>
public sealed record Cause(Location At, string What);

/// <summary>A finding of a build that has another status than before.</summary>
/// <param name="Finding">As it is now, or as it was where it is gone.</param>
/// <param name="Before">Null where nobody said anything before; a waived finding counts as one that passes.</param>
/// <param name="After">Null where nobody says anything now.</param>
/// <param name="Causes">The changes that it rests on, nearest first; empty where none was found.</param>
public sealed record FindingChange(Finding Finding, Status? Before, Status? After, IReadOnlyList<Cause> Causes)
{
    public bool IsWorse => (After ?? Status.Pass) > (Before ?? Status.Pass);

    public bool IsBetter => (After ?? Status.Pass) < (Before ?? Status.Pass);
}

/// <summary>What becomes of a build.</summary>
public enum BuildFate
{
    Same,
    Better,
    Worse,
    /// <summary>It was good to read and is no longer.</summary>
    Unreadable,
    New,
    Gone,
}

/// <summary>A build of the catalogs, on both sides.</summary>
public sealed record BuildChange
{
    /// <summary>The file's name without its ending, by which it is accepted.</summary>
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required Location At { get; init; }
    public required BuildFate Fate { get; init; }
    public Status? Before { get; init; }
    public Status? After { get; init; }
    /// <summary>How many waivers the later verdict rests on.</summary>
    public int Waivers { get; init; }
    /// <summary>Worse first.</summary>
    public IReadOnlyList<FindingChange> Findings { get; init; } = [];
    /// <summary>Why it can't be read.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];
    /// <summary>Somebody said that this may happen.</summary>
    public bool Accepted { get; init; }

    public bool IsWorse => Fate is BuildFate.Worse or BuildFate.Unreadable;
}

/// <summary>A driver at a position whose status in the chart differs.</summary>
public sealed record PairChange(string Vehicle, string VehicleName, string Position, string PositionName, string Driver, string DriverName, Status Before, Status After, string? MountBefore, string? MountAfter, string Reason)
{
    public bool IsWorse => After > Before;
}

/// <summary>The answer to `impact`.</summary>
public sealed record ImpactResult
{
    public required string Program { get; init; }
    /// <summary>As the caller named the sides.</summary>
    public required string From { get; init; }
    public required string To { get; init; }
    public required IReadOnlyList<EntryChange> Entries { get; init; }
    public required IReadOnlyList<RuleEdit> Rules { get; init; }
    /// <summary>Every build of either side, worst fate first, then by id.</summary>
    public required IReadOnlyList<BuildChange> Builds { get; init; }
    /// <summary>Pairs that are on both sides and flip, worse first.</summary>
    public required IReadOnlyList<PairChange> Pairs { get; init; }
    /// <summary>How many pairs are on both sides.</summary>
    public required int PairsCompared { get; init; }

    /// <summary>Builds that get worse and that nobody accepted.</summary>
    public IEnumerable<BuildChange> Refused => Builds.Where(b => b.IsWorse && !b.Accepted);
}
