using FitCheck.Reports.Format;

namespace FitCheck.Cli.Output;

/// <summary>
/// Where each report goes: formats and files are paired in the order they were given; one format may go to standard output.
/// </summary>
internal sealed class OutputTargets
{
    private readonly List<Target> _targets = [];

    /// <summary>The pairs, or a sentence that says what is wrong with them. Checked before any work is done.</summary>
    /// <param name="formats">As they were given; none is told by the names of the files, or is text.</param>
    /// <param name="files">As they were given.</param>
    /// <param name="known">The formats that the command has.</param>
    public static (OutputTargets? Targets, string? Error) Pair(IReadOnlyList<string> formats, IReadOnlyList<string> files, string[] known)
    {
        if (formats.Count == 0)
            formats = files.Count == 0 ? ["text"] : [.. files.Select(f => FormatOf(f, known))];
        if (files.Count > formats.Count)
            return (null, $"{files.Count} --output for {formats.Count} --format; give a format for each file");
        if (formats.Count > files.Count + 1)
            return (null, $"{formats.Count} --format and {files.Count} --output; only one format can go to standard output");
        for (var i = 0; i < files.Count; i++)
        {
            // A slip of order: the file would be written as another format than its name says, which was asked for too.
            if (FormatOf(files[i], known) is var named && named != formats[i] && named != "text" && formats.Contains(named))
                return (null,
                    $"{Path.GetFileName(files[i])} would be written as {formats[i]}; each --output belongs to the --format at the same "
                        + $"place, so give --format {named} before --format {formats[i]}");
        }
        var targets = new OutputTargets();
        for (var i = 0; i < formats.Count; i++)
            targets._targets.Add(new Target(formats[i], i < files.Count ? files[i] : null));
        return (targets, null);
    }

    /// <summary>One more report that has a file of its own, named by the option of the same name.</summary>
    public void Add(string format, string file) => _targets.Add(new Target(format, file, "--" + format));

    /// <summary>
    /// Why the reports can't be written where they were asked for: over something that is read for them, or two onto one file. Null when
    /// nothing is lost.
    /// </summary>
    public Refusal? Refused(IEnumerable<string> named, IEnumerable<string> read) =>
        Overwriting.Of([.. _targets.Where(t => t.File is not null).Select(t => (t.Option, t.File!))], named, read);

    /// <summary>True when one of them goes to a terminal, where no other line may come between.</summary>
    public bool AreOnTerminal => !Console.IsOutputRedirected && _targets.Exists(t => t.File is null);

    /// <summary>True when one of them has this format.</summary>
    public bool Have(string format) => _targets.Exists(t => t.Format == format);

    /// <summary>True when they have none but these formats.</summary>
    public bool NeedOnly(params ReadOnlySpan<string> formats)
    {
        foreach (var target in _targets)
        {
            if (!formats.Contains(target.Format))
                return false;
        }
        return true;
    }

    /// <summary>Writes every report; a file is written beside its place and then renamed, so that no reader ever sees half of it.</summary>
    /// <returns>Null when all went well, else the exit status; standard error says why.</returns>
    public int? Write(ReportOptions options, Action<string, ReportOptions, TextWriter> write)
    {
        try
        {
            foreach (var (format, file, _) in _targets)
            {
                if (Write(format, file, options, write) is { } error)
                    return Refusal.Input(error).Tell();
            }
            return null;
        }
        catch (TemplateException e)
        {
            return Refusal.Input(e.Message).Tell();
        }
    }

    private static string? Write(string format, string? file, ReportOptions options, Action<string, ReportOptions, TextWriter> write)
    {
        if (file is null)
        {
            using var output = StandardStreams.ForReport(format);
            write(format, options with { Columns = StandardStreams.Columns }, output);
            return null;
        }
        using var text = new StringWriter();
        using (var report = StandardStreams.Report(text, format))
            write(format, options with { Color = false }, report);
        return OutputFile.Report(file, text.ToString());
    }

    // The extension says it where the command has such a format.
    private static string FormatOf(string file, string[] known)
    {
        var extension = Path.GetExtension(file).ToLowerInvariant();
        var format = extension switch { ".htm" => "html", ".md" => "markdown", ".xml" => "junit", _ => extension.TrimStart('.') };
        return Array.IndexOf(known, format) >= 0 ? format : "text";
    }

    private sealed record Target(string Format, string? File, string Option = "--output");
}
