using System.CommandLine;
using FitCheck.Findings;
using FitCheck.Reports;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck lint [PATH…]`</summary>
internal static class LintCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("PATH") { HelpName = "PATH", Description = "Build files, or folders with them [default: the builds of the catalog]", Arity = ArgumentArity.ZeroOrMore };
        var (formats, outputs) = (CommonOptions.Formats(ReportList.LintFormats), CommonOptions.Outputs());
        var failOn = new Option<string>("--fail-on") { Description = "Exit with 1 on warnings too, when `warn`", DefaultValueFactory = _ => "fail" };
        failOn.AcceptOnlyFromAmong("fail", "warn");
        var common = new CommonOptions();
        var command = new Command("lint", "Validate catalog, rules and builds: schema, references, units, examples, plausibility")
        {
            paths, formats, outputs, failOn, common.Catalog, common.Rules,
        };
        command.SetAction(parsed =>
        {
            var (targets, error) = OutputTargets.Pair(parsed.GetValue(formats) ?? [], parsed.GetValue(outputs) ?? []);
            if (targets is null)
            {
                Console.Error.WriteLine($"fitcheck: {error}");
                return ExitStatus.BadUsage;
            }
            return Run(parsed.GetValue(paths) ?? [], common.Folders(parsed), targets, StatusWords.Parse(parsed.GetValue(failOn)!)!.Value);
        });
        return command;
    }

    private static int Run(IReadOnlyList<string> paths, Folders folders, OutputTargets targets, Status failOn)
    {
        LintResult result;
        using (var line = new ProgressLine())
            result = Lint.Run(paths, folders, line.Tell);
        if (targets.Write(result, ReportOptions.Default with { FailOn = failOn, Root = Environment.CurrentDirectory }) is { } failed)
        {
            Console.Error.WriteLine("fitcheck: " + failed);
            return ExitStatus.BadInput;
        }
        Console.Error.WriteLine($"{result.Files} files read: {Counted(result.Errors, "error")}, {Counted(result.Warnings, "warning")}");
        return result.Errors > 0 ? ExitStatus.BadInput : result.Warnings > 0 && failOn == Status.Warn ? ExitStatus.Found : ExitStatus.Good;
    }

    private static string Counted(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
