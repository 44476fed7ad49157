using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using FitCheck.Cli.Commands;
using FitCheck.Cli.Output;

namespace FitCheck.Cli.Programs;

/// <summary>`fitcheck page`: a program of its own beside this one, as nothing else needs what a web server needs.</summary>
internal static class PageCommand
{
    public static Command Create()
    {
        var build = new Argument<string?>("BUILD")
        {
            HelpName = "BUILD",
            Description = "A build with which the page begins; it is read once and never written",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var port = new Option<int?>("--port")
        {
            Description = "The port on this machine, 1 to 65535 [default: a free one]",
            HelpName = "N",
            CustomParser = Port,
        };
        var noOpen = new Option<bool>("--no-open")
        {
            Description = "Print the address and open no browser; without it one is opened where standard output is a terminal",
        };
        var common = new CommonOptions();
        var command = new Command("page",
            "Open the page at which a build is put together: in the browser, on this machine alone, until Ctrl-C")
        {
            build, port, noOpen, common.Catalog, common.Rules,
        };
        command.SetAction(parsed =>
        {
            var folders = common.Folders(parsed);
            string[] words =
            [
                .. folders.Catalog.SelectMany(f => new[] { "--catalog", f }), .. folders.Rules.SelectMany(f => new[] { "--rules", f }),
                .. parsed.GetValue(build) is { } file ? new[] { "--build", file } : [],
                .. parsed.GetValue(port) is { } number ? new[] { "--port", number.ToString(CultureInfo.InvariantCulture) } : [],
                .. parsed.GetValue(noOpen) ? new[] { "--no-open" } : [],
            ];
            return PageProgram.Missing() is { } missing ? Refusal.Input(missing).Tell() : PageProgram.Run(words);
        });
        return command;
    }

    private static int? Port(ArgumentResult given)
    {
        var word = given.Tokens is [var first, ..] ? first.Value : "";
        if (ushort.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port > 0)
            return port;
        given.AddError($"`--port` takes a number from 1 to 65535, not `{word}`");
        return null;
    }
}
