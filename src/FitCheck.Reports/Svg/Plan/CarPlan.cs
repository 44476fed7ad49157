using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Svg.Plan;

/// <summary>
/// A vehicle seen from above, front up, with a mark and a label for each of its positions, both within one link. Marks lie where the
/// vehicle's locations put them; the body is a scheme that is drawn around them.
/// </summary>
internal static class CarPlan
{
    private const double LegendRow = 13.5;
    private const string Legend = "Cross: between the front seats. Thick bar: steering wheel.";
    private const string LegendWithoutWheel = "Cross: between the front seats. Steering side: not recorded.";

    /// <param name="id">Unique in the page.</param>
    /// <param name="vehicle">Whose name and steering side are told.</param>
    /// <param name="places">Its positions, in the order in which they are reached by keyboard.</param>
    /// <param name="current">The id of the position at hand, drawn ringed; null where none is.</param>
    public static SafeHtml Draw(string id, Vehicle vehicle, IReadOnlyList<PlanPlace> places, string? current)
    {
        var layout = new PlanLayout(places);
        var legend = Lettering.Lines(vehicle.Steering is null ? LegendWithoutWheel : Legend, SectionPaper.Width - 4, Lettering.Tick);
        using var svg = new SvgWriter(id, "drawing plan", SectionPaper.Width, layout.Bottom + 8 + (legend.Count * LegendRow),
            $"{vehicle.Name}, seen from above", Sentence(vehicle, places), hasLinks: true);
        var hasFront = layout.Places.Contains(LabelPlace.Front);
        BodyOutline.Draw(svg, layout.Paper, places, vehicle.Steering, arrowAside: hasFront);
        for (var i = 0; i < places.Count; i++)
            DrawLeader(svg, layout, i);
        for (var i = 0; i < places.Count; i++)
            DrawPlace(svg, layout, i, places[i], places[i].Id == current);
        for (var i = 0; i < legend.Count; i++)
            svg.Text(new(PlanPaper.Middle, layout.Bottom + 16 + (i * LegendRow)), legend[i], "tick", Anchor.Middle);
        return svg.Finish();
    }

    // Straight out of the body, then to the label: so no two cross.
    private static void DrawLeader(SvgWriter svg, PlanLayout layout, int i)
    {
        var (mark, tie) = (layout.Marks[i], layout.Tie(i));
        Spot bend = layout.Places[i] switch
        {
            LabelPlace.Left => new(PlanPaper.Middle - PlanPaper.HalfBody - 2, mark.Y),
            LabelPlace.Right => new(PlanPaper.Middle + PlanPaper.HalfBody + 2, mark.Y),
            LabelPlace.Front => new(mark.X, layout.Paper.Top - 3),
            _ => new(mark.X, layout.Paper.Bottom + 3),
        };
        svg.Shape([mark, bend, tie], "thin leader", closed: false);
    }

    private static void DrawPlace(SvgWriter svg, PlanLayout layout, int i, PlanPlace place, bool isCurrent)
    {
        var (mark, tie, label) = (layout.Marks[i], layout.Tie(i), layout.Labels[i]);
        List<(string, string)> attributes = [("data-place", place.Id)];
        if (isCurrent)
            attributes.Add(("aria-current", "true"));
        svg.BeginLink($"#place-{place.Id}", $"place{(isCurrent ? " current" : "")}{(place.Changed ? " new" : "")}",
            attributes);
        var (x, anchor) = layout.Places[i] switch
        {
            LabelPlace.Left => (tie.X - PlanLayout.Inset, Anchor.End),
            LabelPlace.Right => (tie.X + PlanLayout.Inset, Anchor.Start),
            _ => (tie.X, Anchor.Middle),
        };
        var width = label.Room + PlanLayout.Inset;
        var left = anchor switch { Anchor.End => tie.X - width, Anchor.Start => tie.X, _ => tie.X - (width / 2) };
        svg.Box(left, layout.Tops[i], width, label.Height, "hit");
        if (anchor != Anchor.Middle)
            svg.Line(new(tie.X, layout.Tops[i]), new(tie.X, layout.Tops[i] + label.Height), "spine");
        svg.Dot(mark, isCurrent ? 10.5 : 9.5, isCurrent ? "hit at-hand" : "hit");
        svg.Picture(mark, PlanShapes.Of(place), $"mark {PlanShapes.Class(place)}");
        label.Draw(svg, x, layout.Tops[i], anchor);
        svg.EndLink();
    }

    private static string Sentence(Vehicle vehicle, IReadOnlyList<PlanPlace> places)
    {
        string[] order = [.. StatusWords.All.Reverse(), "not judged", "empty"];
        var states = order.Select(w => (Word: w, Count: places.Count(p => p.Word == w))).Where(s => s.Count > 0)
            .Select(s => $"{Figures.Whole(s.Count)} {s.Word}");
        var wheel = vehicle.Steering is { } side ? $"the steering wheel is on the {side}" : "the steering side is not recorded";
        return $"The front is at the top, {wheel}, and the places are: {Names.Joined([.. states.DefaultIfEmpty("none")])}.";
    }
}
