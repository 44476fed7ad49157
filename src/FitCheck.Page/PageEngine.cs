using FitCheck.Page.Acting;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Page.Views;
using FitCheck.Reports.Html;

namespace FitCheck.Page;

/// <summary>
/// The page at which a build is put together: a request in, HTML out. It keeps nothing of anybody: the text of the build travels with each
/// request. Any number of threads may ask at once.
/// </summary>
public sealed class PageEngine
{
    private readonly HtmlTemplates _templates;
    private readonly Desk _desk;
    private readonly Actions _actions;
    private readonly PageOptions _options;
    private readonly Prints _prints;

    /// <summary>Makes the page for what is open.</summary>
    /// <param name="checker">Catalog and rules.</param>
    /// <param name="options">Where its templates lie, and how much it does at once; null for the usual.</param>
    public PageEngine(Checker checker, PageOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(checker);
        _options = options ?? new PageOptions();
        var page = Path.Combine(_options.TemplatesDirectory, "page");
        _templates = new HtmlTemplates(page, Path.Combine(_options.TemplatesDirectory, "html"));
        _desk = new Desk(checker);
        _actions = new Actions(_desk);
        _prints = new Prints(checker, _options.TemplatesDirectory);
        Assets = PageAssets.Read(_options.TemplatesDirectory);
    }

    /// <summary>The names that may be asked for besides those of <see cref="Assets"/>; the empty one is the page itself.</summary>
    public static IReadOnlyList<string> Names { get; } = ["", "choices", "ways", "save", "print"];

    /// <summary>Style sheets and scripts.</summary>
    public IReadOnlyList<PageAsset> Assets { get; }

    /// <summary>
    /// What is wrong with the catalog as it lies on the disk now, in sentences, while the last good one stays open; null where nothing is.
    /// The page says so until that is mended.
    /// </summary>
    public string? Trouble { get; set; }

    /// <summary>Answers. Whatever was typed, opened or altered gets a page that says what was expected; nothing throws for it.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="cancel">Ends it; what was begun is worth nothing then.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public PageAnswer Answer(PageRequest request, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        cancel.ThrowIfCancellationRequested();
        var state = PageState.Of(name => request[name]);
        return request.Name switch
        {
            "" => Page(request, state, cancel),
            "choices" => Choices(request, state, cancel),
            "ways" => Ways(request, state, cancel),
            "save" => Saved(state),
            "print" => _prints.Of(state, request["what"], cancel),
            _ => new PageAnswer { Status = 404, Text = "There is no such page.", ContentType = "text/plain; charset=utf-8" },
        };
    }

    private PageAnswer Page(PageRequest request, PageState state, CancellationToken cancel)
    {
        var outcome = _actions.Of(state, request["do"], new PageForm(request), cancel);
        return Shown(Arranged(request, outcome, cancel), request);
    }

    private WholeView Arranged(PageRequest request, Outcome outcome, CancellationToken cancel, Suggestions.Suggestion? suggestion = null) =>
        new Arrangement(_desk, _options, outcome, Trouble)
        {
            IsPart = request.IsPart,
            Wish = request["prefer"],
            UpTo = Count(request["upto"]),
            Suggestion = suggestion,
        }.Of(cancel);

    private PageAnswer Choices(PageRequest request, PageState state, CancellationToken cancel)
    {
        if (!request.IsPart)
            return Page(request, state, cancel);
        var view = new Arrangement(_desk, _options, new Outcome(state), null) { UpTo = Count(request["upto"]) }.Choosing(cancel);
        return view is null ? new PageAnswer { Text = "" } : new PageAnswer { Text = _templates.Render("choosing", view).ToString() };
    }

    private PageAnswer Ways(PageRequest request, PageState state, CancellationToken cancel)
    {
        var prefer = Enum.TryParse<Suggestions.Searching.Preference>(request["prefer"], ignoreCase: true, out var wish) ? wish : default;
        var outcome = _desk.Checker.Suggest(BuildSourceOf(state),
            new SuggestOptions { Prefer = prefer, Time = _options.SearchTime, Progress = request.Progress }, cancel);
        var told = outcome.Result is null ? outcome.Problems.Select(p => p.ToString()).ToList() : [];
        return Shown(Arranged(request, new Outcome(state with { Side = "ways" }, told), cancel, outcome.Result), request);
    }

    private PageAnswer Shown(WholeView view, PageRequest request) =>
        new() { Text = _templates.Render(request.IsPart ? "body" : "page", view).ToString() };

    private static Evaluation.BuildSource BuildSourceOf(PageState state) => Evaluation.BuildSource.Text(state.Name, state.Text);

    private static PageAnswer Saved(PageState state) => new()
    {
        Text = state.File.Written(state.Text),
        ContentType = "application/yaml; charset=utf-8",
        SaveAs = state.Name.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase)
            || state.Name.EndsWith(".yml", StringComparison.OrdinalIgnoreCase) ? state.Name : $"{state.Name}.yaml",
    };

    private static int Count(string? field) =>
        int.TryParse(field, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count)
            ? count : 0;
}
