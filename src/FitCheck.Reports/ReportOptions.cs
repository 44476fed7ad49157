namespace FitCheck.Reports;

/// <summary>What the caller may ask of a report.</summary>
/// <param name="Verbose">Show passes one by one, where they are otherwise only counted.</param>
/// <param name="Color">Colour for a terminal. Words carry the meaning with or without it.</param>
/// <param name="TemplatesDirectory">The folder that holds `html/`.</param>
/// <param name="Columns">Width of a terminal line.</param>
public sealed record ReportOptions(bool Verbose, bool Color, string TemplatesDirectory, int Columns = 100)
{
    /// <summary>Plain, with the templates that come beside the program.</summary>
    public static ReportOptions Default { get; } = new(Verbose: false, Color: false, Path.Combine(AppContext.BaseDirectory, "reports"));
}
