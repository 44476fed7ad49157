using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Schemas;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck schema KIND`</summary>
internal static class SchemaCommand
{
    public static Command Create()
    {
        var kind = new Argument<string>("KIND") { HelpName = "KIND", Description = "One of " + string.Join(", ", SchemaText.Kinds) };
        kind.AcceptOnlyFromAmong([.. SchemaText.Kinds]);
        var command = new Command("schema", "Print the JSON Schema of a kind of file, for editors") { kind };
        command.SetAction(parsed =>
        {
            Console.Out.Write(SchemaText.Of(parsed.GetValue(kind)!));
            return ExitStatus.Good;
        });
        return command;
    }
}
