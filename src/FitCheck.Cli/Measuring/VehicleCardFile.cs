using FitCheck.Catalog;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Measuring;
using FitCheck.Yaml;

namespace FitCheck.Cli.Measuring;

/// <summary>The card of a vehicle: one of the catalog, or one of which nothing is recorded yet.</summary>
internal static class VehicleCardFile
{
    /// <summary>Writes it; returns the exit status.</summary>
    public static int Write(string id, string card, Folders folders)
    {
        if (Overwriting.Of([("--card", card)], [], FilesRead.Of(folders)) is { } refusal)
            return refusal.Tell();
        if (id == MeasureArguments.New)
            return CardFile.Write(card, (options, output) => VehicleCard.Write(null, null, options, output)) ?? ExitStatus.Good;
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open(folders.Catalog, problems);
        if (catalog.Find(id) is not Vehicle vehicle)
        {
            var near = Nearest.Hint(id, catalog.IdsOf("vehicle"));
            return problems.HasErrors ? ProblemLines.Tell(problems.Sorted(), Console.Error) : Refusal.Input(
                $"no vehicle `{id}` in the catalog{near}; `{MeasureArguments.New}` is one of which nothing is recorded yet").Tell();
        }
        return CardFile.Write(card, (options, output) => VehicleCard.Write(vehicle, catalog.Written(id) as YamlMap, options, output))
            ?? ExitStatus.Good;
    }
}
