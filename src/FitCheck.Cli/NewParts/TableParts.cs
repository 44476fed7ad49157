using FitCheck.Catalog;
using FitCheck.Cli.Output;
using FitCheck.DataSheets;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Reports.Wording;
using FitCheck.Yaml;

namespace FitCheck.Cli.NewParts;

/// <summary>Makes entries of a table, and a table of entries. Nothing that exists is written over.</summary>
internal static class TableParts
{
    /// <summary>Reads a table; what was refused is told, the rest is written. Returns the exit status.</summary>
    /// <param name="kind">The kind of the entries.</param>
    /// <param name="table">The file of the table.</param>
    /// <param name="output">A file for a list of them, a folder for a file each, or null for standard output.</param>
    public static int Read(string kind, string table, string? output)
    {
        var isFolder = output is not null && (Directory.Exists(output) || Path.EndsInDirectorySeparator(output));
        if (output is not null && !isFolder && OutputFile.Taken(output) is { } taken)
            return Refusal.Input(taken).Tell();
        var problems = new ProblemList();
        var entries = BuildFiles.AnyBytes(BuildSource.File(table), "the table", problems) is { } bytes
            && QuoteFile.Read(table.Replace('\\', '/'), bytes, problems) is { } rows ? EntryTable.Read(kind, rows, problems) : [];
        var status = ProblemLines.Tell(problems.Sorted(), Console.Error);
        if (entries.Count == 0)
            return status == ExitStatus.Good ? Refusal.Input($"{table} has no row with an entry").Tell() : status;
        if (output is null)
            Console.Out.Write(EntryBlockText.Of(entries));
        else if (isFolder)
            return Math.Max(status, Each(entries, output));
        else if (OutputFile.New(output, EntryBlockText.Of(entries)) is { } failed)
            return Refusal.Input(failed).Tell();
        else
            Tell(entries.Count, output);
        return status;
    }

    /// <summary>Writes the catalog's entries of a kind as a table. Returns the exit status.</summary>
    public static int Write(string kind, string table, IReadOnlyList<string> folders)
    {
        if (!table.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && Foundation.Files.SameFile.Key(table) is not null)
            return Refusal.Usage($"{table}: a table is written as CSV; let its name end in `.csv`").Tell();
        if (OutputFile.Taken(table) is { } taken)
            return Refusal.Input(taken).Tell();
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open(folders, problems);
        var entries = catalog.IdsOf(kind).Select(catalog.Written).OfType<YamlMap>().ToList();
        if (problems.HasErrors)
            return ProblemLines.Tell(problems.Sorted(), Console.Error);
        return OutputFile.New(table, TableText.Of(kind, entries)) is { } failed ? Refusal.Input(failed).Tell() : ExitStatus.Good;
    }

    private static int Each(IReadOnlyList<YamlMap> entries, string folder)
    {
        var written = 0;
        var status = ExitStatus.Good;
        foreach (var entry in entries)
        {
            if (OutputFile.New(Path.Combine(folder, ((YamlScalar)entry["id"]!).Text + ".yaml"), EntryBlockText.Of(entry)) is { } failed)
                status = Refusal.Input(failed).Tell();
            else
                written++;
        }
        Tell(written, folder);
        return status;
    }

    private static void Tell(int count, string where) =>
        Console.Error.WriteLine(PlainText.Line($"{Sentences.Count(count, "entry is", "entries are")} written to {where}"));
}
