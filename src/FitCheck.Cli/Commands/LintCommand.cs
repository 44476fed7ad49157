using System.CommandLine;
using FitCheck.Yaml;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck lint [PATH…]`</summary>
internal static class LintCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("PATH") { HelpName = "PATH", Description = "Build files, or folders with them [default: the builds of the catalog]", Arity = ArgumentArity.ZeroOrMore };
        var failOn = new Option<string>("--fail-on") { Description = "Exit with 1 on warnings too, when `warn`", DefaultValueFactory = _ => "fail" };
        failOn.AcceptOnlyFromAmong("fail", "warn");
        var common = new CommonOptions();
        var command = new Command("lint", "Validate catalog, rules and builds: schema, references, units, examples, plausibility")
        {
            paths, failOn, common.Catalog, common.Rules,
        };
        command.SetAction(parsed =>
        {
            IReadOnlyList<Problem> problems;
            int files;
            using (var line = new ProgressLine())
                (problems, files) = Lint.Run(parsed.GetValue(paths) ?? [], common.Folders(parsed), line.Tell);
            var status = ProblemLines.Tell(problems, Console.Out);
            var errors = problems.Count(p => p.Severity == Severity.Error);
            Console.Error.WriteLine($"{files} files read: {Counted(errors, "error")}, {Counted(problems.Count - errors, "warning")}");
            return status == ExitStatus.Good && problems.Count > 0 && parsed.GetValue(failOn) == "warn" ? ExitStatus.Found : status;
        });
        return command;
    }

    private static string Counted(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
