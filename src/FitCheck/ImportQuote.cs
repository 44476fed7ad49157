using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Rules;

namespace FitCheck;

/// <summary>The build that a seller's list became, as text, and what is to be told of it; or the reasons why there is none.</summary>
public sealed record ImportOutcome(string? Build, IReadOnlyList<Problem> Problems);

/// <summary>Turns a seller's list into a build for one vehicle.</summary>
internal static class ImportQuote
{
    /// <summary>
    /// The build that a list becomes, by a catalog and rules that are known to be valid; a list that could not be read is null, and told
    /// already.
    /// </summary>
    internal static ImportOutcome Of(SourceText? source, string vehicleId, IReadOnlyList<string> at, PartsCatalog catalog, RuleSet rules,
        ProblemList problems, CancellationToken cancel = default)
    {
        var vehicle = catalog.Resolve<Vehicle>(new Located<string>(vehicleId, new Location("--vehicle", 0, 0)), "vehicle", problems);
        var items = source is null ? [] : new QuoteReader(new NearParts(catalog), problems).Read(source);
        if (source is null || vehicle is null || problems.HasErrors)
            return new ImportOutcome(null, problems.Sorted());
        var layout = new Layout(source.File, vehicle, items);
        var asked = AskedPlaces.Read(at, vehicle, items, problems);
        AskedPlaces.Put(layout, catalog, asked, problems);
        if (problems.HasErrors)
            return new ImportOutcome(null, problems.All);
        cancel.ThrowIfCancellationRequested();
        new DriverPlacing(layout, catalog, rules).Place(asked);
        cancel.ThrowIfCancellationRequested();
        new MountPlacing(layout, catalog, rules).Place(asked);
        new Chain(layout, catalog).Place();
        var text = BuildText.Of(layout, $"{vehicle.Name}, {Path.GetFileNameWithoutExtension(source.File)}");
        return new ImportOutcome(text, layout.Told.All);
    }
}
