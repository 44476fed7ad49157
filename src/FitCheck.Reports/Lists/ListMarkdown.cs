using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Lists;
using FitCheck.Reports.Format;
using FitCheck.Reports.Markdown;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Lists;

/// <summary>For a message or a page of notes.</summary>
internal sealed class ListMarkdown : IListReport
{
    public string Format => "markdown";

    public void Write(ListResult result, ReportOptions options, TextWriter output)
    {
        var blocks = result.Builds.SelectMany(l => Blocks(l, result.Tax))
            .Append($"_{MarkdownText.Plain(ListWords.Basis(result.Tax, result.Builds))}_");
        output.Write(string.Join("\n\n", blocks) + "\n");
    }

    private static IEnumerable<string> Blocks(PartsList list, Tax tax)
    {
        yield return $"### {ListWords.Parts}: {MarkdownText.Plain(list.Name)}";
        yield return MarkdownText.Plain(VehicleWords.Of(list));
        if (list.Lines.Count > 0)
            yield return Table(list.Lines.Select(l => Row(l, "")), list.Totals, "Total", tax);
        if (ListPrices.Counted(list.Lines) is { } counted)
            yield return MarkdownText.Plain(counted);
        if (list.Asked.Count > 0)
        {
            yield return $"**{ListWords.Asked}.** {ListWords.WhatAskedIs}";
            yield return Table(list.Asked.Select(a => Row(a.Line, By(a))), list.AskedTotals, "Subtotal", tax);
            yield return $"**Everything together:** "
                + $"{string.Join("; ", list.AllTotals.Select(t => string.Join(", ", ListWords.Taxed(tax, t).Select(x => $"{x.Label} "
                + $"{x.Amount}").Prepend(t.ToString()))))}";
        }
        if (list.Unanswered.Count > 0)
            yield return $"**{ListWords.Unanswered}**\n\n{string.Join('\n', ListWords.Missing(list).Select(m => $"- "
                + $"{MarkdownText.Plain(m.Text)} {MarkdownText.Code(m.Rule)}"))}";
        if (ListWords.Budget(list, tax) is { } budget)
            yield return MarkdownText.Plain(budget);
    }

    private static string Table(IEnumerable<string> rows, IReadOnlyList<Money> totals, string word, Tax tax)
    {
        var sums = totals.SelectMany(t => ListWords.Taxed(tax, t).Prepend((Label: word, Amount: t)))
            .Select(t => $"| **{t.Label}** | | | **{t.Amount}** | |");
        return string.Join('\n', rows.Concat(sums).Prepend("|---|---|--:|--:|---|").Prepend("| Part | To buy | Price | Sum | |"));
    }

    private static string Row(ListLine line, string by) =>
        $"| {MarkdownText.Plain(line.Name)} | {ListWords.ToBuy(line)} | {MarkdownText.Plain(ListPrices.Price(line))} | "
            + $"{MarkdownText.Plain(ListPrices.Sum(line))} | {MarkdownText.Plain(Note(line))}{by} |";

    private static string Note(ListLine line) =>
        string.Join("; ", new[] { ListWords.Note(line), ListPrices.Difference(line) }.Where(n => !string.IsNullOrEmpty(n)));

    private static string By(AskedLine asked) =>
        string.Concat(ListWords.By(asked.By).Select(b => $"<br>asked for by {MarkdownText.Code(b.Rule)}: {MarkdownText.Plain(b.Where)}"));
}
