using System.CommandLine;
using System.Text;
using FitCheck.Reports;

namespace FitCheck.Cli;

/// <summary>`--format` and `--output` of a command: formats and files are paired in the order they were given; one format may go to standard output.</summary>
internal sealed class TargetOptions
{
    private readonly string[] _formats;

    public TargetOptions(string[] formats)
    {
        _formats = formats;
        Formats = new Option<string[]>("--format", "-f") { Description = "How to tell the result; give it again with one --output each [default: text]", HelpName = string.Join('|', formats) };
        Formats.AcceptOnlyFromAmong(formats);
        Outputs = new Option<string[]>("--output", "-o") { Description = "Write to this file instead of standard output", HelpName = "FILE" };
    }

    public Option<string[]> Formats { get; }

    public Option<string[]> Outputs { get; }

    /// <summary>Formats and their files, null for standard output; or a sentence that says what is wrong with them. Checked before any work is done.</summary>
    public (IReadOnlyList<(string Format, string? File)>? Pairs, string? Error) Pair(ParseResult parsed)
    {
        var files = parsed.GetValue(Outputs) ?? [];
        var formats = parsed.GetValue(Formats) is { Length: > 0 } given ? given : files.Length == 0 ? ["text"] : [.. files.Select(FormatOf)];
        if (files.Length > formats.Length)
            return (null, $"{files.Length} --output for {formats.Length} --format; give a format for each file");
        if (formats.Length > files.Length + 1)
            return (null, $"{formats.Length} --format and {files.Length} --output; only one format can go to standard output");
        if (files.Select(f => Path.GetFullPath(f)).GroupBy(f => f, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return (null, $"{Path.GetFileName(twice.Key)} is named twice by --output");
        return ([.. formats.Select((f, i) => (f, i < files.Length ? files[i] : null))], null);
    }

    public static int Usage(string message)
    {
        Console.Error.WriteLine($"fitcheck: {message}");
        return ExitStatus.BadUsage;
    }

    /// <summary>Writes every pair, files whole or not at all. Null when all went well, else the exit status; standard error says why.</summary>
    public static int? Write(IReadOnlyList<(string Format, string? File)> pairs, ReportOptions options, Action<string, ReportOptions, TextWriter> write)
    {
        try
        {
            foreach (var (format, file) in pairs)
            {
                if (Write(format, file, options, write) is { } error)
                    return Failed(error);
            }
            return null;
        }
        catch (TemplateException e)
        {
            return Failed(e.Message);
        }
    }

    private static string? Write(string format, string? file, ReportOptions options, Action<string, ReportOptions, TextWriter> write)
    {
        using var text = new StringWriter { NewLine = "\n" };
        write(format, file is null ? options : options with { Color = false }, text);
        if (file is not null)
            return AtomicFile.Write(file, text.ToString());
        using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        output.Write(text.ToString());
        return null;
    }

    private static int Failed(string message)
    {
        Console.Error.WriteLine("fitcheck: " + message);
        return ExitStatus.BadInput;
    }

    // The extension says it where the command has such a format.
    private string FormatOf(string file)
    {
        var format = Path.GetExtension(file).ToLowerInvariant() switch { ".htm" => "html", ".md" => "markdown", var other => other.TrimStart('.') };
        return _formats.Contains(format) ? format : "text";
    }
}
