using FitCheck.Catalog;

namespace FitCheck.Cli.Asking;

/// <summary>What drives the new drivers: the factory radio, or an amplifier with what it needs before it and for its power.</summary>
internal sealed class DriveQuestions(PartsCatalog catalog, DraftJudge judge, IQuestions ask)
{
    private const string Radio = "radio";

    private static readonly Choice[] Places =
    [
        new("cargo", "in the cargo space or boot", ShowsId: false), new("under-seat", "under a front seat", ShowsId: false),
        new("dash", "behind the dashboard", ShowsId: false),
    ];

    /// <summary>The build with what drives it.</summary>
    public BuildDraft Ask(BuildDraft draft)
    {
        var amplifiers = All<Amplifier>("amplifier").Where(a => a.Channels >= draft.Outputs.Count).ToList();
        if (amplifiers.Count == 0)
            return draft;
        var ways = amplifiers.ConvertAll(a => Ways(draft, a, [null, .. Converters(draft)], "cargo"));
        IReadOnlyList<DraftVerdict> verdicts =
            judge.BestOf([[draft], .. ways.Select(w => w.Select(d => draft with { Drive = d }).ToList())]);
        List<(Amplifier? Amplifier, DraftVerdict Verdict)> ordered =
            [(null, verdicts[0]), .. amplifiers.Select((a, i) => ((Amplifier?)a, verdicts[i + 1])).OrderBy(o => o.Item2)
                .ThenBy(o => o.Item1!.Price.Value.Amount)];
        // Without one nothing is to be bought: an amplifier comes first only where nothing plays without, or the radio is too weak for a
        // pass.
        if (ordered.Count > 1 && ordered[1].Verdict.Rank.CompareTo(ordered[0].Verdict.Rank) < 0)
            ordered = [.. ordered.OrderBy(o => o.Verdict.Rank)];
        var id = ask.One("Which amplifier drives them?",
            [.. ordered.Select(
                o => o.Amplifier is null ? new Choice(Radio, $"none, the factory radio does, {o.Verdict.Of()}", ShowsId: false)
                : new Choice(o.Amplifier.Id, $"{o.Amplifier.Name}, {o.Amplifier.Price.Value}, {o.Verdict.Of(o.Amplifier.Id)}"))]).Id;
        return ordered.Find(o => (o.Amplifier?.Id ?? Radio) == id).Amplifier is { } chosen ? Supplied(draft, chosen) : draft;
    }

    private BuildDraft Supplied(BuildDraft draft, Amplifier amplifier)
    {
        var place = ask.One("Where does it sit?", Places).Id;
        List<LineConverter?> converters = [null, .. Converters(draft)];
        var converter = Chosen("Which line converter goes before it?", draft,
            converters.ConvertAll(c => ((Part?)c, Ways(draft, amplifier, [c], place))),
            "none, the radio's speaker wires go to the amplifier");
        List<WiringPart?> cables = [.. Cables(), null];
        return Chosen("Which power cable?", converter,
            cables.ConvertAll(c => ((Part?)c, (IReadOnlyList<DriveDraft>)[converter.Drive! with { Cable = c }])), "none yet");
    }

    // Of the ways that come with an offer the best is taken.
    private BuildDraft Chosen(string question, BuildDraft draft, List<(Part? Part, IReadOnlyList<DriveDraft> Ways)> offers, string none)
    {
        List<List<BuildDraft>> drafts = offers.ConvertAll(o => o.Ways.Select(w => draft with { Drive = w }).ToList());
        var verdicts = judge.BestOf(drafts);
        var ordered = offers.Select((o, i) => (o.Part, Drafts: drafts[i], Verdict: verdicts[i])).OrderBy(o => o.Verdict)
            .ThenBy(o => o.Part?.Price.Value.Amount ?? 0).ToList();
        var id = ask.One(question, [.. ordered.Select(o => o.Part is null ? new Choice("", $"{none}, {o.Verdict.Of()}")
            : new Choice(o.Part.Id, $"{o.Part.Name}, {o.Part.Price.Value}, {o.Verdict.Of(o.Part.Id)}"))]).Id;
        var chosen = ordered.Find(o => (o.Part?.Id ?? "") == id).Drafts;
        return chosen.Zip(judge.Of(chosen)).MinBy(c => c.Second).First;
    }

    private IReadOnlyList<DriveDraft> Ways(BuildDraft draft, Amplifier amplifier, IReadOnlyList<LineConverter?> converters, string place) =>
        [.. from converter in converters.Take(4)
            from highPass in draft.Outputs.Any(o => o.Feeds.Any(p => p.Role != "subwoofer")) ? new[] { true, false } : [false]
            select new DriveDraft(amplifier, converter, Cables().FirstOrDefault(c => c.Type == "power-kit"), place, highPass)];

    private IEnumerable<LineConverter> Converters(BuildDraft draft) => All<LineConverter>("line-converter")
        .Where(c => c.Channels >= draft.Outputs.Count(o => o.Feeds[0].FactoryChannel is not null));

    private IEnumerable<WiringPart> Cables() => All<WiringPart>("wiring").Where(w => w.Type is "power-kit" or "power-cable")
        .OrderByDescending(w => w.Type == "power-kit");

    private IEnumerable<T> All<T>(string kind) where T : Part =>
        catalog.IdsOf(kind).Select(catalog.Find).OfType<T>().OrderBy(p => p.Price.Value.Amount).ThenBy(p => p.Id, StringComparer.Ordinal);
}
