using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Lists;
using FitCheck.Suggestions;

namespace FitCheck.Tests;

/// <summary>
/// Opens a checker for one question of files and forgets it: the answer has what is wrong with catalog and rules in it, as the commands
/// tell it.
/// </summary>
internal static class Once
{
    public static CheckOutcome Check(IReadOnlyList<string> files, Folders folders, ValidationCache cache)
    {
        var (opened, builds) = (Open(folders, cache), BuildSource.Files(files));
        return opened.Checker?.Check(builds) is { } outcome ? outcome with { Problems = opened.With(outcome.Problems) }
            : new CheckOutcome(null, opened.ProblemsWith(builds));
    }

    public static SuggestOutcome Suggest(string file, SuggestOptions options, Folders folders, ValidationCache cache)
    {
        var (opened, build) = (Open(folders, cache), BuildSource.File(file));
        return opened.Checker?.Suggest(build, options) is { } outcome ? outcome with { Problems = opened.With(outcome.Problems) }
            : new SuggestOutcome(null, opened.ProblemsWith([build]));
    }

    public static ListOutcome List(IReadOnlyList<string> files, Tax tax, Folders folders, ValidationCache cache)
    {
        var (opened, builds) = (Open(folders, cache), BuildSource.Files(files));
        return opened.Checker?.List(builds, new ListOptions { Tax = tax }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) } : new ListOutcome(null, opened.ProblemsWith(builds));
    }

    public static ChartOutcome Chart(ChartSlice slice, Folders folders, ValidationCache cache)
    {
        var opened = Open(folders, cache);
        return opened.Checker?.Chart(new ChartOptions { Slice = slice }) is not { } outcome ? new ChartOutcome(null, opened.Problems)
            : outcome.Result is null ? outcome : outcome with { Problems = opened.With(outcome.Problems) };
    }

    public static ImportOutcome Import(string file, string vehicle, IReadOnlyList<string> at, Folders folders, ValidationCache cache)
    {
        var opened = Open(folders, cache);
        return opened.Checker?.Import(BuildSource.File(file), vehicle, new ImportOptions { At = at }) is { } outcome
            ? outcome with { Problems = opened.With(outcome.Problems) }
            : new ImportOutcome(null, opened.Problems);
    }

    private static OpenOutcome Open(Folders folders, ValidationCache cache) =>
        Checker.Open(CheckerOptions.Of(folders, cache, progress: null));
}
