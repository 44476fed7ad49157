using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Markdown;

/// <summary>One build: the verdict, what to change, what to measure; unless it is one of many, also the rest, folded.</summary>
internal sealed class MarkdownBuild(BuildResult build, ReportOptions options, bool isOneOfMany = false)
{
    public string Verdict =>
        $"**{MarkdownText.Plain(Headline.Of(build))}** {MarkdownText.Plain(Tally.OfPoints(build.Findings).ToString())}";

    public string Text
    {
        get
        {
            using var told = Lengths.Asked(build.Lengths);
            return string.Join("\n\n", Blocks());
        }
    }

    private IEnumerable<string> Blocks()
    {
        yield return Verdict;
        var failed = Told.Of(build, Status.Fail);
        if (failed.Count > 0)
            yield return $"**What to change**\n\n{Lines(failed.Select(Line))}";
        var tasks = MeasureFirst.Of(build);
        if (tasks.Count > 0)
            yield return $"**Measure first**\n\n{Lines(tasks.Select(Line))}{ToFillIn(tasks)}";
        if (isOneOfMany)
            yield break;
        var warnings = Told.Of(build, Status.Warn);
        if (warnings.Count > 0)
            yield return MarkdownPage.Folded(Sentences.Count(warnings.Count, "point to look at", "points to look at"),
                Lines(warnings.Select(Line)));
        var waived = Told.Of(build.Findings.Where(f => f.Waived is not null));
        if (waived.Count > 0)
            yield return MarkdownPage.Folded(Sentences.Count(waived.Count, "waived finding", "waived findings"),
                Lines(waived.Select(Waived)));
        if (build.Remarks.Count > 0)
            yield return $"**Remarks on the build file**\n\n{Lines(build.Remarks.Select(r => $"- {MarkdownText.Prose(r.Message)} "
                + $"{MarkdownText.Code(Place(r.At))}"))}";
        if (build.NotJudgedCount > 0)
            yield return MarkdownPage.Folded($"{Unjudged.Title}: {Sentences.Count(build.NotJudgedCount, "rule", "rules")}",
                Lines(Unjudged.Of(build).Select(u => $"- {MarkdownText.Plain(u.Reason)} ({MarkdownText.Plain(u.Where)}): "
                    + string.Join(", ", u.Rules.Select(MarkdownText.Code)))));
        if (build.List.Count > 0)
            yield return MarkdownPage.Folded($"Parts to buy: {MarkdownText.Summary(string.Join(" + ", build.Totals))}", List());
    }

    private string Line(Told told)
    {
        var finding = told.First;
        var row = Figures.Row(finding);
        return $"- **{MarkdownText.Plain(told.Where)}:** {MarkdownText.Prose(finding.Message)}"
            + (finding.Advice.Length > 0 ? $"<br>→ {MarkdownText.Prose(finding.Advice)}" : "")
            + $"<br>{(row.Length > 0 ? MarkdownText.Plain(row) + " · " : "")}{MarkdownText.Code(finding.Rule)} "
            + $"{string.Join(' ', told.Places.Select(Place).Distinct(StringComparer.Ordinal).Select(MarkdownText.Code))}";
    }

    private static string Line(MeasureTask task)
    {
        var passes = task.Outcomes.Where(o => o.Passing is not null)
            .Select(o => $"{MarkdownText.Plain(o.Passing!)} passes {MarkdownText.Code(o.Told.First.Rule)}").Distinct(StringComparer.Ordinal)
            .ToList();
        return $"- [ ] **{MarkdownText.Plain(task.What)}:** {MarkdownText.Prose(task.How)}{(passes.Count > 0 ? $"<br>"
            + $"{string.Join("; ", passes)}" : "")}";
    }

    // One block, which is copied with one click.
    private static string ToFillIn(IReadOnlyList<MeasureTask> tasks)
    {
        var lines = tasks.SelectMany(t => t.Lines).Distinct(StringComparer.Ordinal).Select(l => $"  - {PlainText.Line(l)}").ToList();
        // A name in a line must not end the block.
        var fence = new string('`', lines.Exists(l => l.Contains("```", StringComparison.Ordinal)) ? 12 : 3);
        return lines.Count == 0 ? ""
            : $"\n\nWhat was read belongs into the build:\n\n{fence}yaml\nreadings:\n{Lines(lines)}\n{fence}";
    }

    private static string Waived(Told told) =>
        $"- **{MarkdownText.Plain(told.Where)}:** {MarkdownText.Prose(told.First.Message)} ({told.First.Status.Word()}, "
            + $"{MarkdownText.Code(told.First.Rule)})<br>Reason: {MarkdownText.Prose(Sentences.Waived(told.First))}";

    private string List()
    {
        var rows = build.List.Select(
            l => $"| {MarkdownText.Plain(Sentences.ToBuy(l))} | {MarkdownText.Plain(l.Name)}{Note(l)} | "
                + $"{MarkdownText.Plain(ListPrices.Sum(l))} |").ToList();
        if (ListPrices.Counted(build.List) is { } counted)
            rows.Add($"| | {MarkdownText.Plain(counted)} | |");
        if (Sentences.Budget(build) is { } budget)
            rows.Add($"| | {MarkdownText.Plain(budget)} | |");
        return "| | part | sum |\n|---|---|---:|\n" + Lines(rows);
    }

    private static string Note(ListLine line) =>
        string.Join("; ", new[] { Sentences.Availability(line.Availability), ListPrices.Difference(line) }
            .Where(n => !string.IsNullOrEmpty(n))) is { Length: > 0 } note ? $" ({MarkdownText.Plain(note)})" : "";

    private string Place(Foundation.Problems.Location at) => Figures.Place(at with { File = FileNames.In(options.Root, at.File) });

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines);
}
