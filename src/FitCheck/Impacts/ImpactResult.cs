using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Impacts;

/// <summary>What became of something from one side to the other.</summary>
internal enum Change
{
    /// <summary>It is new.</summary>
    Added,
    /// <summary>It is gone.</summary>
    Removed,
    /// <summary>It differs.</summary>
    Altered,
}

/// <summary>One value that differs; a path such as `positions[front-door-left].mounting.depth`. Null: the key is not there.</summary>
internal sealed record KeyChange(string Path, string? Before, string? After, Location At)
{
    /// <summary>In words.</summary>
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
internal sealed record EntryChange(Change Change, string Kind, string Id, IReadOnlyList<KeyChange> Keys, Location At);

/// <summary>A rule that differs, in words: `warns below 8 mm instead of below 5 mm`.</summary>
internal sealed record RuleEdit(Change Change, string Rule, string Title, string What, Location At);

/// <summary>Something that was changed, and that a finding rests on.</summary>
internal sealed record Cause(Location At, string What);

/// <summary>A finding of a build that has another status than before.</summary>
/// <param name="Finding">As it is now, or as it was where it is gone.</param>
/// <param name="Before">Null where nobody said anything before; a waived finding counts as one that passes.</param>
/// <param name="After">Null where nobody says anything now.</param>
/// <param name="Causes">The changes that it rests on, nearest first; empty where none was found.</param>
internal sealed record FindingChange(Finding Finding, Status? Before, Status? After, IReadOnlyList<Cause> Causes)
{
    /// <summary>True when the later status is worse; what nobody says anything of counts as passing.</summary>
    public bool IsWorse => (After ?? Status.Pass) > (Before ?? Status.Pass);

    /// <summary>True when it is better.</summary>
    public bool IsBetter => (After ?? Status.Pass) < (Before ?? Status.Pass);
}

/// <summary>What becomes of a build.</summary>
internal enum BuildFate
{
    /// <summary>The verdict and the status of every finding stay.</summary>
    Same,
    /// <summary>The verdict gets better, or stays and no finding gets worse; or it can be read again.</summary>
    Better,
    /// <summary>The verdict gets worse, or stays while a finding gets worse.</summary>
    Worse,
    /// <summary>It was good to read and is no longer.</summary>
    Unreadable,
    /// <summary>Only the later side has it.</summary>
    New,
    /// <summary>Only the earlier side had it, under this name and under any other.</summary>
    Gone,
}

/// <summary>A build of the catalogs, on both sides.</summary>
internal sealed record BuildChange
{
    /// <summary>The file's name without its ending, by which it is accepted.</summary>
    public required string Id { get; init; }
    /// <summary>What the file was called before, where it was renamed or moved; else null.</summary>
    public string? RenamedFrom { get; init; }
    /// <summary>What the build calls itself.</summary>
    public required string Name { get; init; }
    /// <summary>Its place on the later side, or on the earlier one when it is gone.</summary>
    public required Location At { get; init; }
    /// <summary>What becomes of it.</summary>
    public required BuildFate Fate { get; init; }
    /// <summary>Its verdict before; null where it could not be read or was not there.</summary>
    public Status? Before { get; init; }
    /// <summary>Its verdict afterwards; null where it can't be read or is gone.</summary>
    public Status? After { get; init; }
    /// <summary>How many waivers the later verdict rests on.</summary>
    public int Waivers { get; init; }
    /// <summary>Worse first.</summary>
    public IReadOnlyList<FindingChange> Findings { get; init; } = [];
    /// <summary>Why it can't be read.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];
    /// <summary>Somebody said that this may happen.</summary>
    public bool Accepted { get; init; }

    /// <summary>True when it gets worse, or can no longer be judged because it can't be read any more, or is lost.</summary>
    public bool IsWorse => Fate is BuildFate.Worse or BuildFate.Unreadable || (Fate == BuildFate.Gone && Before is not null);
}

/// <summary>A driver at a position whose status in the chart differs.</summary>
internal sealed record PairChange(string Vehicle, string VehicleName, string Position, string PositionName, string Driver,
    string DriverName, Status Before, Status After, string? MountBefore, string? MountAfter, string Reason)
{
    /// <summary>True when the pair fits worse than before.</summary>
    public bool IsWorse => After > Before;
}

/// <summary>The answer to `impact`.</summary>
internal sealed record ImpactResult
{
    /// <summary>Name and version of what compared.</summary>
    public required string Program { get; init; }
    /// <summary>As the caller named the sides.</summary>
    public required string From { get; init; }
    /// <summary>The later side, as the caller named it.</summary>
    public required string To { get; init; }
    /// <summary>What differs in the catalogs.</summary>
    public required IReadOnlyList<EntryChange> Entries { get; init; }
    /// <summary>What differs in the rules.</summary>
    public required IReadOnlyList<RuleEdit> Rules { get; init; }
    /// <summary>Every build of either side, worst fate first, then by id.</summary>
    public required IReadOnlyList<BuildChange> Builds { get; init; }
    /// <summary>Pairs that are on both sides and flip, worse first.</summary>
    public required IReadOnlyList<PairChange> Pairs { get; init; }
    /// <summary>How many pairs are on both sides.</summary>
    public required int PairsCompared { get; init; }

    /// <summary>Builds that get worse or are lost, and that nobody accepted.</summary>
    public IEnumerable<BuildChange> Refused => Builds.Where(b => b.IsWorse && !b.Accepted);
}
