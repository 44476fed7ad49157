using FitCheck.Findings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Svg;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Html;

/// <summary>What is told of one or several places, as the templates show it.</summary>
internal static class FindingViews
{
    public static FindingView Of(Told told, string id)
    {
        var finding = told.First;
        var tells = Figures.Tell(finding);
        return new()
        {
            Id = id,
            Status = Status(finding.Status),
            // A rule is named after the defect; over a pass that name would read as one.
            Title = PassesInWords(finding) ? finding.Message : finding.Title,
            Heading = "h4",
            Position = told.Where,
            Message = PassesInWords(finding) ? null : finding.Message,
            Advice = finding.Status == Findings.Status.Pass || finding.Advice.Length == 0 ? null : finding.Advice,
            Value = tells ? Figures.Value(finding) : null,
            Range = tells && finding.Value is { IsExact: false } value ? Figures.Range(value.Low, value.High, finding.Unit) : null,
            Limit = tells && finding.Limit is { } limit ? Figures.Show(limit, finding.Unit) : null,
            Margin = tells ? Figures.Margin(finding) : null,
            Bar = tells ? MarginBar.Draw($"{id}-bar", finding) : null,
            Rule = finding.Rule,
            At = [.. told.Places.Select(Figures.ShortPlace)],
            Related = [.. told.Findings.SelectMany(f => f.Related).GroupBy(r => r.At)
                .Select(g => new DatumView(Names.Joined(g.Select(r => r.What)), Figures.ShortPlace(g.Key)))],
            Waived = finding.Waived is null ? null : Sentences.Waived(finding),
        };
    }

    public static ProofLineView Proof(Finding finding) =>
        new(PassesInWords(finding) ? finding.Message : finding.Title, Figures.Tell(finding) ? Figures.Row(finding) : null, finding.Rule);

    public static StatusView Status(Status status) => new(status.Word(), Icon(status));

    /// <summary>The shapes of all statuses, to stand once in a page that has very many marks.</summary>
    public static SafeHtml Shapes() => new(string.Concat(StatusWords.All.Select(w =>
        $"""<symbol id="shape-{w}" viewBox="0 0 16 16">{Shape(StatusWords.Parse(w)!.Value)}</symbol>""")));

    /// <summary>A status in a page that holds <see cref="Shapes"/>.</summary>
    public static SafeHtml Mark(Status status) => Drawn($"""<use href="#shape-{status.Word()}"/>""");

    private static SafeHtml Icon(Status status) => Drawn(Shape(status));

    private static SafeHtml Drawn(string shape) =>
        new($"""<svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">{shape}</svg>""");

    // Told by shape, not only by colour: a tick, a dimension line, a triangle, a crossed square.
    private static string Shape(Status status) => status switch
    {
        Findings.Status.Pass => """<circle cx="8" cy="8" r="7"/><path class="cut" d="M4.4 8.4 7 11l4.8-5.6"/>""",
        Findings.Status.Warn => """<path d="M8 .8 15.6 15H.4Z"/><path class="cut" d="M8 5.6v4.6M8 12.2v1.2"/>""",
        Findings.Status.Measure => """<path d="M0 2h2v12H0ZM14 2h2v12h-2ZM2.6 8l4-3.4v2.4h2.8V4.6l4 3.4-4 3.4V9H6.6v2.4Z"/>""",
        _ => """<path d="M1.4 1.4h13.2v13.2H1.4Z"/><path class="cut" d="m4.8 4.8 6.4 6.4M11.2 4.8l-6.4 6.4"/>""",
    };

    private static bool PassesInWords(Finding finding) => finding.Status == Findings.Status.Pass && finding.Message.Length > 0;
}
