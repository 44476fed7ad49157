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
        $"""<symbol id="shape-{w}" viewBox="0 0 16 16">{StatusShapes.Of(StatusWords.Parse(w)!.Value)}</symbol>""")));

    /// <summary>A status in a page that holds <see cref="Shapes"/>.</summary>
    public static SafeHtml Mark(Status status) => Drawn($"""<use href="#shape-{status.Word()}"/>""");

    private static SafeHtml Icon(Status status) => Drawn(StatusShapes.Of(status).ToString());

    private static SafeHtml Drawn(string shape) =>
        new($"""<svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">{shape}</svg>""");

    private static bool PassesInWords(Finding finding) => finding.Status == Findings.Status.Pass && finding.Message.Length > 0;
}
