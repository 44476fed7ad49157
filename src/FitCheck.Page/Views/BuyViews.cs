using FitCheck.Evaluation;
using FitCheck.Lists;
using FitCheck.Reports.Html;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>What to buy, and what the rules miss on the list.</summary>
internal static class BuyViews
{
    public static BuyView Of(BuildResult build, PartsList? list) => new(new BuildListView("buy", BuildViews.ListOf(build)),
        list is null ? [] : [.. list.Asked.Select(a => new AskedView(a.Line.Name, ListWords.ToBuy(a.Line), ListPrices.Sum(a.Line),
            string.Join("; ", ListWords.By(a.By).Select(b => $"{b.Title} ({b.Where})"))))],
        list is null ? [] : [.. ListWords.Missing(list).Select(m => $"{m.Text} ({m.Rule})")]);
}
