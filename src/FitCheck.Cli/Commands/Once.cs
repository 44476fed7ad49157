using FitCheck.Charts;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Lists;
using FitCheck.Suggestions;

namespace FitCheck.Cli.Commands;

/// <summary>
/// Opens a checker for one question and forgets it. The answer has what is wrong with catalog and rules in it too: all at once, or what a
/// warning of theirs says.
/// </summary>
internal sealed class Once(Folders folders, ValidationCache cache, IProgress<string>? progress = null)
{
    /// <summary>One question of a command, whose progress is told on the terminal.</summary>
    public static T Asked<T>(Folders folders, Func<Once, T> question)
    {
        using var line = new ProgressLine();
        return question(new Once(folders, ValidationCache.InUserFolder(), line));
    }

    public CheckOutcome Check(IReadOnlyList<string> files)
    {
        var (opened, builds) = (Open(), BuildSource.Files(files));
        return opened.Checker?.Check(builds, new CheckOptions { Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) } : new CheckOutcome(null, opened.ProblemsWith(builds));
    }

    public SuggestOutcome Suggest(string file, SuggestOptions options)
    {
        var (opened, build) = (Open(), BuildSource.File(file));
        return opened.Checker?.Suggest(build, options with { Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) } : new SuggestOutcome(null, opened.ProblemsWith([build]));
    }

    public ListOutcome List(IReadOnlyList<string> files, Tax tax)
    {
        var (opened, builds) = (Open(), BuildSource.Files(files));
        return opened.Checker?.List(builds, new ListOptions { Tax = tax, Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) } : new ListOutcome(null, opened.ProblemsWith(builds));
    }

    /// <summary>Of a slice that names what there is not, only that is told.</summary>
    public ChartOutcome Chart(ChartSlice slice)
    {
        var opened = Open();
        return opened.Checker?.Chart(new ChartOptions { Slice = slice, Progress = progress }) is not { } outcome
            ? new ChartOutcome(null, opened.Problems)
            : outcome.Result is null ? outcome : outcome with { Problems = opened.With(outcome.Problems) };
    }

    public ImportOutcome Import(BuildSource list, string vehicle, ImportOptions options)
    {
        var opened = Open();
        return opened.Checker?.Import(list, vehicle, options with { Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) } : new ImportOutcome(null, opened.Problems);
    }

    private OpenOutcome Open() => Checker.Open(CheckerOptions.Of(folders, cache, progress));
}
