using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Fixes;
using FitCheck.Foundation;
using FitCheck.Reports;
using FitCheck.Reports.Format;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck lint [PATH…]`</summary>
internal static class LintCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("PATH")
        {
            HelpName = "PATH",
            Description = "Build files, or folders with them [default: the builds of the catalog]",
            Arity = ArgumentArity.ZeroOrMore
        };
        var targets = new TargetOptions(ReportList.LintFormats);
        var failOn = new Option<string>("--fail-on")
        {
            Description = "Exit with 1 on warnings too, when `warn`",
            DefaultValueFactory = _ => "fail"
        };
        failOn.AcceptOnlyFromAmong("fail", "warn");
        var fix = new Option<bool>(
            "--fix")
        {
            Description =
                "Put right what has one safe answer: unit spelling, order of keys, spaces at line ends, a missing last line end"
        };
        var common = new CommonOptions();
        var command = new Command("lint", "Validate catalog, rules and builds: schema, references, units, examples, plausibility")
        {
            paths, targets.Formats, targets.Outputs, failOn, fix, common.Catalog, common.Rules,
            common.NoColor,
        };
        command.SetAction(parsed =>
        {
            var (pairs, error) = targets.Pair(parsed);
            if (pairs is null)
                return Refusal.Usage(error!).Tell();
            var (files, folders) = (parsed.GetValue(paths) ?? [], common.Folders(parsed));
            if (pairs.Refused(FilesRead.Named(files), FilesRead.Of(folders, builds: files.Length == 0)) is { } refusal)
                return refusal.Tell();
            return parsed.GetValue(fix) && !Fixed(files, folders)
                ? ExitStatus.BadInput
                : Run(files, folders, pairs, StatusWords.Parse(parsed.GetValue(failOn)!)!.Value);
        });
        return command;
    }

    /// <summary>The folders of a command line that names nothing else, which the quick program may try; null for any other.</summary>
    public static Folders? Plain(string[] args)
    {
        if (args.Length == 0 || args[0] != "lint" || args.Length % 2 == 0)
            return null;
        List<string> catalog = [], rules = [];
        for (var i = 1; i < args.Length; i += 2)
        {
            if (args[i] is not ("--catalog" or "--rules") || args[i + 1].Length == 0 || args[i + 1][0] == '-')
                return null;
            (args[i] == "--catalog" ? catalog : rules).Add(args[i + 1]);
        }
        return CommonOptions.Folders(catalog, rules);
    }

    /// <summary>Lints and tells as text.</summary>
    public static int Run(Folders folders) => Run([], folders, OutputTargets.Pair([], [], ["text"]).Targets!, Status.Fail);

    private static int Run(IReadOnlyList<string> paths, Folders folders, OutputTargets targets, Status failOn)
    {
        LintResult result;
        using (var line = new ProgressLine())
            result = Lint.Run(paths, folders, ValidationCache.InUserFolder(), line.Report);
        var options = ReportOptions.Default with { FailOn = failOn, Root = Environment.CurrentDirectory };
        if (targets.Write(options, (format, told, output) => ReportList.FindForLint(format)!.Write(result, told, output)) is { } failed)
            return failed;
        Console.Error.WriteLine($"{result.Files} files read: {Counted(result.Errors, "error")}, {Counted(result.Warnings, "warning")}");
        return result.Errors > 0 ? ExitStatus.BadInput : result.Warnings > 0 && failOn == Status.Warn ? ExitStatus.Found : ExitStatus.Good;
    }

    // What was put right goes to standard error: what is still wrong is the data.
    private static bool Fixed(IReadOnlyList<string> paths, Folders folders)
    {
        var found = MendFiles.Of(paths, folders).ToList();
        // Nothing is put right when something can't be.
        var links = found.Select(f => OutputFile.Link(f.Path)).OfType<string>().ToList();
        if (links.Count > 0)
        {
            links.ForEach(l => Refusal.Input(l).Tell());
            return false;
        }
        var (edits, files) = (0, 0);
        foreach (var (path, mended) in found)
        {
            if (OutputFile.Edited(path, mended.Bytes) is { } refused)
            {
                Refusal.Input(refused).Tell();
                return false;
            }
            foreach (var edit in mended.Edits)
                Console.Error.WriteLine($"{edit.At}: fixed: {edit.What}");
            (edits, files) = (edits + mended.Edits.Count, files + 1);
        }
        Console.Error.WriteLine(files == 0 ? "nothing to fix" : $"{Counted(edits, "place")} put right in {Counted(files, "file")}");
        return true;
    }

    private static string Counted(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
