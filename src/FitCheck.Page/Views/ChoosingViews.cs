using FitCheck.Findings;
using FitCheck.Page.Judging;
using FitCheck.Page.State;
using FitCheck.Reports.Html;
using FitCheck.Reports.Suggestions;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>What could stand at a slot, each judged before it is taken.</summary>
internal static class ChoosingViews
{
    /// <summary>The judged ones, best first, and how to go on with the others.</summary>
    /// <param name="slot">The slot.</param>
    /// <param name="text">The text of the build.</param>
    /// <param name="offers">Those that were judged.</param>
    /// <param name="next">How many are judged next; null where all are.</param>
    public static ChoosingView Of(ChoiceSlot slot, string text, IReadOnlyList<Offer> offers, int? next)
    {
        var best = Offer.BestFirst(offers);
        return new ChoosingView
        {
            Key = SlotKey.Of(slot),
            Id = $"options-{Mark.Of(text, SlotKey.Of(slot))}",
            What = slot.What,
            Where = Names.Joined(slot.WhereNames),
            Now = slot.NowName ?? slot.Now ?? "nothing",
            Offers = [.. best.Select(o => View(o, slot, text))],
            Next = next is { } count ? Figures.Whole(count) : null,
            Progress = slot.Choices.Count == 0 ? "The catalog has nothing else for it."
                : next is null ? $"{Sentences.Count(offers.Count, "choice", "choices")}, each judged as the whole build would be with it."
                : $"{Figures.Whole(offers.Count)} of {Figures.Whole(slot.Choices.Count)} choices judged so far.",
        };
    }

    private static OfferView View(Offer offer, ChoiceSlot slot, string text)
    {
        var own = offer.Text is null ? offer.Parts : [.. offer.Parts.Take(1)];
        var room = offer.Least is { Margin: { } margin } least ? (margin, Figures.Margin(least)) : ((double, string?)?)null;
        return new OfferView
        {
            Action = offer.Text is { } with ? $"step:{Step.Between(text, with)}" : $"take:{offer.Choice}",
            Id = $"take-{Mark.Of(offer.Choice)}",
            Name = own.Count > 0 ? Names.Joined(own.Select(p => p.Name)) : offer.Value ?? $"no {slot.What}",
            With = offer.Parts.Count > own.Count ? Names.Joined(offer.Parts.Skip(own.Count).Select(p => p.Name)) : null,
            Status = offer.Here is { } here ? FindingViews.Status(here) : null,
            Because = offer.Because,
            Elsewhere = offer.Whole is { } whole && whole > offer.Here ? $"the whole build: {whole.Word()}" : null,
            Bar = room is { } r ? RoomBar.Draw(r.Item1) : null,
            Room = room is not { } left ? null : left.Item1 < 0 ? $"{Figures.Show(-left.Item1, "mm")} short" : $"{left.Item2} to spare",
            Work = offer.Work == 0 ? null : $"work: {Sentences.Count(offer.Work, "point", "points")}",
            Price = offer.Difference.Count == 0 ? "same price" : string.Join(", ", offer.Difference.Select(SuggestionWords.Signed)),
            Note = offer.Parts.Select(p => Sentences.Availability(p.Availability)).FirstOrDefault(a => a.Length > 0),
            IsPossible = offer.Here is not null,
            IsNow = offer.Value is not null && offer.Value == slot.Now,
        };
    }
}
