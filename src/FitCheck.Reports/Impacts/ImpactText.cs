using FitCheck.Foundation.Problems;
using FitCheck.Impacts;
using FitCheck.Reports.Format;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Impacts;

/// <summary>For a terminal: the answer, the builds that change with what they come from, then pairs, rules and entries.</summary>
internal sealed class ImpactText : IImpactReport
{
    private const int Indent = 9;
    private const int MostLines = 25;

    public string Format => "text";

    public void Write(ImpactResult result, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        page.Heading($"From {result.From} to {result.To}");
        page.Line(0, ImpactWords.Verdict(result));
        page.Line(0, ImpactWords.Extent(result), TextStyle.Faint);
        foreach (var build in result.Builds.Where(ImpactWords.IsTold))
            WriteBuild(page, build);
        Section(page, "Pairs of the chart that flip", [.. ImpactWords.Pairs(result).Select(ImpactWords.Pair)], options.Verbose);
        Section(page, "Rules", [.. result.Rules.Select(r => $"{r.Rule} {ImpactWords.Word(r.Change)}: {r.What} ({Figures.Place(r.At)})")],
            options.Verbose);
        Section(page, "Entries", [.. result.Entries.Select(Entry)], options.Verbose);
    }

    private static void WriteBuild(TextPage page, BuildChange build)
    {
        page.Gap();
        page.Hanging(0, ImpactWords.FateWord(build).ToUpperInvariant().PadRight(Indent),
            $"{build.Name} {ImpactWords.Fate(build)}.  {Figures.Place(build.At)}");
        foreach (var problem in build.Problems)
            page.Line(Indent, problem.ToString());
        foreach (var (change, where) in ImpactWords.Findings(build))
        {
            page.Hanging(Indent, change.IsWorse ? "worse: " : "better: ",
                $"{ImpactWords.Step(change)}, {where}: {change.Finding.Message} [{change.Finding.Rule}]");
            foreach (var cause in change.Causes)
                page.Hanging(Indent + 2, "because ", ImpactWords.Because(cause));
        }
    }

    private static string Entry(EntryChange entry) => entry.Keys.Count == 0
        ? $"{entry.Kind} {entry.Id} {ImpactWords.Word(entry.Change)} ({Figures.Place(entry.At)})"
        : $"{entry.Kind} {entry.Id}: {string.Join("; ", entry.Keys.Select(k => $"{k} (line {Figures.Whole(k.At.Line)})"))} ("
            + $"{entry.At.File})";

    private static void Section(TextPage page, string heading, IReadOnlyList<string> lines, bool all)
    {
        if (lines.Count == 0)
            return;
        page.Gap();
        page.Heading(heading);
        foreach (var line in all ? lines : lines.Take(MostLines))
            page.Hanging(0, "  - ", line);
        if (!all && lines.Count > MostLines)
            page.Line(2, $"and {Figures.Whole(lines.Count - MostLines)} more; --verbose tells them all", TextStyle.Faint);
    }
}
