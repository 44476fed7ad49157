using FitCheck.Evaluation;
using FitCheck.Facts.Outputs;
using FitCheck.Facts.Values;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>What is set when it plays: the crossover, filters, delay, and the gain in volts.</summary>
internal static class SettingRows
{
    public static TableView? Of(BuildResult build)
    {
        List<RowView> rows = [.. Rows(build, "Gain", GainFacts.GainTarget, f => f.Shown(GainFacts.GainTarget, "V")),
            .. Rows(build, "High-pass of the output", LoadFacts.HighPassFilter, f => f.Word(LoadFacts.HighPassFilter)!),
            .. Rows(build, "Low-pass of the output", LoadFacts.LowPassFilter, f => f.Word(LoadFacts.LowPassFilter)!),
            .. build.Settings.Where(s => !s.WhileMounting).Select(s => new RowView(s.What, [Names.Joined(s.Where), s.Value]))];
        return rows.Count == 0 ? null : new TableView("Settings to start from; the ear decides the rest", ["Set", "Where", "To"], rows);
    }

    /// <summary>True when a gain is to be set by a voltmeter.</summary>
    public static bool HaveGain(BuildResult build) => Outputs(build, GainFacts.GainTarget).Any();

    private static IEnumerable<RowView> Rows(BuildResult build, string what, Fact fact, Func<SheetFacts, string> shown) =>
        Outputs(build, fact)
        .GroupBy(shown, StringComparer.Ordinal)
        .Select(g => new RowView(what, [$"output {string.Join(", ", g.Select(f => f.Key))}", g.Key]));

    // A gain is told, known or not, of the outputs of amplifiers only; a filter where one is set.
    private static IEnumerable<SheetFacts> Outputs(BuildResult build, Fact fact) =>
        build.Facts.Where(t => t.Subject == Subject.Channel && t.Of(fact) is not null).Select(t => new SheetFacts(t));
}
