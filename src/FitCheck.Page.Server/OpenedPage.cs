using System.Text;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Page.Server;

/// <summary>What the page stands on.</summary>
/// <param name="Engine">The page.</param>
/// <param name="Start">The fields with which it begins: a build, where one was given.</param>
/// <param name="Assets">Its style sheets and scripts.</param>
/// <param name="Watch">Looks at the files.</param>
internal sealed record OpenedPage(PageEngine Engine, IReadOnlyList<KeyValuePair<string, string>> Start,
    IReadOnlyDictionary<string, Asset> Assets, CatalogWatch Watch) : IDisposable
{
    /// <exception cref="CannotServeException">Something of it can't be used; why, was told.</exception>
    public static OpenedPage Open(ServerArguments arguments, CancellationToken cancel)
    {
        var problems = new ProblemList();
        var build = arguments.Build is { } file ? InputFile.Bytes(file, ShownPath.Of(file), problems) : null;
        var opened = Checker.Open(new CheckerOptions
        {
            Catalogs = arguments.Catalogs,
            Rules = arguments.Rules,
            Cache = ValidationCache.InUserFolder(),
        }, cancel);
        problems.AddRange(opened.Problems);
        foreach (var problem in problems.Sorted())
            Terminal.Tell(problem.ToString());
        if (opened.Checker is not { } checker || problems.HasErrors)
            throw new CannotServeException("there is no page before this is mended");
        var engine = new PageEngine(checker);
        return new OpenedPage(engine, build is null ? [] : [new("text", Text(build)), new("file", Path.GetFileName(arguments.Build)!)],
            engine.Assets.ToDictionary(a => a.Name, a => new Asset(a), StringComparer.Ordinal),
            new CatalogWatch([.. arguments.Catalogs, .. arguments.Rules], checker, engine));
    }

    public void Dispose() => Watch.Dispose();

    // What is no UTF-8 becomes a letter that no build has; the page tells what is wrong with a text.
    private static string Text(byte[] build) => Encoding.UTF8.GetString(build).TrimStart('\uFEFF');
}
