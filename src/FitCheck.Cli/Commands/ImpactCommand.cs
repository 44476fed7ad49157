using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Cli.Revisions;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Reports.Format;
using FitCheck.Reports.Impacts;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck impact --from OLD [--to NEW]`</summary>
internal static class ImpactCommand
{
    public static Command Create()
    {
        var from = new Option<string>("--from")
        {
            HelpName = "OLD",
            Description =
                "A folder with catalog/ and rules/ in it, or a git revision such as main; ./NAME is always a folder, refs/heads/NAME or "
                    + "a commit's whole id always a revision",
            Required = true
        };
        var to = new Option<string>("--to") { HelpName = "NEW", Description = "The same for the later state [default: the working tree]" };
        var accept = new Option<string[]>("--accept")
        {
            HelpName = "BUILD|all",
            Description = "A build that may get worse; may be given again"
        };
        var targets = new TargetOptions(ImpactReports.Formats);
        var common = new CommonOptions();
        var command = new Command("impact", "Tell what a change of catalog or rules does to every build and to the chart")
        {
            from, to, accept, targets.Formats, targets.Outputs, common.Verbose, common.NoColor,
        };
        command.SetAction(parsed =>
        {
            var (pairs, wrong) = targets.Pair(parsed);
            if (pairs is null)
                return Refusal.Usage(wrong!).Tell();
            using var sides = new ComparedStates();
            var (earlier, error) = sides.Find("--from", parsed.GetValue(from)!);
            var (later, otherError) = parsed.GetValue(to) is { } named ? sides.Find("--to", named) : ComparedStates.WorkingTree();
            if (earlier is null || later is null)
                return NoSide(error, otherError);
            if (pairs.Refused([],
                FilesRead.Of(earlier.Folders, builds: true).Concat(FilesRead.Of(later.Folders, builds: true))) is { } refusal)
                return refusal.Tell();
            ImpactOutcome outcome;
            using (var line = new ProgressLine())
                outcome = Impact.Run(earlier, later, [.. (parsed.GetValue(accept) ?? []).Select(BuildId)],
                    ValidationCache.InUserFolder(), line.Report);
            if (outcome.Result is not { } result)
                return ProblemLines.Tell(outcome.Problems, Console.Error);
            var options = ReportOptions.Default with
            {
                Verbose = parsed.GetValue(common.Verbose),
                Color = CommonOptions.Color(parsed.GetValue(common.NoColor)),
                Root = Environment.CurrentDirectory
            };
            return TargetOptions.Write(pairs, options, (format, told, output) => ImpactReports.Find(format)!.Write(result, told, output))
                ?? (result.Refused.Any() ? ExitStatus.Found : ExitStatus.Good);
        });
        return command;
    }

    // A build is named as it is told, or by its file: `catalog/builds/summer/mine.yaml` is `summer/mine`.
    private static string BuildId(string word)
    {
        var path = word.Replace('\\', '/');
        path = path.EndsWith(".yaml", StringComparison.Ordinal) ? path[..^".yaml".Length] : path;
        return path.StartsWith("builds/", StringComparison.Ordinal) ? path["builds/".Length..]
            : path.IndexOf("/builds/", StringComparison.Ordinal) is >= 0 and var at ? path[(at + "/builds/".Length)..] : path;
    }

    private static int NoSide(params string?[] errors)
    {
        foreach (var error in errors.OfType<string>())
            Refusal.Input(error).Tell();
        return ExitStatus.BadInput;
    }
}
