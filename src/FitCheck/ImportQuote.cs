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
    /// <summary>Reads the list and places what is on it, once: opens, imports and forgets. Who asks more than once keeps a <see cref="Checker"/> open.</summary>
    /// <param name="file">A CSV file.</param>
    /// <param name="vehicleId">The vehicle, by its id.</param>
    /// <param name="at">Places that the caller knows: `ID=POSITION,POSITION`.</param>
    /// <param name="folders">Catalog and rules.</param>
    /// <param name="cache">What was found valid before.</param>
    /// <param name="progress">Told what is being done.</param>
    public static ImportOutcome Run(string file, string vehicleId, IReadOnlyList<string> at, Folders folders, ValidationCache cache, Action<string>? progress = null)
    {
        var told = Telling.By(progress);
        var opened = Checker.Open(CheckerOptions.Of(folders, cache, told));
        if (opened.Checker is not { } checker)
            return new ImportOutcome(null, opened.Problems);
        var outcome = checker.Import(BuildSource.File(file), vehicleId, new ImportOptions { At = at, Progress = told });
        return outcome with { Problems = opened.With(outcome.Problems) };
    }

    /// <summary>The build that a list becomes, by a catalog and rules that are known to be valid; a list that could not be read is null, and told already.</summary>
    internal static ImportOutcome Of(SourceText? source, string vehicleId, IReadOnlyList<string> at, PartsCatalog catalog, RuleSet rules, ProblemList problems, CancellationToken cancel = default)
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
