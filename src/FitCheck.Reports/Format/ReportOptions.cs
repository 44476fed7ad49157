using FitCheck.Findings;

namespace FitCheck.Reports.Format;

/// <summary>What the caller may ask of a report.</summary>
/// <param name="Verbose">Show passes one by one, where they are otherwise only counted.</param>
/// <param name="Color">Colour for a terminal. Words carry the meaning with or without it.</param>
/// <param name="TemplatesDirectory">The folder that holds `html/`.</param>
/// <param name="Columns">Width of a terminal line.</param>
public sealed record ReportOptions(bool Verbose, bool Color, string TemplatesDirectory, int Columns = 100)
{
    /// <summary>From this status up something counts as failed, where a format has no words of its own for the statuses.</summary>
    public Status FailOn { get; init; } = Status.Fail;

    /// <summary>The folder from which formats for machines name files; null leaves names as they were given.</summary>
    public string? Root { get; init; }

    /// <summary>
    /// Whether the formats for changes (`junit`, `github`, `markdown`) hold builds to what they say they are meant to give, and tell one by
    /// one only what is not so.
    /// </summary>
    public bool AsExpected { get; init; }

    /// <summary>For whom a page is, as it shall stand there; null leaves a line to be filled in on paper.</summary>
    public string? Customer { get; init; }

    /// <summary>Where a page finds its style sheet, for a host whose pages must hold none; null for within the page.</summary>
    internal string? StyleAddress { get; init; }

    /// <summary>Plain, with the templates that come beside the program.</summary>
    public static ReportOptions Default { get; } = new(Verbose: false, Color: false, Path.Combine(AppContext.BaseDirectory, "reports"));
}
