using FitCheck.Reports.Format;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>Tells a suggestion in one format. It reads the result and nothing else, so every format tells the same.</summary>
public interface ISuggestionReport
{
    /// <summary>What `--format` calls it.</summary>
    string Format { get; }

    /// <summary>Writes it; lines end in a line feed.</summary>
    void Write(Suggestion suggestion, ReportOptions options, TextWriter output);
}

/// <summary>Every format that a suggestion can be told in.</summary>
public static class SuggestionReports
{
    private static readonly ISuggestionReport[] Reports = [new Shown(new SuggestionText()), new Shown(new SuggestionJson()),
        new Shown(new SuggestionMarkdown())];

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => Array.ConvertAll(Reports, r => r.Format);

    /// <summary>The report of this format, or null.</summary>
    public static ISuggestionReport? Find(string format) => Array.Find(Reports, r => r.Format == format);

    private sealed class Shown(ISuggestionReport report) : ISuggestionReport
    {
        public string Format => report.Format;

        public void Write(Suggestion suggestion, ReportOptions options, TextWriter output) =>
            ShownText.Tell(output, Format, shown => report.Write(suggestion, options, shown));
    }
}
