using System.Globalization;
using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>The distinct hole patterns of a build; places that share one share a template.</summary>
internal sealed class HolePatterns
{
    private readonly List<List<HolePlace>> _onPaper = [];
    private readonly List<List<HolePlace>> _tooLarge = [];

    private HolePatterns()
    {
    }

    public static HolePatterns Of(BuildResult build)
    {
        var patterns = new HolePatterns();
        foreach (var group in Places(build).GroupBy(Look, StringComparer.Ordinal))
            (HoleTemplate.FitsOnPaper(group.First()) ? patterns._onPaper : patterns._tooLarge).Add([.. group]);
        return patterns;
    }

    /// <summary>` Template 2.` for a place that has one.</summary>
    public string? Reference(string position)
    {
        var at = _onPaper.FindIndex(g => g.Exists(p => p.Position == position));
        return at < 0 ? null : $" Template {Figures.Whole(at + 1)}.";
    }

    /// <summary>Patterns that no usual paper holds, told in words.</summary>
    public IReadOnlyList<StepView> TooLarge =>
    [
        .. _tooLarge.Select(g => new StepView(Names.Joined(g.Select(p => p.Name)),
            $"The pattern is larger than this paper: {Sentences.Count(g[0].Face.Panel.Count, "screw hole", "screw holes")} of the panel "
                + $"on a circle of {Figures.Show(2 * g[0].Face.Panel[0].Radius, "mm")}, at {HoleTemplate.Hours(g[0].Face.Panel)}.")),
    ];

    public IReadOnlyList<TemplateView> Templates(string id) =>
        [.. _onPaper.Select(
            (g, i) => HoleTemplate.Of($"{id}-t{Figures.Whole(i + 1)}", Figures.Whole(i + 1), Names.Joined(g.Select(p => p.Name)), g))];

    // Without what no pen can draw.
    private static IEnumerable<HolePlace> Places(BuildResult build) =>
        from drawing in build.Drawings
        from planned in new[] { drawing.Face }.OfType<FaceDrawing>()
        let face = planned with
        {
            Panel = Drawable(planned.Panel),
            Driver = Drawable(planned.Driver),
            AimHour = planned.AimHour is { } hour && double.IsFinite(hour) ? hour : null
        }
        where face.Panel.Count > 0
        select new HolePlace(drawing.Position, drawing.Name, face, Millimetres(build, drawing.Position, MountingFacts.HoleAvailable),
            Millimetres(build, drawing.Position, MountingFacts.HoleNeeded));

    private static IReadOnlyList<DrawnHole> Drawable(IReadOnlyList<DrawnHole> holes) =>
        [.. holes.Where(h => double.IsFinite(h.AngleDeg) && h.Radius > 0 && double.IsFinite(h.Radius))];

    private static double? Millimetres(BuildResult build, string position, NumberFact fact) =>
        build.Facts.FirstOrDefault(t => t.Subject == Subject.Position && t.Key == position)?.Of(fact)?.Number?.Value * 1e3;

    // What is cut and drilled, whatever its names and wherever it looks.
    private static string Look(HolePlace place)
    {
        var face = place.Face;
        return string.Join('|',
            [Rounded(face.CutoutRadius), Rounded(face.SpacerRadius), Rounded(face.FlangeRadius), Rounded(face.PanelScrew),
                Rounded(place.HoleNeeded), Rounded(place.HoleThere), $"{face.IsOval}{face.IsDriverOval}", Holes(face.Panel),
                Holes(face.Driver)]);
    }

    private static string Holes(IReadOnlyList<DrawnHole> holes) =>
        string.Join(',',
            holes.Select(h => $"{Rounded(HoleTemplate.Turned(h.AngleDeg))}:{Rounded(h.Radius)}:{h.Meets}").Order(StringComparer.Ordinal));

    private static string Rounded(double? value) => value?.ToString("0.0", CultureInfo.InvariantCulture) ?? "";
}

/// <summary>One place and its pattern.</summary>
/// <param name="Position">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Face">Its circles and holes.</param>
/// <param name="HoleThere">Diameter in mm of the hole in the panel, the short axis when it is oval; null when unknown.</param>
/// <param name="HoleNeeded">Diameter in mm that the body needs; null when unknown.</param>
internal sealed record HolePlace(string Position, string Name, FaceDrawing Face, double? HoleThere, double? HoleNeeded)
{
    /// <summary>True when the hole has to be cut larger.</summary>
    public bool Grows => HoleNeeded > HoleThere;
}
