using System.Diagnostics.CodeAnalysis;
using FitCheck.Catalog;
using FitCheck.Charts.Pairs;
using FitCheck.Findings;

namespace FitCheck.Charts;

/// <summary>One driver at one position on the mounting that suits it best.</summary>
public sealed record ChartRow
{
    private readonly RowMaker? _maker;
    private readonly int _pair;
    private readonly Driver? _driver;
    private readonly IReadOnlyList<Finding>? _findings;
    private readonly IReadOnlyList<Finding>? _work;
    private readonly RowInBrief? _brief;

    /// <summary>Made piece by piece.</summary>
    public ChartRow()
    {
    }

    // One that is not kept has only a few words of its own; the rest is worked out whenever it is asked for.
    [SetsRequiredMembers]
    internal ChartRow(RowMaker maker, int pair, Driver driver, IReadOnlyList<Finding> findings, bool isKept)
    {
        (Vehicle, Position, Sets, Status) = (null!, null!, [], default);
        var work = maker.Work(findings);
        (Driver, Findings, Work) = isKept ? (driver, findings, work) : (null!, null!, null!);
        if (!isKept)
            (_maker, _pair, _brief) = (maker, pair, RowInBrief.Of(driver.Id, findings, work));
    }

    /// <summary>The vehicle.</summary>
    public required Vehicle Vehicle { get; init; }
    /// <summary>The place in it.</summary>
    public required Position Position { get; init; }
    /// <summary>The driver that was tried there.</summary>
    public required Driver Driver { get => _driver ?? _maker!.Driver(_pair); init => _driver = value; }
    /// <summary>The ids of the component sets in which the driver is sold.</summary>
    public required IReadOnlyList<string> Sets { get; init; }
    /// <summary>The spacer or the cup; null straight on the panel.</summary>
    public Part? Mount { get; init; }
    /// <summary>The worst that any rule says of the best mounting.</summary>
    public required Status Status { get; init; }
    /// <summary>
    /// What the rules say, worst first; the first decides. Empty when no rule applies. In a chart of very many rows worked out whenever
    /// it is asked for, on one thread at a time.
    /// </summary>
    public required IReadOnlyList<Finding> Findings { get => _findings ?? _maker!.Findings(_pair); init => _findings = value; }
    /// <summary>Those of the findings that tell of accepted work that is needed: holes to enlarge or drill, parts to trim.</summary>
    public required IReadOnlyList<Finding> Work { get => _work ?? _maker!.Work(Findings); init => _work = value; }

    /// <summary>The worst finding; null where no rule said anything.</summary>
    public Finding? Deciding => Findings.Count > 0 ? Findings[0] : null;

    /// <summary>The smallest distance of a length to its limit in millimetres, negative beyond it; null when none is known.</summary>
    public double? Margin => _brief is { } brief ? brief.Margin : RowInBrief.Least(Findings);

    internal string DriverId => _brief?.Driver ?? Driver.Id;

    /// <summary>What a line of a report needs of it; put together for each who asks where the row keeps its findings.</summary>
    internal RowInBrief InBrief => _brief ?? RowInBrief.Of(Driver.Id, Findings, Work);
}

/// <summary>A component set at the places of one factory output, such as the woofer in a door and the tweeter in the mirror sail.</summary>
/// <param name="Set">The set.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Channel">The factory output, `front-left`.</param>
/// <param name="Places">One for each position of the output that the set has a driver for; the woofer's first.</param>
public sealed record SetRow(ComponentSet Set, Vehicle Vehicle, string Channel, IReadOnlyList<SetPlace> Places)
{
    /// <summary>The worst of its drivers'.</summary>
    public Status Status => StatusWords.Worst(Places.Select(r => r.Status));
}

/// <summary>A driver of a set at one position.</summary>
public sealed record SetPlace(Position Position, Driver Driver, Status Status);

/// <summary>The answer to `chart`.</summary>
public sealed record ChartResult
{
    /// <summary>Name and version of what charted.</summary>
    public required string Program { get; init; }
    /// <summary>SHA-256 over the files of the catalogs, hexadecimal.</summary>
    public required string CatalogDigest { get; init; }
    /// <summary>Work that is taken as accepted: `drill`, `enlarge-holes`, `trim-parts`.</summary>
    public required IReadOnlyList<string> Accepts { get; init; }
    /// <summary>The ids of the rules that judged, in order.</summary>
    public required IReadOnlyList<string> Rules { get; init; }
    /// <summary>The rules about positions that need a build, and why.</summary>
    public required IReadOnlyList<LeftOut> LeftOut { get; init; }
    /// <summary>By vehicle, position in the order of the vehicle, driver.</summary>
    public required IReadOnlyList<ChartRow> Rows { get; init; }
    /// <summary>By vehicle, output in the order of the vehicle, set.</summary>
    public required IReadOnlyList<SetRow> Sets { get; init; }
    /// <summary>Pairs of the slice before statuses were asked for, by status from best to worst.</summary>
    public required IReadOnlyList<int> Counts { get; init; }
    /// <summary>Pairs that are not told, because a driver of this type does not belong at a position of this role.</summary>
    public required int OfAnotherType { get; init; }
}
