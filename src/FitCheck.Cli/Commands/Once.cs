using FitCheck.Charts;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;
using FitCheck.QuoteImport;
using FitCheck.Suggestions;

namespace FitCheck.Cli.Commands;

/// <summary>
/// Opens a checker for one question and forgets it. The answer has what is wrong with catalog and rules in it too: all at once, or what a
/// warning of theirs says.
/// </summary>
/// <param name="folders">Catalog and rules.</param>
/// <param name="cache">What was found valid before.</param>
/// <param name="progress">Told what goes on; null for nobody.</param>
/// <param name="ask">Who answers what a seller's list leaves open; null, or none, for nobody.</param>
internal sealed class Once(Folders folders, ValidationCache cache, IProgress<string>? progress = null, Func<IQuestions?>? ask = null)
{
    // Some 0.3 MB each; beyond it a build is judged again for every format that asks for it.
    private const int MostAtOnce = 100;

    /// <summary>One question of a command, whose progress is told on the terminal.</summary>
    public static T Asked<T>(Folders folders, Func<Once, T> question)
    {
        using var line = new ProgressLine();
        return question(new Once(folders, ValidationCache.InUserFolder(), line, Person));

        IQuestions? Person()
        {
            line.Clear();
            return TerminalQuestions.CanAsk ? new TerminalQuestions() : null;
        }
    }

    /// <summary>Builds, or with a request the sellers' lists that stand for them.</summary>
    public CheckOutcome Check(IReadOnlyList<string> files, QuoteRequest? quote = null)
    {
        var (opened, builds, told) = Sources(files, quote);
        return builds is null ? new CheckOutcome(null, told)
            : opened.Checker?.Check(builds, new CheckOptions { Progress = progress, Most = MostAtOnce }) is { } outcome
            ? outcome with { Problems = opened.With([.. told, .. outcome.Problems]) } : new CheckOutcome(null, opened.ProblemsWith(builds));
    }

    public SuggestOutcome Suggest(string file, SuggestOptions options, QuoteRequest? quote = null)
    {
        var (opened, builds, told) = Sources([file], quote);
        return builds is null ? new SuggestOutcome(null, told)
            : opened.Checker?.Suggest(builds[0], options with { Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With([.. told, .. outcome.Problems]) }
            : new SuggestOutcome(null, opened.ProblemsWith(builds));
    }

    public ListOutcome List(IReadOnlyList<string> files, Tax tax, QuoteRequest? quote = null)
    {
        var (opened, builds, told) = Sources(files, quote);
        return builds is null ? new ListOutcome(null, told)
            : opened.Checker?.List(builds, new ListOptions { Tax = tax, Progress = progress }) is { } outcome
            ? outcome with { Problems = opened.With([.. told, .. outcome.Problems]) } : new ListOutcome(null, opened.ProblemsWith(builds));
    }

    /// <summary>Of a slice that names what there is not, only that is told.</summary>
    public ChartOutcome Chart(ChartSlice slice)
    {
        var opened = Open();
        return opened.Checker?.Chart(new ChartOptions { Slice = slice, Progress = progress }) is not { } outcome
            ? new ChartOutcome(null, opened.Problems)
            : outcome.Result is null ? outcome : outcome with { Problems = opened.With(outcome.Problems) };
    }

    public ImportOutcome Import(BuildSource list, QuoteRequest request)
    {
        var opened = Open();
        if (opened.Checker is not { } checker)
            return new ImportOutcome(null, opened.Problems);
        var outcome = Imported(checker, list, request);
        return outcome with { Problems = opened.With(outcome.Problems) };
    }

    // What the list leaves open is asked, where somebody is there; then it is read again. Article numbers that were learned are kept.
    private ImportOutcome Imported(Checker checker, BuildSource list, QuoteRequest request)
    {
        if (request.Articles is { } written && Overwriting.Of([("--articles", written)], [list.Name], FilesRead.Of(folders)) is { } refusal)
            return new ImportOutcome(null, [new Problem(new Location("--articles", 0, 0), Severity.Error, refusal.Message)]);
        var options = request.Options with
        {
            Progress = progress,
            Articles = request.Articles is { } file ? BuildSource.File(file) : null,
            ArticlesAreNew = request.Articles is { } begun && !File.Exists(begun),
        };
        var outcome = checker.Import(list, request.Vehicle, options);
        if (outcome.Open.Count + outcome.OpenPlaces.Count > 0 && ask?.Invoke() is { } person)
        {
            if (outcome.Open.Count > 0)
                outcome = checker.Import(list, request.Vehicle,
                    options = QuoteDialogue.Answered(person, outcome.Open, checker.Catalog, options));
            // What a line is may decide where another one goes.
            if (outcome.OpenPlaces.Count > 0)
                outcome = checker.Import(list, request.Vehicle, QuoteDialogue.Placed(person, outcome.OpenPlaces, options));
        }
        if (outcome.Articles is not { } articles)
            return outcome;
        var failed = options.ArticlesAreNew ? OutputFile.New(request.Articles!, articles) : OutputFile.Edited(request.Articles!, articles);
        return failed is null ? outcome
            : outcome with
            {
                Build = null,
                Problems = [.. outcome.Problems,
                new Problem(new Location("--articles", 0, 0), Severity.Error, failed)]
            };
    }

    // What a list is read into has no file: its places are told as those of a build that nobody has saved.
    private (OpenOutcome Opened, IReadOnlyList<BuildSource>? Builds, IReadOnlyList<Problem> Told) Sources(IReadOnlyList<string> files,
        QuoteRequest? quote)
    {
        var opened = Open();
        if (quote is null || opened.Checker is not { } checker)
            return (opened, quote is null ? BuildSource.Files(files) : null, quote is null ? [] : opened.Problems);
        var read = files.Select(f => (File: f, Import: Imported(checker, BuildSource.File(f), quote))).ToList();
        IReadOnlyList<Problem> told = [.. read.SelectMany(r => r.Import.Problems)];
        return read.Exists(r => r.Import.Build is null) ? (opened, null, opened.With(told))
            : (opened, [.. read.Select(r => BuildSource.Text(BuildText.NameOf(r.File), r.Import.Build!))], told);
    }

    private OpenOutcome Open() => Checker.Open(CheckerOptions.Of(folders, cache, progress) with { KeepsEntries = false });
}
