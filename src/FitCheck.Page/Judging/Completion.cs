using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Page.Judging;

/// <summary>
/// A driver that does not go together as it is may do so on a spacer or in a cup, and with a harness adapter: then these are offered
/// together, judged as the build would be with all of them.
/// </summary>
internal sealed class Completion(Checker checker, ChoiceSlot slot, IReadOnlySet<string> work)
{
    private static readonly string[] Mountings = ["spacer", "tweeter cup"], Plugs = ["harness adapter"];

    private static readonly ChoiceOptions Wanted = new() { Only = [.. Mountings, .. Plugs] };

    // The two sides of a car, and tweeters beside woofers.
    private const int MostPlaces = 8;

    /// <summary>Each offer with what suits it best; as it is where nothing makes it better, or where it does go together.</summary>
    /// <param name="offers">Choices of the slot, each with what it would bring alone, and the build before it.</param>
    /// <param name="cancel">Looked at before each.</param>
    public IReadOnlyList<Offer> Of(IReadOnlyList<(BuildChoice Choice, Offer Alone, BuildResult? Before)> offers, CancellationToken cancel)
    {
        if (slot.What is not ("driver" or "component set"))
            return [.. offers.Select(o => o.Alone)];
        var drafts = offers.Select(o => o is { Alone.Here: Status.Fail, Before: not null }
            && new Draft(checker, o.Choice.Name, o.Choice.Text, slot.Where, cancel) is { Fitted.Count: > 0 and <= MostPlaces } draft
                ? draft : null).ToList();
        var mounts = Mounts([.. drafts.OfType<Draft>()], cancel);
        var all = new Offer[offers.Count];
        Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            var (choice, alone, before) = offers[i];
            all[i] = drafts[i] is { } draft ? Completed(draft, mounts, choice, alone, before!) ?? alone : alone;
        });
        return all;
    }

    private Offer? Completed(Draft draft, IReadOnlyDictionary<(string, string), Part> mounts, BuildChoice choice, Offer alone,
        BuildResult before)
    {
        foreach (var place in draft.Fitted.Where(p => p.Adapter is null && p.Cup is null))
        {
            if (mounts.GetValueOrDefault((place.Position.Id, place.Driver!.Part.Id)) is { } mount)
                draft.Take(place.Position.Id, Mountings, mount.Id);
        }
        foreach (var place in draft.Fitted.Where(p => p.Harness is null))
        {
            if (Mating(place) is { } harness)
                draft.Take(place.Position.Id, Plugs, harness);
        }
        if (draft.Taken.Count == 0 || checker.Draft(choice.Name, draft.Text).Result is not { } after)
            return null;
        var offer = Offer.Of(choice, slot, before, after, work, draft.Taken) with { Text = draft.Text };
        return offer.Here < alone.Here || (offer.Here == alone.Here && offer.Appear < alone.Appear) ? offer : null;
    }

    // The best of each place by the rules of lengths and holes; none where the panel itself is the best.
    private IReadOnlyDictionary<(string, string), Part> Mounts(IReadOnlyList<Draft> drafts, CancellationToken cancel) =>
        drafts.Count == 0 ? new Dictionary<(string, string), Part>()
        : checker.BestMounts(drafts[0].Build!.Vehicle, slot.Where,
            [.. drafts.SelectMany(d => d.Fitted).Select(p => p.Driver!.Part).DistinctBy(d => d.Id, StringComparer.Ordinal)],
            drafts[0].Build!.Accepts, cancel);

    // The cheapest that mates on both ends.
    private string? Mating(FittedPosition place)
    {
        if (place.Position.Plug?.Value is not { } plug || place.Driver!.Part.Terminals is not { } terminals
            || (terminals.Type == "plug" && terminals.Family?.Value == plug))
            return null;
        return checker.Catalog.IdsOf("harness").Select(checker.Catalog.Find).OfType<Harness>()
            .Where(h => h.From?.Value == plug && h.To?.Takes(terminals) == true)
            .OrderBy(h => h.HasPrice ? h.Price.Value.Amount : decimal.MaxValue).ThenBy(h => h.Id, StringComparer.Ordinal)
            .FirstOrDefault()?.Id;
    }

    // A text to which choices are added one by one.
    private sealed class Draft(Checker checker, string name, string text, IReadOnlyList<string> where, CancellationToken cancel)
    {
        private readonly List<ChosenPart> _taken = [];
        private ChoicesOutcome? _choices;

        public string Text { get; private set; } = text;

        public Build? Build { get; private set; } = checker.Begun(name, text).Build;

        public IReadOnlyList<ChosenPart> Taken => _taken;

        /// <summary>The places of the slot that have a driver of the build.</summary>
        public IReadOnlyList<FittedPosition> Fitted =>
            [.. (Build?.Placed ?? []).Where(p => p.Driver is not null && where.Contains(p.Position.Id))];

        /// <summary>Takes a part at a position, where a slot has it; what came with the other side already is not taken twice.</summary>
        public void Take(string position, IReadOnlyList<string> what, string part)
        {
            if (Build!.Placed.FirstOrDefault(p => p.Position.Id == position) is not { } placed
                || new Part?[] { placed.Adapter?.Part, placed.Cup?.Part, placed.Harness?.Part }.Any(p => p?.Id == part))
                return;
            _choices ??= checker.Choices(BuildSource.Text(name, Text), Wanted, cancel);
            // What is handed comes with its counterpart for the other side.
            var choice = _choices.Result?.Slots.Where(s => what.Contains(s.What) && s.Where.Contains(position))
                .SelectMany(s => s.Choices).FirstOrDefault(c => c.Parts.Any(p => p.Id == part));
            if (choice is null || checker.Begun(name, choice.Text).Build is not { } with)
                return;
            (Text, Build, _choices) = (choice.Text, with, null);
            _taken.AddRange(choice.Parts.Where(p => !_taken.Exists(t => t.Id == p.Id)));
        }
    }
}
