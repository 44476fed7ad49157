using FitCheck.Findings;
using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Svg;

/// <summary>
/// A status by shape, not only by colour, in a square of 16 units: a tick, a triangle, a dimension line, a crossed square. `cut` is drawn
/// in the colour of the paper.
/// </summary>
internal static class StatusShapes
{
    public static SafeHtml Of(Status status) => status switch
    {
        Status.Pass => Pass,
        Status.Warn => Warn,
        Status.Measure => Measure,
        _ => Fail,
    };

    private static SafeHtml Pass { get; } = new("""<circle cx="8" cy="8" r="7"/><path class="cut" d="M4.4 8.4 7 11l4.8-5.6"/>""");

    private static SafeHtml Warn { get; } = new("""<path d="M8 .8 15.6 15H.4Z"/><path class="cut" d="M8 5.6v4.6M8 12.2v1.2"/>""");

    private static SafeHtml Measure { get; } =
        new("""<path d="M0 2h2v12H0ZM14 2h2v12h-2ZM2.6 8l4-3.4v2.4h2.8V4.6l4 3.4-4 3.4V9H6.6v2.4Z"/>""");

    private static SafeHtml Fail { get; } =
        new("""<path d="M1.4 1.4h13.2v13.2H1.4Z"/><path class="cut" d="m4.8 4.8 6.4 6.4M11.2 4.8l-6.4 6.4"/>""");
}
