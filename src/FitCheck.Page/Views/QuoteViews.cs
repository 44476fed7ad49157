using FitCheck.Page.Acting;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>What a seller's list leaves open, a question each.</summary>
internal static class QuoteViews
{
    public static QuoteView Of(QuoteState quote) => new(quote.Name, Convert.ToBase64String(quote.Bytes),
        [.. quote.As.Select(a => a.Split('=', 2)).Select(a => new QuoteKeptView(QuoteAction.LineField(a[0]), a[1])),
            .. quote.Skip.Select(s => new QuoteKeptView(QuoteAction.LineField(Figures.Whole(s)), QuoteAction.Nothing)),
            .. quote.At.Select(a => a.Split('=', 2)).Select(a => new QuoteKeptView(QuoteAction.PlaceField(a[0]), a[1]))],
        [.. quote.Lines.Select(l => new QuoteLineView(QuoteAction.LineField(Figures.Whole(l.Line)), Figures.Whole(l.Line), l.Text,
            [.. l.Near.Select(p => new ChosenView(p.Id, p.HasPrice ? $"{p.Name}, {p.Price.Value}" : p.Name)),
                new ChosenView(QuoteAction.Nothing, "none of the catalog: leave the line out")]))],
        [.. quote.Places.Select(p => new QuotePlaceView(QuoteAction.PlaceField(p.Item.Part.Id), p.Item.Part.Name,
            [.. p.Options.Select(o => new ChosenView(o.Ids, Names.Joined(o.Places.Select(x => x.Position.Name)))),
                new ChosenView(QuoteAction.Nothing, "nowhere yet: it stays on the list only")]))]);
}
