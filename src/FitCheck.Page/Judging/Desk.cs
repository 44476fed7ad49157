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
    private const int Texts = 48;
    private const int MostOffers = 4_000;

    private readonly Recent<string, Judged> _texts = new(Texts);
    private readonly Recent<(string Text, string Choice), Offer> _offers = new(MostOffers);
    private object _opened = checker.Opened;

    public Checker Checker => checker;

    /// <summary>The day that is written beside a reading.</summary>
    public DateOnly Today => checker.Today;

    /// <summary>What a check says of a text, looked at by one thread at a time.</summary>
    public T Of<T>(string name, string text, Func<Judged, T> look)
    {
        Renew();
        if (!_texts.TryGet(text, out var judged) || judged!.Result?.File is { } file && file != name)
            _texts.Put(text, judged = new Judged(text, checker.Draft(name, text), () => checker.Choices(BuildSource.Text(name, text))));
        lock (judged!)
            return look(judged);
    }

    /// <summary>What choices would bring, in the order in which they were given.</summary>
    public IReadOnlyList<Offer> Offers(IReadOnlyList<BuildChoice> choices, ChoiceSlot slot, CancellationToken cancel)
    {
        Renew();
        var offers = new Offer?[choices.Count];
        var open = new List<int>();
        for (var i = 0; i < choices.Count; i++)
        {
            if (_offers.TryGet((choices[i].Before, choices[i].Id), out var known))
                offers[i] = known;
            else
                open.Add(i);
        }
        var work = checker.Rules.Rules.Where(r => r.TellsOfWork).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var outcomes = checker.Previews([.. open.Select(i => choices[i])], cancel: cancel);
        Parallel.For(0, open.Count, new ParallelOptions { CancellationToken = cancel }, j =>
        {
            var choice = choices[open[j]];
            var offer = Offer.Of(choice, slot, outcomes[j], work);
            if (offer.Here == Status.Fail && slot.What is ("driver" or "component set") && outcomes[j].Result is { } preview)
                offer = new Completion(checker, work).Of(choice, slot, offer, preview.Before, cancel) ?? offer;
            offers[open[j]] = offer;
            _offers.Put((choice.Before, choice.Id), offer);
        });
        return [.. offers.OfType<Offer>()];
    }

    private void Renew()
    {
        var now = checker.Opened;
        if (ReferenceEquals(Interlocked.Exchange(ref _opened, now), now))
            return;
        _texts.Clear();
        _offers.Clear();
    }
}
