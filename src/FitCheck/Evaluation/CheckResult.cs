using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Drawings;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Evaluation;

/// <summary>The answer to `check`: everything a report may tell, and nothing of how it looks.</summary>
/// <param name="Program">Name and version of what checked.</param>
/// <param name="CatalogDigest">SHA-256 over the files of the catalogs, hexadecimal.</param>
/// <param name="Builds">What was found of each build, in the order in which they were asked about.</param>
public sealed record CheckResult(string Program, string CatalogDigest, IReadOnlyList<BuildResult> Builds)
{
    /// <summary>The rules that judged, in ordinal order of their ids; empty where nobody asks for their help.</summary>
    public IReadOnlyList<RuleHelp> Rules { get; init; } = [];

    /// <summary>The worst verdict of any build.</summary>
    public Status Verdict
    {
        get
        {
            var worst = Status.Pass;
            foreach (var verdict in Builds is ResultsInTurn turn ? turn.Verdicts : Builds.Select(b => b.Verdict))
                worst = StatusWords.WorseOf(worst, verdict);
            return worst;
        }
    }

    /// <summary>What each build file itself is told, in their order.</summary>
    internal IEnumerable<IReadOnlyList<Problem>> Remarks =>
        Builds is ResultsInTurn turn ? turn.Remarks : Builds.Select(b => b.Remarks);

    /// <summary>Builds and their verdicts, worst first, else in their order; a build is asked for when somebody takes it.</summary>
    internal IReadOnlyList<(Status Verdict, Func<BuildResult> Build)> WorstFirst =>
        [.. (Builds is ResultsInTurn turn ? turn.Verdicts : Builds.Select(b => b.Verdict))
            .Select((v, i) => (Verdict: v, Build: (Func<BuildResult>)(() => Builds[i]))).OrderByDescending(b => b.Verdict)];
}

/// <summary>What was found of one build.</summary>
public sealed record BuildResult
{
    private readonly Lazy<Pictures> _pictures = new(() => Pictures.None);
    private readonly Lazy<IReadOnlyList<NotJudged>> _notJudged = new(() => []);
    private readonly SilentRules? _silent;

    /// <summary>Made piece by piece, without drawings unless they are given.</summary>
    public BuildResult()
    {
    }

    // Drawn when a report first asks: one for a terminal never does.
    internal BuildResult(Func<Pictures> draw, SilentRules silent) =>
        (_pictures, _silent, _notJudged) = (new(draw), silent, new(silent.Told));

    /// <summary>The file of the build with `/`, or the name that its text was given.</summary>
    public required string File { get; init; }
    /// <summary>What the build calls itself.</summary>
    public required string Name { get; init; }
    /// <summary>What it notes; null for nothing.</summary>
    public string? Notes { get; init; }
    /// <summary>The name of its vehicle.</summary>
    public required string VehicleName { get; init; }
    /// <summary>
    /// What the catalog calls the vehicle whose figures stand in for those of the one that is meant, which the catalog does not have; null
    /// where it has it.
    /// </summary>
    public string? StandIn { get; init; }
    /// <summary>In their total order.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>
    /// The rules that did not apply, place by place, each with the reason; worked out when first asked for, on one thread at a time.
    /// </summary>
    public IReadOnlyList<NotJudged> NotJudged
    {
        get => _notJudged.Value;
        init => (_notJudged, _silent) = (new(() => value), null);
    }
    /// <summary>How many these are, for who does not ask for the reasons.</summary>
    internal int NotJudgedCount => _silent?.Count ?? NotJudged.Count;
    /// <summary>
    /// What the rules judged, with units and tolerances, by position, output and device; each is computed when it is first asked for, on
    /// one thread at a time.
    /// </summary>
    public required IReadOnlyList<FactTable> Facts { get; init; }
    /// <summary>Sections of what is mounted where, lengths in mm; drawn when first asked for.</summary>
    public IReadOnlyList<PositionDrawing> Drawings
    {
        get => _pictures.Value.Positions; init =>
        _pictures = Redrawn(p => p with { Positions = value });
    }
    /// <summary>The load on each output, in ohm over Hz; drawn when first asked for.</summary>
    public IReadOnlyList<LoadCurve> Loads { get => _pictures.Value.Loads; init => _pictures = Redrawn(p => p with { Loads = value }); }
    /// <summary>One for each channel, in the order of the build.</summary>
    public IReadOnlyList<WiringDiagram> Wirings
    {
        get => _pictures.Value.Wirings; init =>
        _pictures = Redrawn(p => p with { Wirings = value });
    }
    /// <summary>From the battery to the amplifiers; null without any.</summary>
    public SupplyDiagram? Supply { get => _pictures.Value.Supply; init => _pictures = Redrawn(p => p with { Supply = value }); }
    /// <summary>What to buy, in ordinal order of the parts' ids.</summary>
    public IReadOnlyList<ListLine> List { get; init; } = [];
    /// <summary>Sums by currency, in ordinal order of the currency.</summary>
    public IReadOnlyList<Money> Totals { get; init; } = [];
    /// <summary>What may be spent; null when the build does not say.</summary>
    public Money? Budget { get; init; }
    /// <summary>What the installer sets first.</summary>
    public IReadOnlyList<StartingPoint> Settings { get; init; } = [];
    /// <summary>What to take care of, in sentences.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
    /// <summary>Waivers that matched nothing, and other remarks on the build file itself.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];

    /// <summary>In which units its sentences tell lengths; reports tell theirs alike.</summary>
    internal LengthUnits Lengths { get; init; }

    /// <summary>What the build is meant to give; null when it does not say. Nothing that is told of it hangs on this.</summary>
    internal Expectation? Expected { get; init; }

    /// <summary>Where this shop's rules differ from those that come with the program.</summary>
    public IReadOnlyList<RuleChange> RuleChanges { get; init; } = [];

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

    /// <summary>Waived findings without whose waivers the verdict would be worse, in their order; empty when it rests on none.</summary>
    public IReadOnlyList<Finding> RestingOn
    {
        get
        {
            var verdict = Verdict;
            return [.. Findings.Where(f => f.Waived is not null && f.Status > verdict)];
        }
    }

    /// <summary>How many waivers the verdict rests on.</summary>
    public int WaiversRestedOn => RestingOn.Select(f => (f.Rule, f.Waived)).Distinct().Count();

    private Lazy<Pictures> Redrawn(Func<Pictures, Pictures> change)
    {
        var before = _pictures;
        return new(() => change(before.Value));
    }
}
