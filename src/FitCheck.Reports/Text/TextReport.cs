using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts.Outputs;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Text;

/// <summary>For a terminal: the verdict first, then what to do about it.</summary>
internal sealed class TextReport : ILintReport
{
    // The longest status word and two spaces.
    private const int Indent = 9;

    public string Format => "text";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        var comparison = BuildComparison.Of(result);
        if (comparison is not null)
            WriteComparison(page, comparison);
        for (var i = 0; i < result.Builds.Count; i++)
        {
            if (i > 0 || comparison is not null)
                page.Rule();
            WriteBuild(page, result.Builds[i], options.Verbose);
        }
    }

    /// <summary>One problem a line, in the form that editors understand.</summary>
    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        foreach (var problem in result.Problems)
        {
            output.Write(PlainText.Line(problem.ToString()));
            output.Write('\n');
        }
    }

    private static void WriteComparison(TextPage page, BuildComparison comparison)
    {
        page.Heading(BuildComparison.Title);
        foreach (var (letter, build) in comparison.Builds)
            page.Hanging(2, $"{letter}  ", build.Name);
        page.Gap();
        var width = comparison.Rows.Max(r => r.Label.Length);
        page.Columns(width, "", [.. comparison.Builds.Select(b => b.Letter)]);
        foreach (var row in comparison.Rows)
            page.Columns(width, row.Label, row.Cells);
        page.Gap();
        foreach (var sentence in comparison.Sentences)
            page.Line(2, sentence);
    }

    private static void WriteBuild(TextPage page, BuildResult build, bool verbose)
    {
        using var told = Lengths.Asked(build.Lengths);
        page.Heading(build.Name);
        page.Line(0, VehicleWords.Of(build));
        page.Marked(build.Verdict, Indent, Headline.Of(build));
        page.Line(Indent, Tally.OfPoints(build.Findings).ToString(), TextStyle.Faint);
        page.Gap();

        WriteFindings(page, build, Status.Fail);
        WriteFindings(page, build, Status.Measure);
        WriteFindings(page, build, Status.Warn);
        if (verbose)
            WriteFindings(page, build, Status.Pass);
        WriteWaived(page, build);
        WriteRuleChanges(page, build);
        WriteMeasureFirst(page, build.File, MeasureFirst.Of(build));
        WriteSettings(page, build);
        WriteGains(page, build);
        WriteList(page, build);
        WriteRemarks(page, build);
        WriteNotJudged(page, build, verbose);
        WriteCautions(page, build);
    }

    private static void WriteFindings(TextPage page, BuildResult build, Status status)
    {
        foreach (var told in Told.Of(build, status))
            WriteFinding(page, told);
    }

    private static void WriteFinding(TextPage page, Told told)
    {
        var finding = told.First;
        page.Marked(finding.Status, Indent, $"{told.Where}: {finding.Message}");
        if (finding.Status != Status.Pass && finding.Advice.Length > 0)
            page.Hanging(Indent, "→ ", finding.Advice);
        page.Pair(Indent, Figures.Row(finding), $"{finding.Rule}  {string.Join("  ", told.Places)}");
        page.Gap();
    }

    private static void WriteWaived(TextPage page, BuildResult build)
    {
        foreach (var told in Told.Of(build.Findings.Where(f => f.Waived is not null)))
            page.Hanging(0, "waived   ",
                $"{told.Where}: {told.First.Title} ({told.First.Status.Word()}, {told.First.Rule}). "
                    + $"Reason: {Sentences.Waived(told.First)}");
        page.Gap();
    }

    private static void WriteRuleChanges(TextPage page, BuildResult build)
    {
        if (build.RuleChanges.Count == 0)
            return;
        page.Heading(Sentences.RulesOfThisShop);
        page.Line(2, Sentences.WhatRulesOfThisShopAre);
        foreach (var change in build.RuleChanges)
            page.Hanging(2, "- ", $"{Sentences.Changed(change)} [{Figures.ShortPlace(change.At)}]");
        page.Gap();
    }

    // A terminal can't fold.
    private static void WriteNotJudged(TextPage page, BuildResult build, bool verbose)
    {
        if (build.NotJudgedCount == 0)
            return;
        page.Heading(Unjudged.Title);
        page.Line(2, verbose ? Unjudged.Lead(build) : $"{Unjudged.Lead(build)} With --verbose each is told.");
        foreach (var alike in verbose ? Unjudged.Of(build) : [])
            page.Hanging(2, "- ", $"{alike.Reason} ({alike.Where}): {string.Join(", ", alike.Rules)}");
        page.Gap();
    }

    private static void WriteMeasureFirst(TextPage page, string file, IReadOnlyList<MeasureTask> tasks)
    {
        if (tasks.Count == 0)
            return;
        page.Heading("Measure first");
        if (tasks.Any(t => t.Lines.Count > 0))
            page.Line(2, MeasureFirst.WhatToDo(file));
        for (var i = 0; i < tasks.Count; i++)
        {
            page.Hanging(2, $"{Figures.Whole(i + 1)}. ", tasks[i].What);
            page.Line(5, tasks[i].How);
            foreach (var outcome in tasks[i].Outcomes)
            {
                if (outcome.Passing is not null)
                    page.Line(5, $"Passes with {outcome.Passing} ({outcome.Told.First.Rule}).");
            }
            foreach (var line in tasks[i].Lines)
                page.Whole(5, $"- {line}");
        }
        page.Gap();
    }

    private static void WriteSettings(TextPage page, BuildResult build)
    {
        if (build.Settings.Count == 0)
            return;
        page.Heading("Settings to start from");
        foreach (var setting in build.Settings)
            page.Hanging(2, "- ", $"{Names.Joined(setting.Where)}: {setting.What}: {setting.Value}.");
        page.Gap();
    }

    private static void WriteGains(TextPage page, BuildResult build)
    {
        var gains = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var table in build.Facts)
        {
            if (table.Of(GainFacts.GainTarget) is not { Unsure.Count: 0, Number: { } target }
                || table.Of(LoadFacts.IsSourceOutput) is not { Truth: false })
                continue;
            var volts = Figures.Show(target.Value, "V");
            if (!gains.TryGetValue(volts, out var channels))
                gains.Add(volts, channels = []);
            channels.Add(table.Key);
        }
        if (gains.Count == 0)
            return;
        page.Heading("Gain to start from");
        page.Line(2, Sentences.HowToSetTheGain);
        foreach (var (volts, channels) in gains)
            page.Hanging(2, "- ", $"{string.Join(", ", channels)}: {volts}");
        page.Gap();
    }

    private static void WriteList(TextPage page, BuildResult build)
    {
        if (build.List.Count == 0)
            return;
        page.Heading("Parts to buy");
        int buy = 0, sum = 0, note = 0;
        foreach (var line in build.List)
        {
            buy = Math.Max(buy, Sentences.ToBuy(line).Length);
            sum = Math.Max(sum, ListPrices.Sum(line).Length);
            note = Math.Max(note, Sentences.Availability(line.Availability).Length);
        }
        foreach (var total in build.Totals)
            sum = Math.Max(sum, total.ToString().Length);
        foreach (var line in build.List)
        {
            page.Row(Sentences.ToBuy(line).PadRight(buy), line.Name, ListPrices.Sum(line).PadLeft(sum),
                Sentences.Availability(line.Availability), note);
            if (ListPrices.Difference(line) is { } difference)
                page.Hanging(4, "", difference);
        }
        for (var i = 0; i < build.Totals.Count; i++)
        {
            // What the budget says stands beside the sum that it is about.
            var name = i == build.Totals.Count - 1 ? Sentences.Budget(build) ?? "" : "";
            page.Row("Total".PadRight(buy), name, build.Totals[i].ToString().PadLeft(sum), "", note);
        }
        if (ListPrices.Counted(build.List) is { } counted)
            page.Hanging(2, "", counted);
        page.Gap();
    }

    private static void WriteRemarks(TextPage page, BuildResult build)
    {
        if (build.Remarks.Count == 0)
            return;
        page.Heading("Remarks on the build file");
        foreach (var remark in build.Remarks)
            page.Hanging(2, "- ", remark.ToString());
        page.Gap();
    }

    private static void WriteCautions(TextPage page, BuildResult build)
    {
        page.Heading("Take care");
        foreach (var caution in build.Cautions)
            page.Hanging(2, "- ", caution);
        page.Hanging(2, "- ", Sentences.LastWord);
        page.Gap();
    }
}
