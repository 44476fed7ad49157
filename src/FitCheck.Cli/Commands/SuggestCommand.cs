using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Reports.Format;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck suggest BUILD`</summary>
internal static class SuggestCommand
{
    public static Command Create()
    {
        var build = new Argument<string>("BUILD") { HelpName = "BUILD", Description = "The build to change" };
        var format = new Option<string>("--format", "-f")
        {
            Description = "How to tell the result",
            DefaultValueFactory = _ => "text",
            HelpName = string.Join('|', SuggestionReports.Formats)
        };
        format.AcceptOnlyFromAmong(SuggestionReports.Formats);
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Write to this file instead of standard output",
            HelpName = "FILE"
        };
        var failOn = new Option<string>("--fail-on")
        {
            Description = "Findings of this status and worse have to go",
            DefaultValueFactory = _ => "fail"
        };
        failOn.AcceptOnlyFromAmong("fail", "measure", "warn");
        var prefer = new Option<string>("--prefer")
        {
            Description = "Which of several answers is best",
            DefaultValueFactory = _ => "price"
        };
        prefer.AcceptOnlyFromAmong("price", "changes", "work", "margin");
        var keep = new Option<string[]>(
            "--keep")
        { Description = "A part, position, device or output that stays as it is; give it again for more", HelpName = "ID" };
        var stock = new Option<bool>("--in-stock") { Description = "Only parts that need not be ordered" };
        var write = new Option<string?>("--write", "-w")
        {
            Description = "Write the changed build to this file; an existing file is kept",
            HelpName = "FILE"
        };
        var force = new Option<bool>("--force") { Description = "Let --write replace an existing file" };
        var time = new Option<int>("--time")
        {
            Description = "Search for so many seconds at most",
            DefaultValueFactory = _ => 60,
            HelpName = "SECONDS"
        };
        var common = new CommonOptions();
        var command = new Command("suggest", "Find the changes from the catalog that make a build pass")
        {
            build, format, output, failOn, prefer, keep, stock, write, force, time, common.Catalog, common.Rules, common.NoColor,
        };
        command.SetAction(parsed =>
        {
            var file = parsed.GetValue(build)!;
            var wanted = new SuggestOptions
            {
                FailOn = StatusWords.Parse(parsed.GetValue(failOn)!)!.Value,
                Prefer = Enum.Parse<Preference>(parsed.GetValue(prefer)!, ignoreCase: true),
                Keep = parsed.GetValue(keep) ?? [],
                CurrentOnly = parsed.GetValue(stock),
                Time = TimeSpan.FromSeconds(Math.Max(1, parsed.GetValue(time))),
            };
            var (target, replaces, report, folders) =
                (parsed.GetValue(write), parsed.GetValue(force), parsed.GetValue(output), common.Folders(parsed));
            if (target is not null && (replaces ? OutputFile.Link(target) : OutputFile.Taken(target)) is { } taken)
                return Refusal.Input(File.Exists(target) && !AtomicFile.IsLink(target) ? taken + " (--force replaces it)" : taken).Tell();
            var files = new[] { ("--output", report), ("--write", target) }.Where(f => f.Item2 is not null).Select(f => (f.Item1, f.Item2!))
                .ToList();
            if (Overwriting.Of(files, [file], FilesRead.Of(folders), edited: target) is { } refusal)
                return refusal.Tell();
            var outcome = Once.Asked(folders, o => o.Suggest(file, wanted));
            if (outcome.Result is not { } result)
                return ProblemLines.Tell(outcome.Problems, Console.Error);
            var told = Told(result, SuggestionReports.Find(parsed.GetValue(format)!)!, report,
                CommonOptions.Color(parsed.GetValue(common.NoColor)));
            if (told is null && target is not null && result.Proposals.Count > 0)
                told = replaces ? OutputFile.Edited(target, result.Proposals[0].Yaml) : OutputFile.New(target, result.Proposals[0].Yaml);
            if (told is not null)
                return Refusal.Input(told).Tell();
            ProblemLines.Tell(outcome.Problems, Console.Error);
            return result.Passes ? ExitStatus.Good : ExitStatus.Found;
        });
        return command;
    }

    private static string? Told(Suggestion result, ISuggestionReport report, string? file, bool color)
    {
        if (file is null)
        {
            using var output = StandardStreams.ForReport();
            report.Write(result, ReportOptions.Default with { Color = color }, output);
            return null;
        }
        using var text = new StringWriter { NewLine = "\n" };
        report.Write(result, ReportOptions.Default, text);
        return OutputFile.Report(file, text.ToString());
    }
}
