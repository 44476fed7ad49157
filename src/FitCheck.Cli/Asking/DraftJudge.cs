using System.Collections.Concurrent;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Cli.Asking;

/// <summary>What the rules say of a build as it would be with an answer: by this the offers of a question are put in order.</summary>
internal sealed class DraftJudge(Checker checker)
{
    private readonly ConcurrentDictionary<string, DraftVerdict> _known = new(StringComparer.Ordinal);

    /// <summary>Of each draft, in their order; on all processors.</summary>
    public IReadOnlyList<DraftVerdict> Of(IReadOnlyList<BuildDraft> drafts)
    {
        var verdicts = new DraftVerdict[drafts.Count];
        Parallel.For(0, drafts.Count, i => verdicts[i] = Of(DraftYaml.Of(drafts[i])));
        return verdicts;
    }

    /// <summary>Of each way of being answered the best of the drafts that it leaves open.</summary>
    public IReadOnlyList<DraftVerdict> BestOf(IReadOnlyList<IReadOnlyList<BuildDraft>> ways)
    {
        var all = new Queue<DraftVerdict>(Of([.. ways.SelectMany(w => w)]));
        return [.. ways.Select(w => w.Count == 0 ? DraftVerdict.Refused : Enumerable.Range(0, w.Count).Select(_ => all.Dequeue()).Min()!)];
    }

    /// <summary>Of the text of a build.</summary>
    public DraftVerdict Of(string yaml) =>
        _known.GetOrAdd(yaml, text => checker.Check([BuildSource.Text("new build", text)]).Result?.Builds[0] is { } build
            ? DraftVerdict.Of(build) : DraftVerdict.Refused);
}

/// <summary>A verdict that can be put in order.</summary>
/// <param name="Status">The worst that is said.</param>
/// <param name="Open">What is no pass and not waived, worst first.</param>
internal sealed record DraftVerdict(Status Status, IReadOnlyList<Finding> Open) : IComparable<DraftVerdict>
{
    /// <summary>What can't be read as a build.</summary>
    public static DraftVerdict Refused { get; } = new(Status.Fail, []);

    public static DraftVerdict Of(BuildResult build) => new(build.Verdict,
        [.. build.Findings.Where(f => f.Waived is null && f.Status != Status.Pass).OrderByDescending(f => f.Status)]);

    /// <summary>How far it is from going together, warnings aside.</summary>
    public (Status Status, int Bad) Rank => this == Refused ? (Status.Fail, int.MaxValue)
        : (Status <= Status.Warn ? Status.Pass : Status, Open.Count(f => f.Status >= Status.Measure));

    public int CompareTo(DraftVerdict? other) =>
        other is null ? 1 : (Rank, Open.Count).CompareTo((other.Rank, other.Open.Count));

    /// <summary>
    /// `fail: Driver too deep` of whatever stands in the way; where nothing does, what is warned of these parts, or `goes together`.
    /// </summary>
    public string Of(params IEnumerable<string?> parts)
    {
        var worst = Open.Where(f => f.Status == Status).ToList();
        var own = worst.Find(f => f.Parts.Any(p => parts.Contains(p, StringComparer.Ordinal)));
        return this == Refused ? Status.Word() : Status > Status.Warn ? $"{Status.Word()}: {(own ?? worst[0]).Title}"
            : own is null ? "goes together" : $"{Status.Word()}: {own.Title}";
    }

    public static bool operator <(DraftVerdict a, DraftVerdict b) => a.CompareTo(b) < 0;
    public static bool operator >(DraftVerdict a, DraftVerdict b) => a.CompareTo(b) > 0;
    public static bool operator <=(DraftVerdict a, DraftVerdict b) => a.CompareTo(b) <= 0;
    public static bool operator >=(DraftVerdict a, DraftVerdict b) => a.CompareTo(b) >= 0;
}
