using System.CommandLine;
using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.Cli.NewParts;
using FitCheck.Cli.Output;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck new part KIND`: asked for on a terminal, made of a table, or a starting file; and a table of what there is.</summary>
internal sealed class NewPartCommand
{
    private readonly Argument<string> _kind;
    private readonly Option<string?> _output;
    private readonly Option<string?> _from = new("--from")
    {
        Description = "A table of data sheets (CSV, XLSX), a row for each: its entries go to a list (-o FILE), or a file each (-o FOLDER)",
        HelpName = "TABLE"
    };
    private readonly Option<string?> _to = new("--to")
    {
        Description = "Write the catalog's entries of the kind as a table (CSV), as --from reads it",
        HelpName = "TABLE"
    };
    private readonly CommonOptions _common = new();

    private NewPartCommand(Argument<string> kind, Option<string?> output) => (_kind, _output) = (kind, output);

    public static Command Create(Argument<string> kind, Option<string?> output, Func<string, string?, int> starter)
    {
        var part = new NewPartCommand(kind, output);
        var command = new Command("part", "A catalog entry that validates: asked for on a terminal, made of a table, else a commented "
            + "starting file; the name of its file becomes its id") { kind, output, part._from, part._to, part._common.Catalog };
        command.SetAction(parsed => part.Run(parsed, starter));
        return command;
    }

    private int Run(ParseResult parsed, Func<string, string?, int> starter)
    {
        var (kind, output) = (parsed.GetValue(_kind)!, parsed.GetValue(_output));
        var catalog = _common.Folders(parsed).Catalog;
        return (parsed.GetValue(_from), parsed.GetValue(_to)) switch
        {
            (not null, not null) => Refusal.Usage("--from reads a table, --to writes one: give one of them").Tell(),
            ({ } table, _) => TableParts.Read(kind, table, output),
            (_, { } table) when output is not null => Refusal.Usage($"--to names the file already: {table}").Tell(),
            (_, { } table) => TableParts.Write(kind, table, catalog),
            _ => TerminalQuestions.CanAsk ? Asked(new TerminalQuestions(), kind, output, catalog) : starter(kind, output),
        };
    }

    /// <summary>Asks, and writes the file whole or not at all. Returns the exit status.</summary>
    internal static int Asked(IQuestions ask, string kind, string? file, IReadOnlyList<string> folders)
    {
        var starter = Starter(kind);
        if (file is not null && SameFile.Key(file) is not null && StarterFor.File(starter, Path.GetFileName(file)) is null)
            return Refusal.Usage(StarterFor.WrongName(file)).Tell();
        if (file is not null && OutputFile.Taken(file) is { } taken)
            return Refusal.Input(taken).Tell();
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open(folders, problems);
        if (problems.HasErrors)
            return ProblemLines.Tell(problems.Sorted(), Console.Error);
        // Each question may be gone back from.
        (var entry, file) = new Steps(ask).Through(asking =>
        {
            var answered = new PartDialogue(kind, asking, catalog).Ask(file is null ? null : Path.GetFileNameWithoutExtension(file));
            return (answered, file ?? asking.Text("Write it to which file?", ((Yaml.YamlScalar)answered["id"]!).Text + ".yaml",
                f => f.Length == 0 ? "it needs a name" : OutputFile.Taken(f)));
        });
        if (OutputFile.New(file, PartFile.Of(entry, starter)) is { } failed)
            return Refusal.Input(failed).Tell();
        Console.Out.WriteLine(Reports.Wording.PlainText.Line($"{file} is written. In a catalog folder it stands under "
            + $"{Kinds.All.First(k => k.Kind == kind).Folder}/; try it with: fitcheck lint --catalog default --catalog FOLDER"));
        return ExitStatus.Good;
    }

    internal static string Starter(string kind) =>
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "catalog", "starters", kind + ".yaml"));
}
