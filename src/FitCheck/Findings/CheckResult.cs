using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Drawings;
using FitCheck.Facts;
using FitCheck.Yaml;

namespace FitCheck.Findings;

/// <summary>The answer to `check`: everything a report may tell, and nothing of how it looks.</summary>
public sealed record CheckResult(string Program, string CatalogDigest, IReadOnlyList<BuildResult> Builds)
{
    public Status Verdict
    {
        get
        {
            var worst = Status.Pass;
            foreach (var build in Builds)
                worst = StatusWords.WorseOf(worst, build.Verdict);
            return worst;
        }
    }
}

/// <summary>What was found of one build.</summary>
public sealed record BuildResult
{
    private readonly Lazy<IReadOnlyList<PositionDrawing>> _drawings = new([]);
    private readonly Lazy<IReadOnlyList<LoadCurve>> _loads = new([]);

    public BuildResult()
    {
    }

    // Drawn when a report first asks: one for a terminal never does.
    internal BuildResult(Func<IReadOnlyList<PositionDrawing>> drawings, Func<IReadOnlyList<LoadCurve>> loads) => (_drawings, _loads) = (new(drawings), new(loads));

    public required string File { get; init; }
    public required string Name { get; init; }
    public string? Notes { get; init; }
    public required string VehicleName { get; init; }
    /// <summary>In their total order.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    public required IReadOnlyList<FactTable> Facts { get; init; }
    public IReadOnlyList<PositionDrawing> Drawings { get => _drawings.Value; init => _drawings = new(value); }
    public IReadOnlyList<LoadCurve> Loads { get => _loads.Value; init => _loads = new(value); }
    public IReadOnlyList<ListLine> List { get; init; } = [];
    /// <summary>Sums by currency, in ordinal order of the currency.</summary>
    public IReadOnlyList<Money> Totals { get; init; } = [];
    public Money? Budget { get; init; }
    public IReadOnlyList<string> Cautions { get; init; } = [];
    /// <summary>Waivers that matched nothing, and other remarks on the build file itself.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];

    /// <summary>The worst unwaived status.</summary>
    public Status Verdict
    {
        get
        {
            var worst = Status.Pass;
            foreach (var finding in Findings)
            {
                if (finding.Waived is null)
                    worst = StatusWords.WorseOf(worst, finding.Status);
            }
            return worst;
        }
    }
}
