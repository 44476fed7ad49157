using System.CommandLine;
using FitCheck.Reports.Format;

namespace FitCheck.Cli.Output;

/// <summary>`--format` and `--output` of a command, each as often as it is wanted.</summary>
internal sealed class TargetOptions
{
    private readonly string[] _formats;

    public TargetOptions(string[] formats)
    {
        _formats = formats;
        Formats = new Option<string[]>("--format",
            "-f")
        {
            Description = "How to tell the result; give it again with one --output each [default: text]",
            HelpName = string.Join('|', formats)
        };
        Formats.AcceptOnlyFromAmong(formats);
        Outputs = new Option<string[]>("--output", "-o")
        {
            Description = "Write to this file instead of standard output",
            HelpName = "FILE"
        };
    }

    public Option<string[]> Formats { get; }

    public Option<string[]> Outputs { get; }

    /// <summary>Where each report goes; or a sentence that says what is wrong with the options.</summary>
    public (OutputTargets? Pairs, string? Error) Pair(ParseResult parsed) =>
        OutputTargets.Pair(parsed.GetValue(Formats) ?? [], parsed.GetValue(Outputs) ?? [], _formats);

    /// <inheritdoc cref="OutputTargets.Write"/>
    public static int? Write(OutputTargets pairs, ReportOptions options, Action<string, ReportOptions, TextWriter> write) =>
        pairs.Write(options, write);
}
