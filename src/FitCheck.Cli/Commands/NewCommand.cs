using System.CommandLine;
using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.Cli.NewParts;
using FitCheck.Cli.Output;
using FitCheck.Foundation.Files;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck new build` and `fitcheck new part KIND`</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        var output = new Option<string?>("--output",
            "-o")
        { Description = "Write to this file instead of standard output; an existing file is kept", HelpName = "FILE" };
        var build = new Command("build",
            "A build that validates: made from a seller's list, asked for on a terminal, else a commented starting file") { output };
        var quote = new NewFromQuote(build);
        build.SetAction(parsed => quote.IsAsked(parsed) ? quote.Run(parsed, text => Save(text, parsed.GetValue(output)))
            : TerminalQuestions.CanAsk
            ? NewBuild.Run(new TerminalQuestions(), parsed.GetValue(output), quote.Vehicle(parsed), quote.Folders(parsed),
            quote.Named(parsed))
            : quote.Vehicle(parsed) is { } vehicle
            ? Refusal.Usage($"there is no terminal to ask on: `--vehicle {vehicle}` needs `--from LIST` here; without both a starting file "
                + "is written").Tell()
            : Save(Starter("build"), parsed.GetValue(output)));
        var kinds = Kinds.All.Select(k => k.Kind).ToArray();
        var kind = new Argument<string>("KIND") { HelpName = "KIND", Description = "One of " + string.Join(", ", kinds) };
        kind.CompletionSources.Add(kinds);
        kind.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var word }] && KindWords.Wrong(word, kinds) is { } wrong)
                result.AddError(wrong);
        });
        var part = NewPartCommand.Create(kind, output, (k, file) => Part(Starter(k), file));
        return new Command("new", "Write a commented starting file") { build, part };
    }

    private static string Starter(string kind) => NewPartCommand.Starter(kind);

    // Its name is its id; a device has none to give.
    private static int Part(string starter, string? file)
    {
        if (file is null || SameFile.Key(file) is null)
            return Save(starter, file);
        return StarterFor.File(starter, Path.GetFileName(file)) is { } text ? Save(text, file)
            : Refusal.Usage(StarterFor.WrongName(file)).Tell();
    }

    private static int Save(string text, string? file)
    {
        if (file is null)
        {
            Console.Out.Write(text);
            return ExitStatus.Good;
        }
        return NewBuild.Written(file, text);
    }
}
