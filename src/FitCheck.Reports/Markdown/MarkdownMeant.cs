using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Markdown;

/// <summary>The builds of a run with `--as-expected`: those that are as meant are counted, the others told.</summary>
internal static class MarkdownMeant
{
    private const int MostRows = 40;

    public static void Write(MarkdownPage page, CheckResult result, ReportOptions options)
    {
        var builds = Meant.Of(result, options);
        page.Add($"### FitCheck: {Meant.Headline(builds)}");
        page.Add(string.Join(", ", Sentences.WorstFirst.Select(s => (Status: s, Count: builds.Count(b => b.Build.Verdict == s)))
            .Where(c => c.Count > 0).Select(c => $"{Figures.Whole(c.Count)} {c.Status.Word()}")));
        var told = builds.Where(b => !b.IsMet).ToList();
        var fitting = told.TakeWhile(b => page.Add(Told(b, options))).Count();
        if (fitting < told.Count)
            page.Add($"{Sentences.Count(told.Count - fitting, "more build is", "more builds are")} left out to keep this short; "
                + "`fitcheck check` tells all.");
        Rows(page, "Waiting for a measurement", [.. builds.Where(b => b.IsMet && b.Build is { Expected: null, Verdict: Status.Measure })
            .Select(b => $"{Sentences.Count(Tally.OfPoints(b.Build.Findings).Measure, "point", "points")}: {Name(b.Build, options)}")]);
        Rows(page, "On the strength of waivers", [.. builds.Where(b => b.Build.RestingOn.Count > 0)
            .Select(b => $"{b.Build.Verdict.Word()}, {Headline.Count(b.Build)}: {Name(b.Build, options)}")]);
    }

    private static void Rows(MarkdownPage page, string title, IReadOnlyList<string> rows)
    {
        if (rows.Count == 0)
            return;
        var more = rows.Count > MostRows ? $"\n\n{Figures.Whole(rows.Count - MostRows)} more." : "";
        page.Add(MarkdownPage.Folded($"{title}: {Sentences.Count(rows.Count, "build", "builds")}",
            string.Join('\n', rows.Take(MostRows).Select(r => $"- {r}")) + more));
    }

    private static string Told(Meant build, ReportOptions options) => $"**{Name(build.Build, options)}**\n\n"
        + (build.Build.Expected is null ? new MarkdownBuild(build.Build, options, isOneOfMany: true).Text
            : string.Join('\n', build.Unmet.Select(p => $"- {MarkdownText.Prose(p.Message)} {MarkdownText.Code(Place(p.At, options))}")));

    private static string Place(Location at, ReportOptions options) =>
        (at with { File = FileNames.In(options.Root, at.File) }).ToString();

    private static string Name(BuildResult build, ReportOptions options) =>
        $"{MarkdownText.Plain(build.Name)}, {MarkdownText.Code(FileNames.In(options.Root, build.File))}";
}
