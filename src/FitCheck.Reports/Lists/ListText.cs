using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Lists;
using FitCheck.Reports.Format;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Lists;

/// <summary>For a terminal.</summary>
internal sealed class ListText : IListReport
{
    public string Format => "text";

    public void Write(ListResult result, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        for (var i = 0; i < result.Builds.Count; i++)
        {
            if (i > 0)
                page.Rule();
            Write(page, result.Builds[i], result.Tax);
        }
    }

    private static void Write(TextPage page, PartsList list, Tax tax)
    {
        page.Heading(list.Name);
        page.Line(0, VehicleWords.Of(list));
        page.Gap();
        var all = list.Lines.Concat(list.Asked.Select(a => a.Line)).ToList();
        var widths = new Widths(
            all.Select(l => Buy(l).Length).Append("of it 19 % tax".Length).Max(),
            all.Select(l => ListPrices.Sum(l).Length).Concat(list.AllTotals.Select(t => tax.Of(t).Paid.ToString().Length)).DefaultIfEmpty(0)
                .Max(),
            all.Select(l => ListWords.Note(l).Length).DefaultIfEmpty(0).Max());
        page.Heading(ListWords.Parts);
        if (list.Lines.Count == 0)
            page.Line(2, "Nothing: the build names no part.");
        foreach (var line in list.Lines)
            Row(page, line, widths);
        Sums(page, list.Lines.Count == 0 ? [] : list.Totals, "Total", tax, widths);
        if (ListPrices.Counted(list.Lines) is { } counted)
            page.Hanging(2, "", counted);
        page.Gap();
        WriteAsked(page, list, tax, widths);
        if (ListWords.Budget(list, tax) is { } budget)
            page.Line(0, budget);
        page.Line(0, ListWords.Basis(tax, [list]), TextStyle.Faint);
        page.Gap();
    }

    private static void WriteAsked(TextPage page, PartsList list, Tax tax, Widths widths)
    {
        if (list.Asked.Count > 0)
        {
            page.Heading(ListWords.Asked);
            page.Line(2, ListWords.WhatAskedIs, TextStyle.Faint);
            foreach (var asked in list.Asked)
            {
                Row(page, asked.Line, widths);
                foreach (var (rule, title, where) in ListWords.By(asked.By))
                    page.Hanging(4, "asked for by ", $"{rule} ({title}): {where}");
            }
            Sums(page, list.AskedTotals, "Subtotal", tax, widths);
            page.Gap();
            page.Heading("Everything together");
            Sums(page, list.AllTotals, "Total", tax, widths);
            page.Gap();
        }
        if (list.Unanswered.Count == 0)
            return;
        page.Heading(ListWords.Unanswered);
        foreach (var (rule, text) in ListWords.Missing(list))
            page.Hanging(2, "- ", $"{text} [{rule}]");
        page.Gap();
    }

    private static void Row(TextPage page, ListLine line, Widths widths)
    {
        page.Row(Buy(line).PadRight(widths.Buy), line.Name, ListPrices.Sum(line).PadLeft(widths.Sum), ListWords.Note(line), widths.Note);
        if (ListPrices.Difference(line) is { } difference)
            page.Hanging(4, "", difference);
    }

    private static void Sums(TextPage page, IReadOnlyList<Money> totals, string word, Tax tax, Widths widths)
    {
        foreach (var total in totals)
        {
            Sum(word, total);
            foreach (var (label, amount) in ListWords.Taxed(tax, total))
                Sum(label, amount);
        }

        void Sum(string label, Money amount) =>
            page.Row(label.PadRight(widths.Buy), "", amount.ToString().PadLeft(widths.Sum), "", widths.Note);
    }

    // The price of one pack stands with the packs where there are several.
    private static string Buy(ListLine line) => line.Packs > 1 ? $"{ListWords.ToBuy(line)} at {line.Price}" : ListWords.ToBuy(line);

    private sealed record Widths(int Buy, int Sum, int Note);
}
