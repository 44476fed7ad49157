using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Lists;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Lists;

/// <summary>For a person, on a screen or on paper.</summary>
internal sealed class ListHtml : IListReport
{
    public string Format => "html";

    public void Write(ListResult result, ReportOptions options, TextWriter output)
    {
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        var title = result.Builds.Count == 1 ? result.Builds[0].Name : Sentences.Count(result.Builds.Count, "build", "builds");
        var builds = result.Builds.Select((l, i) => Of(l, result.Tax, $"l{Figures.Whole(i + 1)}")).ToList();
        var page = new ListPageView(title, templates.Styled(options.StyleAddress), builds, ListWords.Basis(result.Tax, result.Builds),
            Sentences.LastWord,
            result.Program, result.CatalogDigest, options.Customer);
        output.Write(templates.Render("parts", page).ToString());
    }

    private static PartsView Of(PartsList list, Tax tax, string id) => new()
    {
        Id = id,
        Name = list.Name,
        Vehicle = VehicleWords.Of(list),
        Tables =
        [
            new PartsTableView($"{id}-build", ListWords.Parts, null, [.. list.Lines.Select(l => Row(l, []))],
                list.Lines.Count == 0 ? [] : Sums(list.Totals, "Total", tax)),
            .. list.Asked.Count == 0 ? [] : new[]
            {
                new PartsTableView($"{id}-asked", ListWords.Asked, ListWords.WhatAskedIs,
                    [.. list.Asked.Select(a => Row(a.Line, [.. ListWords.By(a.By).Select(b => new ByView(b.Rule, b.Title, b.Where))]))],
                    [.. Sums(list.AskedTotals, "Subtotal", tax), .. Sums(list.AllTotals, "Everything together", tax)]),
            },
        ],
        Unanswered = [.. ListWords.Missing(list).Select(m => new MissingView(m.Text, m.Rule))],
        UnansweredTitle = ListWords.Unanswered,
        Counted = ListPrices.Counted(list.Lines),
        Budget = ListWords.Budget(list, tax),
        File = Figures.ShortFile(list.File),
    };

    private static PartsRowView Row(ListLine line, IReadOnlyList<ByView> by) =>
        new(line.Name, line.Part, Figures.Whole(line.Needed), ListWords.ToBuy(line), ListPrices.Price(line), ListPrices.Sum(line),
            Sentences.Availability(line.Availability), ListWords.Left(line), ListPrices.Difference(line), by);

    private static List<SumView> Sums(IReadOnlyList<Money> totals, string word, Tax tax) =>
        [.. totals.SelectMany(t => ListWords.Taxed(tax, t).Prepend((Label: word, Amount: t)))
            .Select(s => new SumView(s.Label, s.Amount.ToString()))];
}

internal sealed record ListPageView(string Title, SafeHtml Style, IReadOnlyList<PartsView> Builds, string Basis, string LastWord,
    string Program, string Digest, string? Customer);

internal sealed record PartsView
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string Vehicle { get; init; }
    public required string File { get; init; }
    public required IReadOnlyList<PartsTableView> Tables { get; init; }
    public required string UnansweredTitle { get; init; }
    public required IReadOnlyList<MissingView> Unanswered { get; init; }
    public required string? Counted { get; init; }
    public required string? Budget { get; init; }
}

internal sealed record PartsTableView(string Id, string Title, string? Lead, IReadOnlyList<PartsRowView> Rows, IReadOnlyList<SumView> Sums);

internal sealed record PartsRowView(string Name, string Part, string Used, string Buy, string Price, string Sum, string Note, string Left,
    string? Quoted, IReadOnlyList<ByView> By);

internal sealed record ByView(string Rule, string Title, string Where);

internal sealed record MissingView(string Text, string Rule);

internal sealed record SumView(string Label, string Amount);
