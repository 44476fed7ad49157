using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether screw holes lie on the rim that they are drilled into: between the hole in the middle and the outer edge.</summary>
internal static class RimFacts
{
    public static readonly FactGroup Declarations = new(Subject.Entry);

    public static readonly WordFact RimHoles = Declarations.Word("rim_holes", "Which screw holes, in words.", Reads.Entry.Itself);
    public static readonly NumberFact RimCircle = Declarations.Number(
        "rim_circle", Dimension.Metre, "Diameter of the circle on which screw holes lie.", Reads.Entry.Itself);
    public static readonly NumberFact RimLeft = Declarations.Number(
        "rim_left", Dimension.Metre, "What is left between the middle of a screw hole and the nearer edge of its rim.", Reads.Entry.Itself);
    public static readonly WordFact RimText = Declarations.Word("rim_text", "The rim, from where to where.", Reads.Entry.Itself);

    /// <summary>
    /// Of each pattern of screw holes of an entry. The rim of an oval is not round, so only its outermost edge
    /// counts, and so it does towards a panel: a ring may have a lip there that reaches in under its opening.
    /// </summary>
    public static IEnumerable<FactTable> Each(Entry entry) => entry switch
    {
        Driver { Holes: { } holes, Dimensions: { } d } =>
            [Table(entry, "of the flange", holes, ("cutout", d.CutoutMinor is null ? d.Cutout : null), ("flange", d.Flange))],
        // A rim that ends before it begins is told as that.
        Adapter a when !(a.Opening?.Si >= a.Outer?.Si) =>
            [.. a.DriverHoles.Select(h => Table(entry, "for the driver", h, Opening(a), ("outer diameter", a.Outer))),
                .. a.VehicleHoles is { } own ? [Table(entry, "for the panel", own, ("", null), ("outer diameter", a.Outer))]
                    : Array.Empty<FactTable>()],
        Vehicle v => v.Positions.Where(p => !p.Mirrored && p.Mounting is { Holes: not null, Cutout: not null, CutoutMinor: null })
            .Select(p => Table(entry, $"at {p.Name}", p.Mounting.Holes!, ("hole in the panel", p.Mounting.Cutout), ("", null))),
        _ => [],
    };

    private static (string What, Figure? Figure) Opening(Adapter a) => ("opening", a.OpeningMinor is null ? a.Opening : null);

    private static FactTable Table(Entry entry, string which, HoleCircle holes, (string What, Figure? Figure) inner,
        (string What, Figure? Figure) outer)
    {
        var sheet = new FactSheet();
        sheet.Set(EntryFacts.EntryName, entry.Name);
        sheet.Set(RimHoles, which);
        double[] left = [.. inner.Figure is { } hole ? [(holes.Circle.Si - hole.Si) / 2] : Array.Empty<double>(),
            .. outer.Figure is { } edge ? [(edge.Si - holes.Circle.Si) / 2] : Array.Empty<double>()];
        if (left.Length > 0 && !(inner.Figure?.Si >= outer.Figure?.Si))
        {
            sheet.Set(RimCircle, holes.Circle.Si);
            sheet.Set(RimText, string.Join(" and ",
                new[] { inner.Figure is null ? null : $"outside {inner.Figure}", outer.Figure is null ? null : $"inside {outer.Figure}" }
                    .OfType<string>()));
            sheet.Set(RimLeft, FactValue.Of(Dimension.Metre, left.Min()) with
            {
                Data = [new Datum("circle of screw holes", holes.Circle),
                    .. new[] { inner, outer }.Where(f => f.Figure is not null).Select(f => new Datum(f.What, f.Figure!))],
            });
        }
        return new FactTable(Subject.Entry, entry.Id, entry.Name, sheet.Values) { At = holes.At };
    }
}
