using FitCheck.Findings;
using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Svg.Plan;

/// <summary>
/// The state of a position by shape: that of its status; a hollow ring where nothing is fitted, a hollow diamond where nothing was judged.
/// </summary>
internal static class PlanShapes
{
    public static SafeHtml Of(PlanPlace place) =>
        place.Status is { } status ? StatusShapes.Of(status) : place.Fitted is null ? Ring : Diamond;

    public static string Class(PlanPlace place) => $"mark-{place.Status?.Word() ?? (place.Fitted is null ? "empty" : "unjudged")}";

    private static SafeHtml Ring { get; } = new("""<circle cx="8" cy="8" r="6"/>""");

    private static SafeHtml Diamond { get; } = new("""<path d="M8 1 15 8 8 15 1 8Z"/>""");
}
