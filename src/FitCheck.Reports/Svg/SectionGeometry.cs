using FitCheck.Drawings;

namespace FitCheck.Reports.Svg;

/// <summary>A point of the section in millimetres: z into the cavity from the mounting plane, r up from the hole's axis.</summary>
internal readonly record struct Mm(double Z, double R);

/// <summary>
/// The outlines of a position's section, in millimetres. The driver turns about the centre of its flange's underside, which the adapter
/// lifts off the mounting plane by its thickness.
/// </summary>
internal sealed class SectionGeometry
{
    private readonly PositionDrawing _drawing;
    private readonly double _cos;
    private readonly double _sin;

    public SectionGeometry(PositionDrawing drawing)
    {
        _drawing = drawing;
        var tilt = double.IsFinite(drawing.TiltDeg) ? drawing.TiltDeg * Math.PI / 180 : 0;
        (_sin, _cos) = Math.SinCos(tilt);
        Body = BodyOutline();
        Flange = Known(drawing.FlangeRadius) is { } radius ? Block(-(Known(drawing.FlangeThickness) ?? 1.5), 0, radius) : [];
        Front = FrontOutline(0);
        Travel = Known(drawing.Travel) is > 0 ? FrontOutline(drawing.Travel!.Value) : [];
        Wedges = AdapterOutlines();
    }

    public IReadOnlyList<Mm> Body { get; }

    public IReadOnlyList<Mm> Flange { get; }

    /// <summary>From the flange's front to the highest thing in front of it.</summary>
    public IReadOnlyList<Mm> Front { get; }

    /// <summary>The front moved out by the cone's travel; empty when that is not known.</summary>
    public IReadOnlyList<Mm> Travel { get; }

    /// <summary>The adapter above and below its opening; empty without one.</summary>
    public IReadOnlyList<IReadOnlyList<Mm>> Wedges { get; }

    /// <summary>The point of the body that reaches deepest.</summary>
    public Mm? Deepest => Body.Count == 0 ? null : Body.MaxBy(p => p.Z);

    /// <summary>How far the front reaches into the cabin, travel included.</summary>
    public Mm? Foremost
    {
        get
        {
            var outline = Travel.Count > 0 ? Travel : Front.Count > 0 ? Front : Flange;
            return outline.Count == 0 ? null : outline.MinBy(p => p.Z);
        }
    }

    /// <summary>The lower end of the flange, where its clearance is measured.</summary>
    public Mm? FlangeEdge => Flange.Count == 0 ? null : Flange.MinBy(p => p.R);

    /// <summary>From the driver's own axes (origin at the flange's underside) to the panel's.</summary>
    public Mm Place(double z, double r) => new((z * _cos) + (r * _sin) - _drawing.AdapterThickness, (r * _cos) - (z * _sin));

    public static double? Known(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private List<Mm> BodyOutline()
    {
        var profile = _drawing.Body.Where(p => double.IsFinite(p.Z) && double.IsFinite(p.R)).ToList();
        if (profile.Count == 0)
            return [];
        if (profile[0].Z > 0)
            profile.Insert(0, (0, profile[0].R));
        var outline = profile.ConvertAll(p => Place(p.Z, p.R));
        for (var i = profile.Count - 1; i >= 0; i--)
            outline.Add(Place(profile[i].Z, -profile[i].R));
        return outline;
    }

    private Mm[] Block(double fromZ, double toZ, double radius) =>
        [Place(toZ, radius), Place(fromZ, radius), Place(fromZ, -radius), Place(toZ, -radius)];

    // Only height and radius are known: the corners are cut by the height, so that it does not pass for a drawn profile.
    private Mm[] FrontOutline(double travel)
    {
        if (Known(_drawing.FlangeRadius) is not { } radius || Known(_drawing.FrontHeight) is not { } height)
            return [];
        var foot = -(Known(_drawing.FlangeThickness) ?? 1.5);
        var top = foot - height;
        var corner = Math.Min(height, radius * 0.1);
        Mm[] outline =
        [
            Place(foot, radius), Place(top + corner, radius), Place(top, radius - corner),
            Place(top, corner - radius), Place(top + corner, -radius), Place(foot, -radius),
        ];
        return [.. outline.Select(p => p with { Z = p.Z - travel })];
    }

    private List<IReadOnlyList<Mm>> AdapterOutlines()
    {
        var inner = Known(_drawing.AdapterOpeningRadius) ?? Known(_drawing.HoleRadius);
        var outer = Known(_drawing.AdapterOuterRadius) ?? Known(_drawing.FlangeRadius);
        if (inner is not { } from || outer is not { } to || to <= from || (_drawing.AdapterThickness == 0 && _sin == 0))
            return [];
        return [Wedge(from, to), Wedge(-from, -to)];
    }

    // The base lies on the panel; the top follows the tilted flange and ends where it would pass through the base.
    private Mm[] Wedge(double from, double to) => [new(0, from), new(0, to), new(Top(to), to), new(Top(from), from)];

    private double Top(double r) => Math.Min(0, (r * _sin / _cos) - _drawing.AdapterThickness);
}
