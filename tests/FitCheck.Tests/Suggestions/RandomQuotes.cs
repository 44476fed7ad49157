using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts.Fitting;
using FitCheck.Foundation;

namespace FitCheck.Tests.Suggestions;

/// <summary>Sellers' lists of one to six lines, made up from the whole catalog: the same seed gives the same list.</summary>
internal static class RandomQuotes
{
    private static readonly string[] Kinds = ["driver", "driver", "component-set", "adapter", "cup", "harness", "amplifier", "source-unit",
        "line-converter", "wiring", "sundry", "crossover"];

    /// <summary>Each vehicle in turn.</summary>
    public static string VehicleOf(int seed, PartsCatalog catalog) =>
        catalog.IdsOf("vehicle").Order(StringComparer.Ordinal).ToList() is var vehicles ? vehicles[seed % vehicles.Count] : "";

    /// <summary>The build that the list becomes in a vehicle; null when what is on it can't be put where the dice say.</summary>
    public static string? Build(int seed, string vehicleId, PartsCatalog catalog, Folders folders, TemporaryFolder folder)
    {
        var dice = new Random(seed);
        var vehicle = (Vehicle)catalog.Find(vehicleId)!;
        var lines = new List<string>();
        var places = new List<string>();
        var free = vehicle.Positions.GroupBy(p => (p.Role, p.Place, p.Id.Split('-')[0])).OrderBy(_ => dice.Next()).ToList();
        for (var count = dice.Next(1, 7); count > 0; count--)
        {
            // The first line is heard.
            var kind = lines.Count == 0 ? Kinds[dice.Next(3)] : Kinds[dice.Next(Kinds.Length)];
            var ids = catalog.IdsOf(kind).Order(StringComparer.Ordinal).ToList();
            var part = (Part)catalog.Find(ids[dice.Next(ids.Count)])!;
            if (lines.Exists(l => l.StartsWith(part.Id + ",", StringComparison.Ordinal)))
                continue;
            if (part is Driver driver && free.Find(g => PlaceFacts.Suits(driver.Type, g.Key.Role)) is { } own)
                Put(part, [own]);
            else if (part is ComponentSet && free.Find(g => g.Key.Role == "woofer") is { } woofers
                && free.Find(g => g.Key.Role == "tweeter") is { } tweeters)
                Put(part, [woofers, tweeters]);
            else if (part is Driver or ComponentSet)
                continue;
            lines.Add($"{part.Id},{dice.Next(1, 3)}");
        }
        if (lines.Count == 0)
            return null;
        var quote = folder.Write("quote.csv", string.Join('\n', lines) + "\n");
        return new Once(folders, ValidationCache.In(folder.Path)).Import(BuildSource.File(quote),
            new QuoteRequest(vehicleId, new ImportOptions { At = places })).Build;

        void Put(Part part, IReadOnlyList<IGrouping<(string, string, string), Position>> groups)
        {
            places.Add($"{part.Id}={string.Join(',', groups.SelectMany(g => g).Select(p => p.Id))}");
            free.RemoveAll(groups.Contains);
        }
    }
}
