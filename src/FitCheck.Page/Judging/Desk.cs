using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Page.Judging;

/// <summary>
/// Judges texts, and what choices would bring. The last answers are kept, since a page asks for the same text again and again; they go as
/// soon as catalog or rules are others.
/// </summary>
internal sealed class Desk(Checker checker)
{
    // A text and the one before it, for some people at once.
    private const int MostTexts = 48;
    private const int MostOffers = 4_000;

    private volatile Known _known = new(checker.Opened, checker.Today);

    public Checker Checker => checker;

    /// <summary>The day that is written beside a reading.</summary>
    public DateOnly Today => checker.Today;

    /// <summary>What a check says of a text, looked at by one thread at a time.</summary>
    public T Of<T>(string name, string text, Func<Judged, T> look)
    {
        var texts = Now().Texts;
        if (!texts.TryGet((name, text), out var judged))
            texts.Put((name, text), judged = new Judged(text, checker.Draft(name, text),
                wanted => checker.Choices(BuildSource.Text(name, text), wanted)));
        lock (judged!)
            return look(judged);
    }

    /// <summary>What choices would bring, in the order in which they were given.</summary>
    public IReadOnlyList<Offer> Offers(IReadOnlyList<BuildChoice> choices, ChoiceSlot slot, CancellationToken cancel)
    {
        var known = Now().Offers;
        var offers = new Offer?[choices.Count];
        var open = new List<int>();
        for (var i = 0; i < choices.Count; i++)
        {
            if (known.TryGet((choices[i].Before, choices[i].Id), out var offer))
                offers[i] = offer;
            else
                open.Add(i);
        }
        var work = checker.Rules.Rules.Where(r => r.TellsOfWork).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var outcomes = checker.Previews([.. open.Select(i => choices[i])], cancel: cancel);
        var alone = open.Select((of, j) =>
            (choices[of], Offer.Of(choices[of], slot, outcomes[j], work), outcomes[j].Result?.Before)).ToList();
        foreach (var (of, offer) in open.Zip(new Completion(checker, slot, work).Of(alone, cancel)))
        {
            offers[of] = offer;
            known.Put((choices[of].Before, choices[of].Id), offer);
        }
        return [.. offers.OfType<Offer>()];
    }

    // Whoever began with another state goes on with what was known of that, so that nothing of it comes among what is known now.
    private Known Now()
    {
        var (known, opened, day) = (_known, checker.Opened, checker.Today);
        return ReferenceEquals(known.Opened, opened) && known.Day == day ? known : _known = new Known(opened, day);
    }

    // Of one state of catalog and rules, and one day: waivers end.
    private sealed record Known(object Opened, DateOnly Day)
    {
        public Recent<(string Name, string Text), Judged> Texts { get; } = new(MostTexts);

        public Recent<(string Text, string Choice), Offer> Offers { get; } = new(MostOffers);
    }
}
