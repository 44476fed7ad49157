using FitCheck.Foundation.Problems;
using FitCheck.Impacts;
using FitCheck.Reports.Format;
using FitCheck.Reports.Markdown;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Impacts;

/// <summary>For a comment on a pull request: what gets worse stands open, all else folds away.</summary>
internal sealed class ImpactMarkdown : IImpactReport
{
    public string Format => "markdown";

    public void Write(ImpactResult result, ReportOptions options, TextWriter output)
    {
        var page = new MarkdownPage();
        page.Add($"### {MarkdownText.Plain(ImpactWords.Verdict(result))}");
        page.Add($"From {MarkdownText.Code(result.From)} to {MarkdownText.Code(result.To)}. "
            + $"{MarkdownText.Plain(ImpactWords.Extent(result))}");
        var left = page.AddLines([.. result.Builds.Where(b => b.IsWorse).SelectMany(Build)]);
        left += Folded(page, "Builds that change otherwise",
            [.. result.Builds.Where(b => !b.IsWorse && ImpactWords.IsTold(b)).SelectMany(Build)]);
        left += Folded(page, "Pairs of the chart that flip",
            [.. ImpactWords.Pairs(result).Select(p => $"- {MarkdownText.Prose(ImpactWords.Pair(p))}")]);
        left += Folded(page, "Rules",
            [.. result.Rules.Select(
                r => $"- {MarkdownText.Code(r.Rule)} {ImpactWords.Word(r.Change)}: {MarkdownText.Plain(r.What)} ("
                    + $"{MarkdownText.Code(Figures.Place(r.At))})")]);
        left += Folded(page, "Entries", [.. result.Entries.SelectMany(Entry)]);
        if (left > 0)
            page.Add($"{Sentences.Count(left, "line has", "lines have")} no room here; `fitcheck impact` tells them all.");
        output.Write(page.ToString());
    }

    private static int Folded(MarkdownPage page, string heading, IReadOnlyList<string> lines)
    {
        const int room = 40;
        if (lines.Count == 0)
            return 0;
        return page.Add(
            MarkdownPage.Folded($"{heading} ({Figures.Whole(lines.Count(l => l.StartsWith('-')))})", string.Join('\n', lines.Take(room))))
                ? Math.Max(0, lines.Count - room) : lines.Count;
    }

    private static IEnumerable<string> Build(BuildChange build)
    {
        yield return $"- **{MarkdownText.Plain(build.Name)}** {ImpactWords.Fate(build)}"
            + $"{(build.IsWorse && build.Accepted ? " (accepted)" : "")}. {MarkdownText.Code(Figures.Place(build.At))}";
        foreach (var problem in build.Problems)
            yield return $"  - {MarkdownText.Prose(problem.Message)} ({MarkdownText.Code(Figures.Place(problem.At))})";
        foreach (var (change, where) in ImpactWords.Findings(build))
        {
            yield return $"  - {ImpactWords.Step(change)}, {MarkdownText.Plain(where)}: {MarkdownText.Prose(change.Finding.Message)} "
                + $"{MarkdownText.Code(change.Finding.Rule)}";
            foreach (var cause in change.Causes)
                yield return $"    - because {MarkdownText.Plain(cause.What)} ({MarkdownText.Code(Figures.Place(cause.At))})";
        }
    }

    private static IEnumerable<string> Entry(EntryChange entry)
    {
        yield return $"- {MarkdownText.Plain(entry.Kind)} {MarkdownText.Code(entry.Id)} {ImpactWords.Word(entry.Change)} ("
            + $"{MarkdownText.Code(entry.At.File)})";
        foreach (var key in entry.Keys)
            yield return $"  - {MarkdownText.Plain(key.ToString())} (line {Figures.Whole(key.At.Line)})";
    }
}
