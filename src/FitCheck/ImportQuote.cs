using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Rules;

namespace FitCheck;

/// <summary>The build that a seller's list became, as text, and what is to be told of it; or the reasons why there is none.</summary>
public sealed record ImportOutcome(string? Build, IReadOnlyList<Problem> Problems)
{
    /// <summary>Lines of which somebody has to be asked.</summary>
    internal IReadOnlyList<OpenLine> Open { get; init; } = [];

    /// <summary>Parts of which somebody has to be asked where they go.</summary>
    internal IReadOnlyList<OpenPlace> OpenPlaces { get; init; } = [];

    /// <summary>The shop's article numbers with those that were learned; null when none were.</summary>
    internal string? Articles { get; init; }
}

/// <summary>Turns a seller's list into a build for one vehicle.</summary>
internal static class ImportQuote
{
    /// <summary>
    /// The build that a list becomes, by a catalog and rules that are known to be valid; a list that could not be read is null, and told
    /// already.
    /// </summary>
    /// <param name="source">The list.</param>
    /// <param name="vehicleId">The vehicle.</param>
    /// <param name="options">What the caller knows.</param>
    /// <param name="shop">The shop's own article numbers; null for none.</param>
    /// <param name="catalog">The parts.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="problems">What is to be told.</param>
    /// <param name="cancel">Looked at between two steps.</param>
    internal static ImportOutcome Of(QuoteFile? source, string vehicleId, ImportOptions options, ArticleFile? shop, PartsCatalog catalog,
        RuleSet rules, ProblemList problems, CancellationToken cancel = default)
    {
        var vehicle = catalog.Resolve<Vehicle>(new Located<string>(vehicleId, new Location("--vehicle", 0, 0)), "vehicle", problems);
        var reader = new QuoteReader(new NearParts(catalog, shop), LineChoices.Read(options.As, options.Skip, catalog, problems), problems,
            shop);
        var items = source is null ? [] : reader.Read(source);
        if (source is null || vehicle is null || problems.HasErrors)
            return new ImportOutcome(null, problems.Sorted());
        var layout = new Layout(source.File, vehicle, items) { LeftOut = reader.LeftOut };
        var asked = AskedPlaces.Read(options.At, vehicle, items, problems);
        AskedPlaces.Put(layout, catalog, asked, problems);
        if (problems.HasErrors)
            return new ImportOutcome(null, problems.All);
        cancel.ThrowIfCancellationRequested();
        new DriverPlacing(layout, catalog, rules).Place(asked);
        cancel.ThrowIfCancellationRequested();
        new MountPlacing(layout, catalog, rules).Place(asked);
        new Chain(layout, catalog).Place();
        var text = BuildText.Of(layout, $"{vehicle.Name}, {Path.GetFileNameWithoutExtension(source.File)}");
        problems.AddRange(layout.Told.All);
        return new ImportOutcome(text, problems.Sorted()) { Open = reader.Open, OpenPlaces = layout.Open, Articles = shop?.Extended() };
    }
}
