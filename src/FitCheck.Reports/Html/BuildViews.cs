using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Html;

/// <summary>Arranges one build for its page.</summary>
internal sealed class BuildViews
{
    private readonly BuildResult _build;
    private readonly string _id;
    private readonly Dictionary<Finding, string> _ids = new(ReferenceEqualityComparer.Instance);

    private BuildViews(BuildResult build, string id)
    {
        _build = build;
        _id = id;
        // Replaced by the id of the finding it is told with, once it has a card.
        for (var i = 0; i < build.Findings.Count; i++)
            _ids.Add(build.Findings[i], $"{id}-f{Figures.Whole(i + 1)}");
    }

    public static BuildView Of(BuildResult build, string id)
    {
        using var told = Lengths.Asked(build.Lengths);
        return new BuildViews(build, id).Arrange();
    }

    private BuildView Arrange()
    {
        var checks = Tally.OfPoints(_build.Findings);
        var positions = Alike.Positions(_build);
        var channels = Alike.Channels(_build);
        var positionCards = positions.Select((p, i) => PositionCard(p, $"{_id}-p{Figures.Whole(i + 1)}")).ToList();
        var channelCards = channels.Select((c, i) => ChannelCard(c, $"{_id}-c{Figures.Whole(i + 1)}")).ToList();
        var supply = SupplyCard();
        var whole =
            WholeCard([.. positions.SelectMany(p => p.Keys), .. channels.SelectMany(c => c.Keys), .. supply is null ? [] : Devices()]);
        return new BuildView
        {
            Id = _id,
            Name = _build.Name,
            Vehicle = VehicleWords.Of(_build),
            File = Figures.ShortFile(_build.File),
            Notes = Filled(_build.Notes),
            Verdict = FindingViews.Status(_build.Verdict),
            Sentence = Headline.Of(_build),
            Counts = [.. Sentences.WorstFirst.Select(s => new CountView(FindingViews.Status(s), Figures.Whole(checks[s])))],
            WaivedChecks = Figures.Whole(checks.Waived),
            Tasks = [.. MeasureFirst.Of(_build).Select(Task)],
            Changes = ToldOf(Status.Fail),
            Looks = ToldOf(Status.Warn),
            Positions = WorstFirst(positionCards),
            Channels = WorstFirst(channelCards),
            Supply = supply,
            Whole = whole,
            Settings = [.. _build.Settings.Select(s => new SettingView(Names.Joined(s.Where), s.What, s.Value))],
            List = List(),
            Cautions = _build.Cautions,
            LastWord = Sentences.LastWord,
            Proof = Proof(),
            Unjudged = positionCards.Concat(channelCards).Where(c => c.Status is null).Select(c => c.Name)
                .ToList() is { Count: > 0 } unjudged ? Names.Joined(unjudged) : null,
            ProofTitle = ProofTitle(checks.Pass),
            Sources = Sources(),
            Waived = [.. Told.Of(_build.Findings.Where(f => f.Waived is not null))
                .Select(t => FindingViews.Of(t, _ids[t.First]) with { Heading = "h3", Where = t.Where })],
            RuleChanges = [.. _build.RuleChanges.Select(c => $"{Sentences.Changed(c)} ({Figures.ShortPlace(c.At)})")],
            RuleChangesTitle = Sentences.RulesOfThisShop,
            RuleChangesLead = Sentences.WhatRulesOfThisShopAre,
            NotJudged = [.. Unjudged.Of(_build).Select(u => new UnjudgedView(u.Reason, u.Where, string.Join(", ", u.Rules)))],
            NotJudgedTitle = Unjudged.Title,
            NotJudgedLead = Unjudged.Lead(_build),
            Remarks = [.. _build.Remarks.Select(r => $"{r.Message} ({Figures.ShortPlace(r.At)})")],
        };
    }

    private List<FindingView> ToldOf(Status status) => [.. Told.Of(_build, status).Select(t => FindingViews.Of(t, _ids[t.First]))];

    // What fails or waits is not looked for among what stays as it is.
    private static List<CardView> WorstFirst(IEnumerable<CardView> cards) =>
        [.. cards.OrderByDescending(c => c.Status is { } status ? (int)StatusWords.Parse(status.Word)!.Value : -1)];

    private CardView PositionCard(Alike<Drawings.PositionDrawing> alike, string id)
    {
        List<string?> parts =
            [.. alike.Things.SelectMany(d => new[] { d.DriverName, d.AdapterName, d.CupName }).Distinct(StringComparer.Ordinal)];
        var isAsBefore = parts.TrueForAll(string.IsNullOrEmpty);
        if (Alike.HasMirrorImage(alike.Things))
            parts.Add($"drawn: {alike.Things[0].Name}; the other side is its mirror image");
        return Card(id, alike.Name, Joined(parts), alike.Shown is { } drawing ? Drawn(drawing, id) : [], alike.Keys)
            with
        { IsAsBefore = isAsBefore };
    }

    private static List<SafeHtml> Drawn(Drawings.PositionDrawing drawing, string id)
    {
        var drawings = new List<SafeHtml> { SectionDrawing.Draw($"{id}-section", drawing) };
        if (FacePlan.Draw($"{id}-face", drawing) is { } face)
            drawings.Add(face);
        return drawings;
    }

    private CardView ChannelCard(Alike<Drawings.LoadCurve> alike, string id)
    {
        var wirings = Alike.Wirings(_build.Wirings.Where(w => alike.Keys.Contains(w.Channel)))
            .Select((w, i) => WiringDrawing.Draw($"{id}-wiring{Figures.Whole(i + 1)}", w)).ToList();
        if (alike.Shown is not { } load)
            return Card(id, alike.Name, null, wirings, alike.Keys);
        var rated = load.RatedLoad is { } ohm ? $"Made for {Figures.Show(ohm, "ohm")} and more" : "The load that it is made for is unknown";
        var plots = new List<SafeHtml> { LoadPlot.Draw($"{id}-load", load) };
        if (TweeterPlot.Draw($"{id}-tweeters", load) is { } tweeters)
            plots.Add(tweeters);
        plots.AddRange(wirings);
        if (load.GainVolts is { } gain)
            rated += $" · {Sentences.Gain(gain)}";
        return Card(id, alike.Name, rated, plots, alike.Keys);
    }

    private HashSet<string> Devices() =>
        _build.Facts.Where(f => f.Subject == Subject.Device).Select(f => f.Key).ToHashSet(StringComparer.Ordinal);

    // Findings on devices and their cables stand beside the diagram of the supply.
    private CardView? SupplyCard()
    {
        if (_build.Supply is not { } supply)
            return null;
        var card = Card($"{_id}-supply-card", "Battery, cables and amplifiers", null, [SupplyDrawing.Draw($"{_id}-supply-line", supply)],
            Devices());
        return card with { Findings = Located(card.Findings), Passes = Located(card.Passes) };
    }

    // Parts and whatever else has no card of its own: their findings say what they are about.
    private CardView? WholeCard(HashSet<string> elsewhere)
    {
        var keys = _build.Findings.Select(f => f.Position).Where(p => !elsewhere.Contains(p)).ToHashSet(StringComparer.Ordinal);
        var card = Card($"{_id}-whole", "The build as a whole", null, [], keys);
        return card.Findings.Count + card.Passes.Count == 0 ? null
            : card with { Findings = Located(card.Findings), Passes = Located(card.Passes) };
    }

    private static List<FindingView> Located(IReadOnlyList<FindingView> findings) =>
        [.. findings.Select(f => f with { Where = f.Position })];

    private CardView Card(string id, string name, string? subtitle, IReadOnlyList<SafeHtml> drawings, IReadOnlySet<string> keys)
    {
        var findings = _build.Findings.Where(f => f.Waived is null && keys.Contains(f.Position)).ToList();
        var told = Told.Of(findings.OrderByDescending(f => f.Status));
        foreach (var one in told)
        {
            foreach (var finding in one.Findings)
                _ids[finding] = _ids[one.First];
        }
        var passes = findings.Count(f => f.Status == Status.Pass);
        return new CardView
        {
            Id = id,
            Name = name,
            Subtitle = subtitle,
            Status = findings.Count == 0 ? null : FindingViews.Status(StatusWords.Worst(findings.Select(f => f.Status))),
            Drawings = drawings,
            Findings = [.. told.Where(t => t.First.Status != Status.Pass).Select(t => Of(t, keys))],
            Passes = [.. told.Where(t => t.First.Status == Status.Pass).Select(t => Of(t, keys))],
            PassesTitle = passes == 1 ? "1 check passes" : $"{Figures.Whole(passes)} checks pass",
        };
    }

    // What is not true of the whole card says of which part of it.
    private FindingView Of(Told told, IReadOnlySet<string> keys)
    {
        var view = FindingViews.Of(told, _ids[told.First]);
        return told.Findings.Select(f => f.Position).Distinct(StringComparer.Ordinal).Count() == keys.Count ? view
            : view with { Where = told.Where };
    }

    private TaskView Task(MeasureTask task) => new(task.What, task.How, [.. task.Outcomes.Select(o =>
        new OutcomeView(o.Passing, o.Told.First.Title, o.Told.Where, $"#{_ids[o.Told.First]}"))], task.Lines);

    private ListView? List() => ListOf(_build);

    /// <summary>What to buy; null for nothing.</summary>
    public static ListView? ListOf(BuildResult build) => build.List.Count == 0 ? null : new(
        [.. build.List.Select(
            l => new LineView(l.Name, l.Part, Sentences.ToBuy(l), Figures.Whole(l.Needed), ListPrices.Price(l), ListPrices.Sum(l),
                Filled(Sentences.Availability(l.Availability)), ListPrices.Difference(l)))],
        [.. build.Totals.Select(t => t.ToString())],
        Sentences.Budget(build), ListPrices.Counted(build.List));

    // What entries say of themselves would fill half a sheet of small print, and nobody fits a part by it.
    private string ProofTitle(int passes)
    {
        var own = _build.Findings.Count(f => f is { Status: Status.Pass, Waived: null } && IsOfEntry(f));
        var title = $"What passes: {Sentences.Count(passes - own, "check", "checks")}";
        return own == 0 ? title : $"{title}, and {Figures.Whole(own)} of what the parts' own entries say";
    }

    private bool IsOfEntry(Finding finding) => _build.Facts.Any(t => t.Key == finding.Position && t.Subject.IsOfEntries());

    // By place, each thing once for all the places at which it is true.
    private List<ProofView> Proof() => Proofs.Of(Told.Of(_build, Status.Pass).Where(t => !IsOfEntry(t.First)));

    private List<SourceView> Sources() =>
        [.. _build.Findings.Where(f => f.Source.Length > 0)
            .GroupBy(f => f.Source, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g =>
            new SourceView(g.Key,
                string.Join(", ", g.Select(f => f.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))))];

    private static string? Joined(IEnumerable<string?> parts) => Filled(string.Join(" · ", parts.Where(p => !string.IsNullOrEmpty(p))));

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
}
