using System.Text;
using FitCheck.Findings;
using FitCheck.Reports;

namespace FitCheck.Cli;

/// <summary>Where each report goes: formats and files are paired in the order they were given; one format may go to standard output.</summary>
internal sealed class OutputTargets
{
    private readonly List<Target> _targets = [];

    /// <summary>The pairs, or a sentence that says what is wrong with them. Checked before any work is done.</summary>
    public static (OutputTargets? Targets, string? Error) Pair(IReadOnlyList<string> formats, IReadOnlyList<string> files)
    {
        if (formats.Count == 0)
            formats = files.Count == 0 ? ["text"] : [.. files.Select(FormatOf)];
        if (files.Count > formats.Count)
            return (null, $"{files.Count} --output for {formats.Count} --format; give a format for each file");
        if (formats.Count > files.Count + 1)
            return (null, $"{formats.Count} --format and {files.Count} --output; only one format can go to standard output");
        if (files.Count > 1 && files.Select(f => Path.GetFullPath(f)).GroupBy(f => f, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return (null, $"{Path.GetFileName(twice.Key)} is named twice by --output");
        var targets = new OutputTargets();
        for (var i = 0; i < formats.Count; i++)
            targets._targets.Add(new Target(ReportList.Find(formats[i])!, i < files.Count ? files[i] : null));
        return (targets, null);
    }

    /// <summary>True when they have none but these formats.</summary>
    public bool NeedOnly(params ReadOnlySpan<string> formats)
    {
        foreach (var target in _targets)
        {
            if (!formats.Contains(target.Report.Format))
                return false;
        }
        return true;
    }

    /// <summary>Writes every report; a file is written beside its place and then renamed, so that no reader ever sees half of it.</summary>
    /// <returns>Null when all went well, else what did not.</returns>
    public string? Write(CheckResult result, ReportOptions options) => Write((report, o, output) => report.Write(result, o, output), options);

    /// <inheritdoc cref="Write(CheckResult, ReportOptions)"/>
    public string? Write(LintResult result, ReportOptions options) => Write((report, o, output) => ((ILintReport)report).Write(result, o, output), options);

    private string? Write(Action<IReport, ReportOptions, TextWriter> write, ReportOptions options)
    {
        foreach (var (report, file) in _targets)
        {
            if (file is null)
            {
                using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
                write(report, options, output);
                continue;
            }
            using var text = new StringWriter { NewLine = "\n" };
            write(report, options with { Color = false }, text);
            if (AtomicFile.Write(file, text.ToString()) is { } error)
                return error;
        }
        return null;
    }

    private static string FormatOf(string file) => Path.GetExtension(file).ToLowerInvariant() switch
    {
        ".html" or ".htm" => "html",
        ".json" => "json",
        ".md" => "markdown",
        ".sarif" => "sarif",
        ".xml" => "junit",
        _ => "text",
    };

    private sealed record Target(IReport Report, string? File);
}
