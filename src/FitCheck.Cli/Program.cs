using System.CommandLine;
using System.CommandLine.Parsing;
using FitCheck.Cli.Commands;
using FitCheck.Cli.Measuring;
using FitCheck.Cli.Output;
using FitCheck.Cli.Programs;
using FitCheck.Foundation;

namespace FitCheck.Cli;

/// <summary>Takes the command line apart and turns whatever happens into an exit status.</summary>
internal static class Program
{
    public static int Main(string[] args)
    {
        StandardStreams.Open();
        try
        {
            return Run(args);
        }
        catch (OutputLostException e)
        {
            return Refusal.Input($"standard output can't be written: {e.Message}").Tell();
        }
        catch (Exception e)
        {
            var place = e.StackTrace?.Split('\n') is [var first, ..] ? first.Trim() : "an unknown place";
            Console.Error.WriteLine(
                $"fitcheck: a defect of FitCheck, not of your input: {e.GetType().Name} {place}. Please report this line with the "
                    + $"command that you ran.");
            return ExitStatus.Defect;
        }
    }

    /// <summary>Does what a command line asks for, on the streams that are open. Returns the exit status.</summary>
    internal static int Run(string[] args)
    {
        if (QuickProgram.IsThis)
            return Quick(args);
        if (CheckRequest.Plain(args) is { } request)
            return CheckCommand.Run(request);
        var parsed = Parsed(Root(), args);
        var wrong = WrongWords.Command(parsed) is { } command ? [command]
            : parsed.Errors.Select(e => e.Message).Concat(WrongWords.In(parsed)).ToList();
        if (wrong.Count == 0)
        {
            var status = Done(parsed);
            if (parsed.Action is System.CommandLine.Help.HelpAction)
                Examples.Tell(string.Join(' ', Path(parsed.CommandResult)), Console.Out);
            return status;
        }
        foreach (var message in wrong)
            Console.Error.WriteLine("fitcheck: " + message);
        Console.Error.WriteLine($"Try `fitcheck {string.Concat(Path(parsed.CommandResult).Select(word => word + " "))}--help`.");
        return ExitStatus.BadUsage;
    }

    private static int Quick(string[] args)
    {
        try
        {
            if (CheckRequest.Plain(args) is { } request)
                return CheckCommand.Run(request);
            if (LintCommand.Plain(args) is { } folders)
                return LintCommand.Run(folders);
            if (args is ["page", ..] && PageProgram.IsThere && Page(args) is { } status)
                return status;
        }
        catch (HandOverException)
        {
            // Something in it is not for the quick program.
        }
        return WholeProgram.Run(args);
    }

    // Null where something is wrong with the words, or help is asked for: the whole program tells it.
    private static int? Page(string[] args)
    {
        var parsed = Parsed(new RootCommand { PageCommand.Create() }, args);
        return parsed.Errors.Count > 0 || parsed.Action is System.CommandLine.Help.HelpAction || WrongWords.In(parsed).Count > 0 ? null
            : Done(parsed);
    }

    // A file whose name begins with `@` is a file: strangers name those of a change, and what stands in one must not become options.
    private static ParseResult Parsed(RootCommand root, string[] args) =>
        root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });

    private static int Done(ParseResult parsed) => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });

    // The words that lead to a command: `new part`.
    private static IEnumerable<string> Path(CommandResult command) =>
        command.Command is RootCommand ? [] : [.. command.Parent is CommandResult above ? Path(above) : [], command.Command.Name];

    public static RootCommand Root() => new(
        "FitCheck tells, before anything is bought or cut, whether drivers, spacers, plugs, crossovers and amplifiers go together in a "
            + "vehicle.\n\n"
        + "  fitcheck check build.yaml                                      answers in the terminal\n"
        + "  fitcheck check build.yaml --format html --output report.html   the same as a page to print\n"
        + "  fitcheck explain mount/too-deep                                what a rule asks, and why\n\n"
        + "Exit status: 0 nothing at or above --fail-on, 1 something is, 2 an input is invalid or an output can't be written, 3 wrong "
        + "usage, 70 a defect of FitCheck.")
    {
        CheckCommand.Create(),
        SuggestCommand.Create(),
        MeasureCommand.Create(),
        LintCommand.Create(),
        ChartCommand.Create(),
        ImpactCommand.Create(),
        ListCommand.Create(),
        FindCommand.Create(),
        ExplainCommand.Create(),
        NewCommand.Create(),
        PageCommand.Create(),
        SchemaCommand.Create(),
        CompletionCommand.Create(),
    };
}
