using FitCheck.Drawings;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Telling;

namespace FitCheck.Reports.Html;

/// <summary>Arranges one build for its page.</summary>
internal sealed class BuildViews
{
    private readonly BuildResult _build;
    private readonly string _id;
    private readonly Dictionary<Finding, FindingView> _views = new(ReferenceEqualityComparer.Instance);

    private BuildViews(BuildResult build, string id)
    {
        _build = build;
        _id = id;
        for (var i = 0; i < build.Findings.Count; i++)
            _views.Add(build.Findings[i], FindingViews.Of(build.Findings[i], $"{id}-f{Figures.Whole(i + 1)}"));
    }

    public static BuildView Of(BuildResult build, string id) => new BuildViews(build, id).Arrange();

    private BuildView Arrange()
    {
        var tally = Tally.Of(_build.Findings);
        var positions = Keys(Subject.Position, _build.Drawings.Select(d => (d.Position, d.Name)));
        var channels = Keys(Subject.Channel, _build.Loads.Select(l => (l.Channel, l.Name)));
        return new BuildView
        {
            Id = _id,
            Name = _build.Name,
            Vehicle = _build.VehicleName,
            File = _build.File,
            Notes = Filled(_build.Notes),
            Verdict = FindingViews.Status(_build.Verdict),
            Sentence = Wording.Verdict(tally),
            Counts = [.. Wording.WorstFirst.Select(s => new CountView(FindingViews.Status(s), Figures.Whole(tally[s])))],
            Tasks = [.. MeasureFirst.Of(_build).Select(Task)],
            Changes = [.. Unwaived(Status.Fail).Concat(Unwaived(Status.Warn)).Select(f => _views[f])],
            Positions = [.. positions.Select((k, i) => PositionCard(k.Key, k.Name, $"{_id}-p{Figures.Whole(i + 1)}"))],
            Channels = [.. channels.Select((k, i) => ChannelCard(k.Key, k.Name, $"{_id}-c{Figures.Whole(i + 1)}"))],
            Whole = WholeCard([.. positions.Select(p => p.Key), .. channels.Select(c => c.Key)]),
            List = List(),
            Cautions = _build.Cautions,
            LastWord = Wording.LastWord,
            Sources = Sources(),
            Waived = [.. _build.Findings.Where(f => f.Waived is not null).Select(f => _views[f] with { Heading = "h3", Where = f.PositionName })],
            Remarks = [.. _build.Remarks.Select(r => r.ToString())],
        };
    }

    private IEnumerable<Finding> Unwaived(Status status) => _build.Findings.Where(f => f.Status == status && f.Waived is null);

    // Subjects in the order of the facts; a drawing without facts comes after them.
    private List<(string Key, string Name)> Keys(Subject subject, IEnumerable<(string Key, string Name)> drawn) =>
        [.. _build.Facts.Where(f => f.Subject == subject).Select(f => (f.Key, f.Name)).Concat(drawn).DistinctBy(k => k.Item1, StringComparer.Ordinal)];

    private CardView PositionCard(string key, string name, string id)
    {
        var drawing = _build.Drawings.FirstOrDefault(d => d.Position == key);
        var parts = new[] { drawing?.DriverName, drawing?.AdapterName, drawing?.CupName };
        return Card(id, name, Joined(parts), drawing is null ? [] : Drawings(drawing, id), f => f.Position == key);
    }

    private static List<SafeHtml> Drawings(PositionDrawing drawing, string id)
    {
        var drawings = new List<SafeHtml> { SectionDrawing.Draw($"{id}-section", drawing) };
        if (FacePlan.Draw($"{id}-face", drawing) is { } face)
            drawings.Add(face);
        return drawings;
    }

    private CardView ChannelCard(string key, string name, string id)
    {
        var load = _build.Loads.FirstOrDefault(l => l.Channel == key);
        if (load is null)
            return Card(id, name, null, [], f => f.Position == key);
        var rated = load.RatedLoad is { } ohm ? $"Lowest rated load of the output: {Figures.Show(ohm, "ohm")}" : "Lowest rated load of the output: unknown";
        var plots = new List<SafeHtml> { LoadPlot.Draw($"{id}-load", load) };
        if (TweeterPlot.Draw($"{id}-tweeters", load) is { } tweeters)
            plots.Add(tweeters);
        return Card(id, name, rated, plots, f => f.Position == key);
    }

    private CardView? WholeCard(IReadOnlyList<string> elsewhere)
    {
        var card = Card($"{_id}-whole", "The build as a whole", null, [], f => !elsewhere.Contains(f.Position, StringComparer.Ordinal));
        return card.Findings.Count + card.Passes.Count == 0 ? null : card with { Findings = Located(card.Findings), Passes = Located(card.Passes) };
    }

    // Parts and whatever else has no card of its own: their findings say what they are about.
    private static List<FindingView> Located(IReadOnlyList<FindingView> findings) => [.. findings.Select(f => f with { Where = f.Position })];

    private CardView Card(string id, string name, string? subtitle, IReadOnlyList<SafeHtml> drawings, Func<Finding, bool> belongs)
    {
        var findings = _build.Findings.Where(f => f.Waived is null && belongs(f)).ToList();
        var passes = findings.Where(f => f.Status == Status.Pass).ToList();
        return new CardView
        {
            Id = id,
            Name = name,
            Subtitle = subtitle,
            Status = findings.Count == 0 ? null : FindingViews.Status(StatusWords.Worst(findings.Select(f => f.Status))),
            Drawings = drawings,
            Findings = [.. findings.Where(f => f.Status != Status.Pass).OrderByDescending(f => f.Status).Select(f => _views[f])],
            Passes = [.. passes.Select(f => _views[f])],
            PassesTitle = passes.Count == 1 ? "1 check passes" : $"{Figures.Whole(passes.Count)} checks pass",
        };
    }

    private TaskView Task(MeasureTask task) => new(task.What, task.How, [.. task.Outcomes.Select(o =>
        new OutcomeView(o.Passing, o.Finding.Title, o.Finding.PositionName, $"#{_views[o.Finding].Id}"))]);

    private ListView? List() => _build.List.Count == 0 ? null : new(
        [.. _build.List.Select(l => new LineView(l.Name, l.Part, Wording.ToBuy(l), Figures.Whole(l.Needed), l.Price.ToString(), l.Sum.ToString(), Filled(Wording.Availability(l.Availability))))],
        [.. _build.Totals.Select(t => t.ToString())],
        Wording.Budget(_build));

    private List<SourceView> Sources() =>
        [.. _build.Findings.Where(f => f.Source.Length > 0)
            .GroupBy(f => f.Source, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new SourceView(g.Key, string.Join(", ", g.Select(f => f.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))))];

    private static string? Joined(IEnumerable<string?> parts) => Filled(string.Join(" · ", parts.Where(p => !string.IsNullOrEmpty(p))));

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
}
