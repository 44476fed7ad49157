using System.Collections;
using FitCheck.Builds;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Evaluation;

/// <summary>
/// What was found of very many builds, judged when it is asked for, each time anew: only the last one is in memory, and of all others what
/// a run ends with. For one thread at a time.
/// </summary>
/// <param name="builds">Each is read anew from the bytes that were found sound.</param>
/// <param name="valid">What they are judged by.</param>
/// <param name="cancel">Looked at before each build.</param>
internal sealed class ResultsInTurn(IReadOnlyList<Func<Build>> builds, ValidInputs valid, CancellationToken cancel)
    : IReadOnlyList<BuildResult>
{
    private readonly LengthUnits? _units = Lengths.AskedFor;
    private readonly Ending?[] _endings = new Ending?[builds.Count];
    private (int At, BuildResult? Result) _last = (-1, null);

    /// <summary>Told which build is being judged; null for nobody.</summary>
    public IProgress<string>? Progress { get; set; }

    public int Count => builds.Count;

    public BuildResult this[int index] => _last.At == index ? _last.Result! : Judged(index);

    /// <summary>The verdict of each, in their order; what was judged once need not be judged again for it.</summary>
    public IEnumerable<Status> Verdicts => Enumerable.Range(0, Count).Select(i => Of(i).Verdict);

    /// <summary>The remarks on each, in their order.</summary>
    public IEnumerable<IReadOnlyList<Problem>> Remarks => Enumerable.Range(0, Count).Select(i => Of(i).Remarks);

    /// <summary>In which units the sentences of each tell lengths.</summary>
    public IEnumerable<LengthUnits> Units => Enumerable.Range(0, Count).Select(i => Of(i).Lengths);

    public IEnumerator<BuildResult> GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private Ending Of(int index)
    {
        if (_endings[index] is null)
            Judged(index);
        return _endings[index]!;
    }

    private BuildResult Judged(int index)
    {
        cancel.ThrowIfCancellationRequested();
        _last = (-1, null);
        // As when it was asked, whoever reads on.
        using var units = Lengths.Exactly(_units);
        var build = builds[index]();
        Progress?.Report($"checking {build.File}");
        var result = BuildEvaluation.Judged(build, valid.Practice, () => valid.Rules);
        _endings[index] ??= new Ending(result.Verdict, result.Remarks, result.Lengths);
        _last = (index, result);
        return result;
    }

    private sealed record Ending(Status Verdict, IReadOnlyList<Problem> Remarks, LengthUnits Lengths);
}
