using System.CommandLine;
using System.Text;
using FitCheck.Cli.Commands;

namespace FitCheck.Cli;

/// <summary>Takes the command line apart and turns whatever happens into an exit status.</summary>
internal static class Program
{
    public static int Main(string[] args)
    {
        // The report has ohm, degree and minus signs; a pipe gets UTF-8 without a mark.
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        try
        {
            return Run(args);
        }
        catch (Exception e)
        {
            var place = e.StackTrace?.Split('\n') is [var first, ..] ? first.Trim() : "an unknown place";
            Console.Error.WriteLine($"fitcheck: a defect of FitCheck, not of your input: {e.GetType().Name} {place}. Please report this line with the command that you ran.");
            return ExitStatus.Defect;
        }
    }

    private static int Run(string[] args)
    {
        if (QuickProgram.IsThis)
            return Quick(args);
        if (CheckRequest.Plain(args) is { } request)
            return CheckCommand.Run(request);
        // A file whose name begins with `@` is a file: strangers name those of a change, and what stands in one must not become options.
        var parsed = Root().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count == 0)
            return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        foreach (var error in parsed.Errors)
            Console.Error.WriteLine("fitcheck: " + error.Message);
        Console.Error.WriteLine($"Try `fitcheck {(parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ")}--help`.");
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
        }
        catch (HandOverException)
        {
            // Something in it is not for the quick program.
        }
        return WholeProgram.Run(args);
    }

    private static RootCommand Root() => new(
        "FitCheck tells before anything is bought or cut whether drivers, spacers, plugs, crossovers and amplifiers go together in a vehicle.\n\n"
        + "  fitcheck check build.yaml                                      answers in the terminal\n"
        + "  fitcheck check build.yaml --format html --output report.html   the same as a page to print\n"
        + "  fitcheck explain mount/too-deep                                what a rule asks, and why\n\n"
        + "Exit status: 0 nothing at or above --fail-on, 1 something is, 2 an input is invalid, 3 wrong usage, 70 a defect of FitCheck.")
    {
        CheckCommand.Create(),
        SuggestCommand.Create(),
        LintCommand.Create(),
        ChartCommand.Create(),
        ImpactCommand.Create(),
        ListCommand.Create(),
        ExplainCommand.Create(),
        NewCommand.Create(),
        SchemaCommand.Create(),
        CompletionCommand.Create(),
    };
}
