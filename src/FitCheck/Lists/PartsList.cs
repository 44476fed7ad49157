using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Findings;

namespace FitCheck.Lists;

/// <summary>The answer to `list`: what to buy for each build.</summary>
/// <param name="Program">Name and version of what listed.</param>
/// <param name="CatalogDigest">SHA-256 over the files of the catalogs, hexadecimal.</param>
/// <param name="Tax">What was asked about tax.</param>
/// <param name="Builds">A list for each build, in the order in which they were asked about.</param>
public sealed record ListResult(string Program, string CatalogDigest, Tax Tax, IReadOnlyList<PartsList> Builds);

/// <summary>What to buy for one build: what it names, and apart from that what its rules ask for.</summary>
public sealed record PartsList
{
    /// <summary>The file of the build with `/`, or the name that its text was given.</summary>
    public required string File { get; init; }
    /// <summary>What the build calls itself.</summary>
    public required string Name { get; init; }
    /// <summary>The name of its vehicle.</summary>
    public required string VehicleName { get; init; }
    /// <summary>
    /// What the catalog calls the vehicle whose figures stand in for those of the one that is meant, which the catalog does not have; null
    /// where it has it.
    /// </summary>
    public string? StandIn { get; init; }
    /// <summary>What may be spent; null when the build does not say.</summary>
    public Money? Budget { get; init; }
    /// <summary>What the build uses, in ordinal order of the parts' ids.</summary>
    public required IReadOnlyList<ListLine> Lines { get; init; }
    /// <summary>What a rule misses and the catalog has, in ordinal order of the parts' ids.</summary>
    public required IReadOnlyList<AskedLine> Asked { get; init; }
    /// <summary>What a rule misses and the catalog does not have.</summary>
    public required IReadOnlyList<Ask> Unanswered { get; init; }

    /// <summary>Sums of prices by currency of what the build uses.</summary>
    public IReadOnlyList<Money> Totals => Shopping.Totals(Lines);

    /// <summary>Of what is asked for.</summary>
    public IReadOnlyList<Money> AskedTotals => Shopping.Totals([.. Asked.Select(a => a.Line)]);

    /// <summary>Of both together.</summary>
    public IReadOnlyList<Money> AllTotals => Shopping.Totals([.. Lines, .. Asked.Select(a => a.Line)]);
}

/// <summary>A line of the list that the build lacks, and who asks for it.</summary>
public sealed record AskedLine(ListLine Line, IReadOnlyList<Ask> By);

/// <summary>A rule that misses something at one place.</summary>
/// <param name="Rule">Its id.</param>
/// <param name="Title">What it looks at.</param>
/// <param name="Status">What it says without the part: warn or fail.</param>
/// <param name="Position">The key of the place.</param>
/// <param name="PositionName">The place's name.</param>
/// <param name="Wanted">The sort of part, in words: `heat-shrink`.</param>
public sealed record Ask(string Rule, string Title, Status Status, string Position, string PositionName, string Wanted);
