using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Schemas;
using FitCheck.Suggestions;

namespace FitCheck;

/// <summary>
/// Catalogs and rules, opened once and kept open: it checks builds, looks for changes of them, lists their parts, charts what fits and
/// imports sellers' lists.
/// <para>Bad input (of files, texts and words) comes back as problems with their places. Arguments that nobody can have meant are refused
/// with an
/// <see cref="ArgumentException"/> that names them; a call that is cancelled ends with an <see cref="OperationCanceledException"/>.</para>
/// <para>Any number of threads may ask at once. Each call answers from the state that was open when it began, also while
/// <see cref="Refresh"/> puts another one in its place. An answer is for one thread at a time: parts of it are worked out when they are
/// first asked for.</para>
/// <para>Nothing has to be disposed of.</para>
/// </summary>
public sealed partial class Checker
{
    private readonly Folders _folders;
    private readonly ValidationCache _cache;
    private readonly Lazy<SchemaCheck> _schemas = new(() => new SchemaCheck());
    private readonly Lock _reopening = new();
    private readonly DateOnly? _today;
    private volatile ValidInputs _valid;

    private Checker(CheckerOptions options, ValidInputs valid) =>
        (_folders, _cache, _valid, _today) = (new Folders(options.Catalogs, options.Rules), options.Cache, valid, options.Today);

    /// <summary>SHA-256 over the files of the catalogs that are open, hexadecimal.</summary>
    public string CatalogDigest => _valid.Catalog.Digest;

    /// <summary>Opens catalogs and rules, and validates them unless the cache knows their bytes.</summary>
    /// <param name="options">Which, and what may be remembered.</param>
    /// <param name="cancel">Ends it within a fraction of a second.</param>
    /// <returns>The checker, or the problems why there is none.</returns>
    /// <exception cref="ArgumentException"><paramref name="options"/> is null, or a list in it is null, empty, or holds a folder that is
    /// null or empty; or its cache is null.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static OpenOutcome Open(CheckerOptions options, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        options = options with
        {
            Catalogs = [.. Arguments.Words(options.Catalogs, nameof(options.Catalogs))],
            Rules = [.. Arguments.Words(options.Rules, nameof(options.Rules))],
            Cache = Arguments.Given(options.Cache, nameof(options.Cache)),
        };
        var problems = new ProblemList();
        var (catalog, valid) =
            ValidInputs.OpenWithCatalog(new Folders(options.Catalogs, options.Rules), options.Cache, problems,
                options.Progress is { } progress ? progress.Report : null,
                options.KeepsEntries, cancel);
        return new OpenOutcome(valid is null ? null : new Checker(options, valid), problems.Sorted(), options, catalog);
    }

    /// <summary>Checks builds against catalogs and rules.</summary>
    /// <param name="builds">One or more; the answer keeps their order.</param>
    /// <param name="options">How; null for the usual way.</param>
    /// <param name="cancel">Looked at between two builds.</param>
    /// <returns>What was found of every build, or the problems of those that can't be read; then none is checked.</returns>
    /// <exception cref="ArgumentException"><paramref name="builds"/> is null, empty or holds a null: no build passes no check.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public CheckOutcome Check(IReadOnlyList<BuildSource> builds, CheckOptions? options = null, CancellationToken cancel = default)
    {
        Arguments.Builds(builds, nameof(builds));
        var (valid, problems) = (_valid, new ProblemList());
        if (builds.Count > options?.Most)
        {
            var each = BuildFiles.InTurn(builds, valid, _folders.Catalog, _cache, _schemas, problems, _today, options.Progress, cancel);
            return new CheckOutcome(each is null ? null : FitCheck.Check.InTurn(each, valid, cancel), problems.Sorted());
        }
        return Read(builds, valid, problems, cancel) is { } read
            ? new CheckOutcome(FitCheck.Check.Of(read, valid, options?.Progress, cancel), problems.Sorted())
            : new CheckOutcome(null, problems.Sorted());
    }

    /// <summary>Looks for the changes from the catalog that make a build pass.</summary>
    /// <param name="build">The build.</param>
    /// <param name="options">What has to go, what is best, what stays; null for the usual.</param>
    /// <param name="cancel">Looked at before each change that is tried.</param>
    /// <returns>The best changes among those that were tried, or why there are none.</returns>
    /// <exception cref="ArgumentException"><paramref name="build"/> is null; or what is to be kept is null or holds a word that is null or
    /// empty; or the time is not above zero.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public SuggestOutcome Suggest(BuildSource build, SuggestOptions? options = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(build);
        options ??= new SuggestOptions();
        Arguments.Words(options.Keep, nameof(options.Keep), mayBeEmpty: true);
        Arguments.AboveZero(options.Time, nameof(options.Time));
        var (valid, problems) = (_valid, new ProblemList());
        var result = Read([build], valid, problems, cancel) is [var read] ? FitCheck.Suggest.Of(read, options, valid, problems, cancel)
            : null;
        return new SuggestOutcome(result, problems.Sorted());
    }

    /// <summary>Lists what to buy for builds, and what rules miss on the list and the catalog has.</summary>
    /// <param name="builds">One or more; the answer keeps their order.</param>
    /// <param name="options">What is said of tax; null for nothing.</param>
    /// <param name="cancel">Looked at between two parts that are tried.</param>
    /// <exception cref="ArgumentException"><paramref name="builds"/> is null, empty or holds a null; or the tax is null.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ListOutcome List(IReadOnlyList<BuildSource> builds, ListOptions? options = null, CancellationToken cancel = default)
    {
        Arguments.Builds(builds, nameof(builds));
        options ??= new ListOptions();
        Arguments.Given(options.Tax, nameof(options.Tax));
        var (valid, problems) = (_valid, new ProblemList());
        return Read(builds, valid, problems, cancel) is { } read
            ? new ListOutcome(ListParts.Of(read, valid, options, cancel), problems.Sorted())
            : new ListOutcome(null, problems.Sorted());
    }

    /// <summary>
    /// Charts which drivers fit which positions, judged on every mounting that the catalog has by the rules that need no build.
    /// </summary>
    /// <param name="options">Which part of the chart; null for all of it.</param>
    /// <param name="cancel">Looked at between two drivers, and between two rows.</param>
    /// <exception cref="ArgumentException">The slice or a list in it is null, or such a list holds a word that is null or
    /// empty.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ChartOutcome Chart(ChartOptions? options = null, CancellationToken cancel = default)
    {
        var slice = (options ??= new ChartOptions()).Slice;
        Arguments.Given(slice, nameof(options.Slice));
        foreach (var (words, name) in new[] { (slice.Vehicles, nameof(slice.Vehicles)), (slice.Positions, nameof(slice.Positions)),
            (slice.Drivers, nameof(slice.Drivers)), (slice.Sizes, nameof(slice.Sizes)), (slice.Accepts ?? [], nameof(slice.Accepts)) })
            Arguments.Words(words, name, mayBeEmpty: true);
        Arguments.Given(slice.Statuses, nameof(slice.Statuses));
        var (valid, problems) = (_valid, new ProblemList());
        options.Progress?.Report("charting");
        var result = PairChart.Of(valid.Catalog, valid.Rules, slice, problems, options.Progress, cancel: cancel);
        return problems.HasErrors ? new ChartOutcome(null, problems.All) : new ChartOutcome(result, problems.Sorted());
    }

    /// <summary>
    /// Turns a seller's list, as CSV with an id or a name and a number of packs in each line, into a build for one vehicle.
    /// </summary>
    /// <param name="list">The list.</param>
    /// <param name="vehicle">The vehicle's id.</param>
    /// <param name="options">Places that are known; null for none.</param>
    /// <param name="cancel">Looked at between two steps.</param>
    /// <returns>The build as text and what is to be told of it, or the problems why there is none.</returns>
    /// <exception cref="ArgumentException">An argument is null or empty, or the places are null or hold a word that is null or
    /// empty.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ImportOutcome Import(BuildSource list, string vehicle, ImportOptions? options = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentException.ThrowIfNullOrEmpty(vehicle);
        options ??= new ImportOptions();
        Arguments.Words(options.At, nameof(options.At), mayBeEmpty: true);
        Arguments.Words(options.As, nameof(options.As), mayBeEmpty: true);
        ArgumentNullException.ThrowIfNull(options.Skip, nameof(options));
        cancel.ThrowIfCancellationRequested();
        var (valid, problems) = (_valid, new ProblemList());
        options.Progress?.Report($"reading {list.Name}");
        var file = BuildFiles.AnyBytes(list, "the seller's list", problems) is { } bytes ? QuoteFile.Read(list.Name, bytes, problems)
            : null;
        var shop = options.Articles is not { } articles ? null : options.ArticlesAreNew ? ArticleFile.Empty
            : BuildFiles.AnyBytes(articles, "the article numbers", problems) is { } known
            ? ArticleFile.Read(articles.Name, known, valid.Catalog, problems) : null;
        return ImportQuote.Of(file, vehicle, options, shop, valid.Catalog, valid.Rules, problems, cancel);
    }

    /// <summary>What exists, as it is now.</summary>
    internal PartsCatalog Catalog => _valid.Catalog;

    /// <summary>What judges, as it is now.</summary>
    internal Rules.RuleSet Rules => _valid.Rules;

    /// <summary>The day by which questions are answered, UTC.</summary>
    internal DateOnly Today => _today ?? Foundation.Calendar.Today;

    /// <summary>What is open; another object as soon as something else is.</summary>
    internal object Opened => _valid;

    private IReadOnlyList<BuildFile>? Read(IReadOnlyList<BuildSource> builds, ValidInputs valid, ProblemList problems,
        CancellationToken cancel) =>
        BuildFiles.Read(builds, valid, _folders.Catalog, _cache, _schemas, problems, _today, cancel);
}
