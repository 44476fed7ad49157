using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Markdown;

/// <summary>For a comment on a change, or the summary of a run: the verdict first, then what to do, all else folded.</summary>
internal sealed class MarkdownReport : ILintReport
{
    private const int MostRows = 40;
    private const int MostProblems = 20;

    public string Format => "markdown";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var page = new MarkdownPage();
        if (options.AsExpected)
            MarkdownMeant.Write(page, result, options);
        else if (result.Builds.Count == 1)
            One(page, result.Builds[0], options);
        else
            Many(page, result, options);
        Changes(page, result);
        page.Add($"_{MarkdownText.Plain(Sentences.LastWord)}_");
        output.Write(page.ToString());
    }

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var page = new MarkdownPage();
        var files = Sentences.Count(result.Files, "file", "files");
        page.Add($"### FitCheck lint: {Sentences.Lint(result)}\n\n{files} read.");
        List<string> lines = [.. result.Problems.OrderByDescending(p => p.Severity).Select(p => Line(p, options))];
        var left = page.AddLines([.. lines.Take(MostProblems)]);
        var more = lines.Skip(MostProblems).ToList();
        if (more.Count > 0 && !page.Add(MarkdownPage.Folded($"{Figures.Whole(more.Count)} more", string.Join('\n', more))))
            left += more.Count;
        if (left > 0)
            page.Add($"{Figures.Whole(left)} more are left out to keep this short; `fitcheck lint` tells all.");
        output.Write(page.ToString());
    }

    private static void Changes(MarkdownPage page, CheckResult result)
    {
        List<string> lines = [.. result.Builds.SelectMany(b => b.RuleChanges).Distinct()
            .Select(c => $"- {MarkdownText.Prose(Sentences.Changed(c))} {MarkdownText.Code(Figures.ShortPlace(c.At))}")];
        if (lines.Count == 0)
            return;
        page.Add($"**{Sentences.RulesOfThisShop}**\n\n{Sentences.WhatRulesOfThisShopAre}");
        if (page.AddLines(lines) is > 0 and var left)
            page.Add($"{Figures.Whole(left)} more are left out to keep this short.");
    }

    private static void One(MarkdownPage page, BuildResult build, ReportOptions options)
    {
        page.Add($"### {Word(build)} {MarkdownText.Plain(build.Name)}");
        page.Add(Vehicle(build, options));
        var sections = new MarkdownBuild(build, options);
        if (!page.Add(sections.Text))
            page.Add($"{sections.Verdict}\n\nThe rest is left out to keep this short; `fitcheck check` tells all.");
    }

    private static void Many(MarkdownPage page, CheckResult result, ReportOptions options)
    {
        var worstFirst = result.WorstFirst;
        var passing = worstFirst.Count(b => b.Verdict == Status.Pass);
        page.Add($"### FitCheck: {Headline([.. worstFirst.Select(b => b.Verdict)], result.Builds)}");
        if (worstFirst.Count == 0)
            return;
        page.Add(string.Join(", ",
            Sentences.WorstFirst.Select(s => (Status: s, Count: worstFirst.Count(b => b.Verdict == s))).Where(c => c.Count > 0)
            .Select(c => $"{Figures.Whole(c.Count)} {c.Status.Word()}")));
        if (BuildComparison.Of(result) is { } comparison)
            page.Add(Compared(comparison));
        var waived = worstFirst.Select(b => b.Build()).Where(b => b.RestingOn.Count > 0)
            .Select(b => $"- {Word(b)} {MarkdownText.Plain(b.Name)}: on the strength of {Reports.Wording.Headline.Count(b)}").ToList();
        if (waived.Count > 0 && page.AddLines(waived) is > 0 and var left)
            page.Add($"{Figures.Whole(left)} more rest on waivers.");
        var open = worstFirst.Take(worstFirst.Count - passing).ToList();
        if (open.Count > 0)
        {
            page.Add(string.Join('\n', open.Take(MostRows).Select(b => Row(b.Build()))
                .Prepend("|---|---|---|").Prepend("| | build | points |")));
            if (open.Count > MostRows)
                page.Add($"{Figures.Whole(open.Count - MostRows)} more are not in this table.");
        }
        var urgent = open.Where(b => b.Verdict > Status.Warn).ToList();
        var told = urgent.TakeWhile(b => page.Add(Folded(b.Build(), options))).Count();
        if (told < urgent.Count)
            page.Add($"The details of {Sentences.Count(urgent.Count - told, "build", "builds")} are left out to keep this short; "
                + $"`fitcheck check` tells all.");
    }

    private static string Compared(BuildComparison comparison)
    {
        var rows = comparison.Rows.Select(
            r => $"| {MarkdownText.Plain(r.Label)} | {string.Join(" | ", r.Cells.Select(MarkdownText.Plain))} |");
        var head = $"| {MarkdownText.Plain(BuildComparison.Title)} | {string.Join(" | ", comparison.Builds.Select(b => $"{b.Letter}: "
            + $"{MarkdownText.Plain(b.Build.Name)}"))} |";
        return string.Join('\n', rows.Prepend($"|---{string.Concat(comparison.Builds.Select(_ => "|---"))}|").Prepend(head))
            + $"\n\n{string.Join('\n', comparison.Sentences.Select(s => $"- {MarkdownText.Plain(s)}"))}";
    }

    private static string Headline(List<Status> verdicts, IReadOnlyList<BuildResult> builds)
    {
        var (all, fail, open) = (verdicts.Count, verdicts.Count(v => v == Status.Fail), verdicts.Count(v => v == Status.Measure));
        return all == 0 ? "no build was checked"
            : fail > 0 ? $"{Figures.Whole(fail)} of {Sentences.Count(all, "build does", "builds do")} not go together as planned"
            : open > 0 ? $"{Figures.Whole(open)} of {Sentences.Count(all, "build waits", "builds wait")} for a measurement"
            : $"all {Figures.Whole(all)} builds go together{OnWaivers(builds)}";
    }

    private static string OnWaivers(IReadOnlyList<BuildResult> builds) =>
        builds.Count(b => b.RestingOn.Count > 0) is > 0 and var count ? $", {Figures.Whole(count)} of them on the strength of waivers" : "";

    private static string Row(BuildResult build) =>
        $"| {Word(build)} | {MarkdownText.Plain(build.Name)} | {Points(Tally.OfPoints(build.Findings))} |";

    private static string Points(Tally points) => string.Join(", ",
        new[] { (Count: points.Fail, What: "to change"), (Count: points.Measure, What: "to measure"),
            (Count: points.Warn, What: "to look at") }
            .Where(p => p.Count > 0).Select(p => $"{Figures.Whole(p.Count)} {p.What}"));

    private static string Folded(BuildResult build, ReportOptions options) => MarkdownPage.Folded(
        $"{build.Verdict.Word().ToUpperInvariant()} {MarkdownText.Summary(build.Name)}",
        $"{Vehicle(build, options)}\n\n"
            + $"{new MarkdownBuild(build, options, isOneOfMany: true).Text}");

    private static string Vehicle(BuildResult build, ReportOptions options) =>
        $"{MarkdownText.Plain(build.VehicleName)}, {MarkdownText.Code(FileNames.In(options.Root, build.File))}"
            + (VehicleWords.Note(build.StandIn) is { } note ? $"\n\n{MarkdownText.Prose(note)}" : "");

    private static string Word(BuildResult build) => $"**{build.Verdict.Word().ToUpperInvariant()}**";

    private static string Line(Problem problem, ReportOptions options) =>
        $"- **{(problem.Severity == Severity.Error ? "error" : "warning")}** "
            + $"{MarkdownText.Code((problem.At with { File = FileNames.In(options.Root, problem.At.File) }).ToString())} "
        + $"{MarkdownText.Prose(problem.Message)} ({MarkdownText.Code(problem.Code)})";
}
