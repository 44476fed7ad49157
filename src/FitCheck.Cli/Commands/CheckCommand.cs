using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Physics.Quantities;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Reports.Sheet;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck check BUILD…`</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var builds = new Argument<string[]>("BUILD")
        {
            HelpName = "BUILD",
            Description = "Build files to check; with --vehicle, sellers' lists",
            Arity = ArgumentArity.OneOrMore
        };
        builds.CompletionSources.Add(context => Files(context.WordToComplete));
        var targets = new TargetOptions(ReportList.Formats);
        var failOn = new Option<string>("--fail-on")
        {
            Description = "Exit with 1 when a finding has this status or a worse one",
            DefaultValueFactory = _ => "fail"
        };
        failOn.AcceptOnlyFromAmong("fail", "measure", "warn");
        var sheet = new Option<string?>("--sheet")
        {
            Description = "Write the installation sheet, an HTML page to print, to this file",
            HelpName = "FILE"
        };
        var asExpected = new Option<bool>("--as-expected")
        {
            Description =
                "For builds with `expect`: exit with 0 when they give exactly that, with 1 when they give anything else; "
                    + "markdown, junit and github tell only what is not as meant"
        };
        var quote = new QuoteOptions("The files are sellers' lists for this vehicle");
        var common = new CommonOptions();
        var command = new Command("check", "Check builds against catalog and rules, and write the report")
        {
            builds, targets.Formats, targets.Outputs, sheet, common.For, failOn, asExpected, common.Catalog, common.Rules,
            common.Verbose, common.Units, common.NoColor,
        };
        quote.AddTo(command);
        command.SetAction(parsed => quote.Wrong(parsed) is { } wrong ? Refusal.Usage(wrong).Tell() : Run(new CheckRequest
        {
            Quote = quote.Request(parsed),
            Builds = parsed.GetValue(builds)!,
            Formats = parsed.GetValue(targets.Formats) ?? [],
            Outputs = parsed.GetValue(targets.Outputs) ?? [],
            Catalog = parsed.GetValue(common.Catalog) ?? [],
            Rules = parsed.GetValue(common.Rules) ?? [],
            Sheet = parsed.GetValue(sheet),
            For = parsed.GetValue(common.For),
            FailOn = parsed.GetValue(failOn)!,
            AsExpected = parsed.GetValue(asExpected),
            Units = parsed.GetValue(common.Units),
            Verbose = parsed.GetValue(common.Verbose),
            NoColor = parsed.GetValue(common.NoColor),
        }));
        return command;
    }

    public static int Run(CheckRequest request)
    {
        var (targets, error) = OutputTargets.Pair(request.Formats, request.Outputs, ReportList.Formats);
        if (targets is null)
            return Refusal.Usage(error!).Tell();
        if (CommonOptions.Unheeded(request.For, targets) is { } unheeded)
            return Refusal.Usage(unheeded).Tell();
        if (request.Sheet is { } file)
            targets.Add("sheet", file);
        var folders = CommonOptions.Folders(request.Catalog, request.Rules);
        if (targets.Refused([.. request.Builds, .. request.Quote?.Articles is { } articles ? [articles] : Array.Empty<string>()],
            FilesRead.Of(folders)) is { } refusal)
            return refusal.Tell();
        if (QuickProgram.IsThis && !targets.NeedOnly("text", "json"))
            throw new HandOverException();
        using var told = Lengths.Asked(UnitsOfFormats.Parse(request.Units));
        var outcome = Once.Asked(folders, o => o.Check(request.Builds, request.Quote));
        if (outcome.Result is not { } result)
            return ProblemLines.Tell(outcome.Problems, Console.Error);
        var options = ReportOptions.Default with
        {
            Verbose = request.Verbose,
            Color = CommonOptions.Color(request.NoColor),
            FailOn = StatusWords.Parse(request.FailOn)!.Value,
            Root = Environment.CurrentDirectory,
            AsExpected = request.AsExpected,
            Customer = CommonOptions.Customer(request.For),
        };
        using var line = new ProgressLine();
        if (result.Builds is ResultsInTurn turn && !targets.AreOnTerminal)
            turn.Progress = line;
        if (targets.Write(options, (format, o, output) => Tell(format, In(format, result), o, output)) is { } failed)
            return failed;
        line.Clear();
        ProblemLines.Tell(outcome.Problems, Console.Error);
        foreach (var remarks in result.Remarks)
            ProblemLines.Tell(remarks, Console.Error);
        if (!request.AsExpected)
            return Exit(result.Verdict, result.Remarks.Any(r => r.Count > 0), options.FailOn);
        var (areMeant, worst, remarked) = (true, Status.Pass, false);
        foreach (var build in result.Builds)
        {
            line.Clear();
            if (build.Expected is not null)
                areMeant &= AsExpected(build, result);
            else
                (worst, remarked) = (StatusWords.WorseOf(worst, build.Verdict), remarked || build.Remarks.Count > 0);
        }
        return areMeant ? Exit(worst, remarked, options.FailOn) : ExitStatus.Found;

        // What was judged tells its lengths in one way; for a format that has another one it is judged again.
        CheckResult In(string format, CheckResult judged)
        {
            if ((judged.Builds is ResultsInTurn many ? many.Units : judged.Builds.Select(b => b.Lengths))
                .All(u => u == UnitsOfFormats.Of(format, u)))
                return judged;
            using var other = Lengths.Asked(UnitsOfFormats.Of(format, LengthUnits.Inch));
            return Once.Asked(folders, o => o.Check(request.Builds, request.Quote)).Result ?? judged;
        }
    }

    // Beside the report, which stays what it is.
    private static bool AsExpected(BuildResult build, CheckResult result)
    {
        var unmet = Expectations.Unmet(build, [.. result.Rules.Select(r => r.Id)]);
        if (unmet.Count > 0)
            ProblemLines.Tell(unmet, Console.Error);
        else
            Console.Error.WriteLine(PlainText.Line($"{build.Expected!.Verdict.At}: as expected: {build.Verdict.Word()}"));
        return unmet.Count == 0;
    }

    private static void Tell(string format, CheckResult result, ReportOptions options, TextWriter output)
    {
        using var units = Lengths.Asked(UnitsOfFormats.Of(format, Lengths.Told));
        if (format == "sheet")
            SheetReport.Write(result, options, output);
        else
            ReportList.Find(format)!.Write(result, options, output);
    }

    private static int Exit(Status worst, bool areRemarks, Status failOn)
    {
        if (worst < Status.Warn && areRemarks)
            worst = Status.Warn;
        return worst >= failOn ? ExitStatus.Found : ExitStatus.Good;
    }

    private static IEnumerable<System.CommandLine.Completions.CompletionItem> Files(string word)
    {
        var folder = Path.GetDirectoryName(word) is { Length: > 0 } given ? given : ".";
        return !Directory.Exists(folder) ? [] : Directory.GetFileSystemEntries(folder)
            .Select(p => folder == "." ? Path.GetFileName(p) : p)
            .Where(p => Directory.Exists(p) || p.EndsWith(".yaml", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(p => new System.CommandLine.Completions.CompletionItem(p));
    }
}
