using FitCheck.Catalog;
using FitCheck.QuoteImport;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>The build that a seller's list became, as text, and what is to be told of it; or the reasons why there is none.</summary>
public sealed record ImportOutcome(string? Build, IReadOnlyList<Problem> Problems);

/// <summary>Turns a seller's list into a build for one vehicle.</summary>
public static class ImportQuote
{
    /// <summary>Reads the list and places what is on it. Bad input comes back as problems, never as an exception.</summary>
    /// <param name="file">A CSV file.</param>
    /// <param name="vehicleId">The vehicle, by its id.</param>
    /// <param name="at">Places that the caller knows: `ID=POSITION,POSITION`.</param>
    /// <param name="folders">Catalog and rules.</param>
    /// <param name="remembered">What was found valid before.</param>
    /// <param name="progress">Told what is being done.</param>
    public static ImportOutcome Run(string file, string vehicleId, IReadOnlyList<string> at, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (Workshop.Open(folders, remembered, problems, progress) is not { } workshop)
            return new ImportOutcome(null, problems.Sorted());
        var vehicle = workshop.Catalog.Resolve<Vehicle>(new Located<string>(vehicleId, new Location("--vehicle", 0, 0)), "vehicle", problems);
        var items = BuildFiles.Source(file, "the seller's list", problems) is { } source ? new QuoteReader(new NearParts(workshop.Catalog), problems).Read(source) : [];
        if (vehicle is null || problems.HasErrors)
            return new ImportOutcome(null, problems.Sorted());
        var layout = new Layout(file.Replace('\\', '/'), vehicle, items);
        var asked = AskedPlaces.Read(at, vehicle, items, problems);
        AskedPlaces.Put(layout, workshop.Catalog, asked, problems);
        if (problems.HasErrors)
            return new ImportOutcome(null, problems.All);
        new DriverPlacing(layout, workshop.Catalog, workshop.Rules).Place(asked);
        new MountPlacing(layout, workshop.Catalog, workshop.Rules).Place(asked);
        new Chain(layout, workshop.Catalog).Place();
        var text = BuildText.Of(layout, $"{vehicle.Name}, {Path.GetFileNameWithoutExtension(file)}");
        return new ImportOutcome(text, layout.Told.All);
    }
}
