using System.CommandLine;
using FitCheck.Charts;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck chart`</summary>
internal static class ChartCommand
{
    public static Command Create()
    {
        var vehicle = Words("--vehicle", "ID", "Only this vehicle; may be given again");
        var position = Words("--position", "ID", "Only this position, such as front-door-left; may be given again");
        var driver = Words("--driver", "ID", "Only this driver; may be given again");
        var size = Words("--size", "SIZE", "Only drivers of this size, such as \"165 mm\"; may be given again");
        var status = Words("--status", string.Join('|', StatusWords.All), "Only pairs of this status; may be given again");
        status.AcceptOnlyFromAmong([.. StatusWords.All]);
        var accepts = Words("--accepts", string.Join('|', [.. ChartSlice.Work, "none"]),
            "Work that is accepted; may be given again [default: all of it]");
        accepts.AcceptOnlyFromAmong([.. ChartSlice.Work, "none"]);
        var anyType = new Option<bool>(
            "--any-type")
        {
            Description =
                "Also drivers of a type that does not belong at the position, such as a tweeter in a woofer's place"
        };
        var targets = new TargetOptions(ChartReports.Formats);
        var common = new CommonOptions();
        var command = new Command("chart",
            "Chart which drivers and sets fit which positions, with the spacer or cup and the work that it takes")
        {
            vehicle, position, driver, size, status, accepts, anyType, targets.Formats, targets.Outputs, common.Catalog, common.Rules,
            common.Verbose, common.Units, common.NoColor,
        };
        vehicle.CompletionSources.Add(_ => Ids("vehicle"));
        driver.CompletionSources.Add(_ => Ids("driver"));
        command.SetAction(parsed =>
        {
            var (pairs, error) = targets.Pair(parsed);
            if (pairs is null)
                return Refusal.Usage(error!).Tell();
            var folders = common.Folders(parsed);
            if (pairs.Refused([], FilesRead.Of(folders)) is { } refusal)
                return refusal.Tell();
            var slice = new ChartSlice
            {
                Vehicles = parsed.GetValue(vehicle) ?? [],
                Positions = parsed.GetValue(position) ?? [],
                Drivers = parsed.GetValue(driver) ?? [],
                Sizes = parsed.GetValue(size) ?? [],
                Statuses = Asked(parsed.GetValue(status) ?? [], onlyText: pairs.NeedOnly("text")),
                AnyType = parsed.GetValue(anyType),
                Accepts = parsed.GetValue(accepts) is { Length: > 0 } work ? [.. work.Where(w => w != "none")] : null,
            };
            using var told = Lengths.Asked(common.Told(parsed));
            var outcome = Once.Asked(folders, o => o.Chart(slice));
            if (outcome.Result is not { } result)
                return ProblemLines.Tell(outcome.Problems, Console.Error);
            var options = ReportOptions.Default with
            {
                Verbose = parsed.GetValue(common.Verbose),
                Color = CommonOptions.Color(parsed.GetValue(common.NoColor))
            };
            return TargetOptions.Write(pairs, options, (format, o, output) => Tell(format, result, folders, slice, o, output))
                ?? ExitStatus.Good;
        });
        return command;
    }

    // Its sentences have lengths too.
    private static void Tell(string format, ChartResult result, Folders folders, ChartSlice slice, ReportOptions options, TextWriter output)
    {
        using var ofFormat = Lengths.Asked(UnitsOfFormats.Of(format, Lengths.Told));
        var inUnits = ofFormat.IsChange ? Once.Asked(folders, again => again.Chart(slice)).Result ?? result : result;
        ChartReports.Find(format)!.Write(inUnits, options, output);
    }

    // What does not fit fills most of a chart: a person at a terminal asks for it, a program and a page get it.
    private static IReadOnlyList<Status> Asked(string[] words, bool onlyText) =>
        words.Length > 0 ? [.. words.Select(s => StatusWords.Parse(s)!.Value)]
        : onlyText ? [Status.Pass, Status.Warn, Status.Measure] : [];

    private static Option<string[]> Words(string name, string help, string description) =>
        new(name) { HelpName = help, Description = description };

    private static IEnumerable<System.CommandLine.Completions.CompletionItem> Ids(string kind) =>
        Catalog.PartsCatalog.Open(Folders.BesideProgram.Catalog, new ProblemList()).IdsOf(kind)
            .Select(id => new System.CommandLine.Completions.CompletionItem(id));
}
