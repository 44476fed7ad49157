using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck suggest BUILD`</summary>
internal static class SuggestCommand
{
    public static Command Create()
    {
        var given = new SuggestArguments();
        var command = new Command("suggest", "Find the changes from the catalog that make a build pass")
        {
            given.Build, given.Format, given.Output, given.FailOn, given.Prefer, given.Keep, given.Stock, given.Write, given.Force,
            given.Time, given.Common.Catalog, given.Common.Rules, given.Common.Units, given.Common.NoColor,
        };
        given.Quote.AddTo(command);
        command.SetAction(parsed => given.Quote.Wrong(parsed) is { } wrong ? Refusal.Usage(wrong).Tell() : Run(given, parsed));
        return command;
    }

    private static int Run(SuggestArguments given, ParseResult parsed)
    {
        var file = parsed.GetValue(given.Build)!;
        var wanted = given.Wanted(parsed);
        var (target, replaces, report, folders) =
            (parsed.GetValue(given.Write), parsed.GetValue(given.Force), parsed.GetValue(given.Output), given.Common.Folders(parsed));
        if (target is not null && (replaces ? OutputFile.Link(target) : OutputFile.Taken(target)) is { } taken)
            return Refusal.Input(File.Exists(target) && !AtomicFile.IsLink(target) ? taken + " (--force replaces it)" : taken).Tell();
        var files = new[] { ("--output", report), ("--write", target) }.Where(f => f.Item2 is not null).Select(f => (f.Item1, f.Item2!))
            .ToList();
        if (Overwriting.Of(files, [file, .. given.Quote.Files(parsed)], FilesRead.Of(folders), edited: target) is { } refusal)
            return refusal.Tell();
        using var units = Lengths.Asked(given.Common.Told(parsed) is { } asked
            ? UnitsOfFormats.Of(parsed.GetValue(given.Format)!, asked) : null);
        var outcome = Once.Asked(folders, o => o.Suggest(file, wanted, given.Quote.Request(parsed)));
        if (outcome.Result is not { } result)
            return ProblemLines.Tell(outcome.Problems, Console.Error);
        var told = Told(result, SuggestionReports.Find(parsed.GetValue(given.Format)!)!, report,
            CommonOptions.Color(parsed.GetValue(given.Common.NoColor)));
        if (told is null && target is not null && result.Proposals.Count > 0)
            told = replaces ? OutputFile.Edited(target, result.Proposals[0].Yaml) : OutputFile.New(target, result.Proposals[0].Yaml);
        if (told is not null)
            return Refusal.Input(told).Tell();
        ProblemLines.Tell(outcome.Problems, Console.Error);
        return result.Passes ? ExitStatus.Good : ExitStatus.Found;
    }

    private static string? Told(Suggestion result, ISuggestionReport report, string? file, bool color)
    {
        if (file is null)
        {
            using var output = StandardStreams.ForReport(report.Format);
            report.Write(result, ReportOptions.Default with { Color = color, Columns = StandardStreams.Columns }, output);
            return null;
        }
        using var text = new StringWriter();
        using (var shown = StandardStreams.Report(text, report.Format))
            report.Write(result, ReportOptions.Default, shown);
        return OutputFile.Report(file, text.ToString());
    }
}
