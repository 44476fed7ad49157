using FitCheck.Findings;
using FitCheck.Measuring;

namespace FitCheck.Reports.Measuring;

/// <summary>What is said of a reading that is open, on a terminal and on paper.</summary>
internal static class MeasureWords
{
    public const string Nothing = "Nothing is left to measure.";

    /// <summary>`Depth behind the panel (mount/too-deep): passes with 62.3 mm or more`, once for each rule.</summary>
    public static IReadOnlyList<string> Decides(OpenReading reading) =>
        [.. reading.Decides.Select(d => $"{d.Finding.Title} ({d.Finding.Rule})"
            + (d.Passing is { } passing ? $": passes with {passing}" : "")).Distinct(StringComparer.Ordinal)];

    /// <summary>The first letter as a sentence has it.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What is read, without the place that stands above it.</summary>
    public static string Here(OpenReading reading) => Sentence(reading.What
        .Replace($" at {reading.Place}", "", StringComparison.Ordinal).Replace($" ({reading.Place})", "", StringComparison.Ordinal));

    /// <summary>How the findings that wait for it stand now, `mount/too-deep: pass`.</summary>
    public static IReadOnlyList<string> Outcomes(OpenReading reading, IReadOnlyList<Finding> now) =>
        [.. reading.Decides.Select(d => d.Finding)
            .Select(f => (f, now.FirstOrDefault(n => n.Rule == f.Rule && n.Position == f.Position)))
            .Select(p => p.Item2 is null ? $"{p.f.Title}: no longer asked"
                : $"{p.f.Title}: {(p.Item2.Status == Status.Measure ? "waits for more" : p.Item2.Status.Word())}")
            .Distinct(StringComparer.Ordinal)];
}
