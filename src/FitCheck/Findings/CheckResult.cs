using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Drawings;
using FitCheck.Facts;
using FitCheck.Yaml;

namespace FitCheck.Findings;

/// <summary>The answer to `check`: everything a report may tell, and nothing of how it looks.</summary>
public sealed record CheckResult(string Program, string CatalogDigest, IReadOnlyList<BuildResult> Builds)
{
    public Status Verdict => StatusWords.Worst(Builds.Select(b => b.Verdict));
}

/// <summary>What was found of one build.</summary>
public sealed record BuildResult
{
    public required string File { get; init; }
    public required string Name { get; init; }
    public string? Notes { get; init; }
    public required string VehicleName { get; init; }
    /// <summary>In their total order.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    public required IReadOnlyList<FactTable> Facts { get; init; }
    public IReadOnlyList<PositionDrawing> Drawings { get; init; } = [];
    public IReadOnlyList<LoadCurve> Loads { get; init; } = [];
    /// <summary>One for each channel, in the order of the build.</summary>
    public IReadOnlyList<WiringDiagram> Wirings { get; init; } = [];
    /// <summary>From the battery to the amplifiers; null without any.</summary>
    public SupplyDiagram? Supply { get; init; }
    public IReadOnlyList<ListLine> List { get; init; } = [];
    /// <summary>Sums by currency, in ordinal order of the currency.</summary>
    public IReadOnlyList<Money> Totals { get; init; } = [];
    public Money? Budget { get; init; }
    /// <summary>What the installer sets first.</summary>
    public IReadOnlyList<StartingPoint> Settings { get; init; } = [];
    public IReadOnlyList<string> Cautions { get; init; } = [];
    /// <summary>Waivers that matched nothing, and other remarks on the build file itself.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];

    /// <summary>The worst unwaived status.</summary>
    public Status Verdict => StatusWords.Worst(Findings.Where(f => f.Waived is null).Select(f => f.Status));
}
