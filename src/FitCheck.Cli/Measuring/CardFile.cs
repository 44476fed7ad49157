using FitCheck.Cli.Output;
using FitCheck.Reports.Format;

namespace FitCheck.Cli.Measuring;

/// <summary>Writes a card whole or not at all.</summary>
internal static class CardFile
{
    /// <summary>Null when written, else the exit status; standard error says why.</summary>
    public static int? Write(string file, Action<ReportOptions, TextWriter> write)
    {
        using var text = new StringWriter();
        try
        {
            using var card = StandardStreams.Report(text, "html");
            write(ReportOptions.Default, card);
        }
        catch (TemplateException e)
        {
            return Refusal.Input(e.Message).Tell();
        }
        return OutputFile.Report(file, text.ToString()) is { } error ? Refusal.Input(error).Tell() : null;
    }
}
