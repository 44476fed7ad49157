using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Page.Judging;

/// <summary>
/// A driver that does not go together as it is may do so on a spacer or in a cup, and with a harness adapter: then these are offered
/// together, judged as the build would be with all of them.
/// </summary>
internal sealed class Completion(Checker checker, IReadOnlySet<string> work)
{
    private static readonly string[] Mountings = ["spacer", "tweeter cup"], Plugs = ["harness adapter"];

    private static readonly ChoiceOptions Wanted = new() { Only = [.. Mountings, .. Plugs] };

    // The two sides of a car, and tweeters beside woofers.
    private const int MostPlaces = 8;

    /// <summary>The offer with what suits it best; null where nothing makes it better.</summary>
    public Offer? Of(BuildChoice choice, ChoiceSlot slot, Offer alone, BuildResult before, CancellationToken cancel)
    {
        var draft = new Draft(checker, choice.Name, choice.Text, slot.Where, cancel);
        if (draft.Fitted.Count is 0 or > MostPlaces)
            return null;
        foreach (var (position, mount) in Mounts(draft, cancel))
            draft.Take(position, Mountings, mount);
        foreach (var place in draft.Fitted.Where(p => p.Harness is null))
        {
            if (Mating(place) is { } harness)
                draft.Take(place.Position.Id, Plugs, harness);
        }
        if (draft.Taken.Count == 0 || draft.Result is not { } after)
            return null;
        var offer = Offer.Of(choice, slot, before, after, work, draft.Taken) with { Text = draft.Text };
        return offer.Here < alone.Here || (offer.Here == alone.Here && offer.Appear < alone.Appear) ? offer : null;
    }

    // The best mount of each place by the rules of lengths and holes; none where the panel itself is the best.
    private IEnumerable<(string Position, string Mount)> Mounts(Draft draft, CancellationToken cancel)
    {
        var build = draft.Build!;
        var rows = checker.Chart(new ChartOptions
        {
            Slice = new ChartSlice
            {
                Vehicles = [build.Vehicle.Id],
                Drivers = [.. draft.Fitted.Select(p => p.Driver!.Part.Id).Distinct(StringComparer.Ordinal)],
                Accepts = [.. build.Accepts.Where(ChartSlice.Work.Contains).Order(StringComparer.Ordinal)],
            },
        }, cancel).Result?.Rows ?? [];
        return from place in draft.Fitted
               where place.Adapter is null && place.Cup is null
               let row = rows.FirstOrDefault(r => r.Position.Id == place.Position.Id && r.Driver.Id == place.Driver!.Part.Id)
               where row?.Mount is not null
               select (place.Position.Id, row.Mount!.Id);
    }

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
        private DraftOutcome _judged = checker.Draft(name, text);
        private ChoicesOutcome? _choices;

        public string Text { get; private set; } = text;

        public Build? Build => _judged.Build;

        public BuildResult? Result => _judged.Result;

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
            if (choice is null || checker.Draft(name, choice.Text) is not { Result: not null } judged)
                return;
            (Text, _judged, _choices) = (choice.Text, judged, null);
            _taken.AddRange(choice.Parts.Where(p => !_taken.Exists(t => t.Id == p.Id)));
        }
    }
}
