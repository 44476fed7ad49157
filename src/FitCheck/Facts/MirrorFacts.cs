using FitCheck.Catalog;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Facts;

/// <summary>What differs between a position and the one on the other side of the vehicle. Data that were taken over can't differ and are not compared.</summary>
internal static class MirrorFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Mirror, "mirror_name", "Name of the position."),
        Declare.Word(Subject.Mirror, "other_name", "Name of the position on the other side."),
        Declare.Word(Subject.Mirror, "mirror_datum", "What is compared."),
        Declare.Word(Subject.Mirror, "here", "The datum of this position."),
        Declare.Word(Subject.Mirror, "there", "What the position on the other side makes one expect here."),
        Declare.Number(Subject.Mirror, "length_gap", Dimension.Metre, "How far two lengths differ."),
        Declare.Truth(Subject.Mirror, "words_differ", "Two data that are not lengths differ."),
        Declare.Truth(Subject.Mirror, "same_side", "Both positions are on the same side of the vehicle."),
        Declare.Number(Subject.Mirror, "across_gap", Dimension.Metre, "How far the place across the vehicle is from the mirror image of the other."),
    ];

    public static IEnumerable<FactTable> Of(Vehicle vehicle)
    {
        foreach (var (here, there) in Pairs(vehicle.Positions))
        {
            if (here.SideAt is { } side && there.SideAt is { } other && side != other)
                yield return Table(here, there, "side", s => s.Set("same_side", FactValue.Of(here.Side == there.Side) with { Data = [new($"side: {here.Side}", side), new($"side: {there.Side}", other)] }), here.Side, there.Side);
            foreach (var table in Lengths(here, there).Concat(Words(here, there)).Concat(Places(here, there)))
                yield return table;
        }
    }

    private static IEnumerable<FactTable> Lengths(Position here, Position there)
    {
        var (a, b) = (here.Mounting, there.Mounting);
        foreach (var (what, one, two) in new[]
        {
            ("cutout", a.Cutout, b.Cutout), ("smaller cutout", a.CutoutMinor, b.CutoutMinor), ("depth", a.Depth, b.Depth), ("gap to the grille", a.GrilleGap, b.GrilleGap),
            ("recess", a.Recess, b.Recess), ("thickness of the panel", a.PanelThickness, b.PanelThickness), ("gap to the door card", a.DoorCardGap, b.DoorCardGap),
            ("circle of screw holes", a.Holes?.Circle, b.Holes?.Circle),
        })
        {
            if (one is not null && two is not null && one.At != two.At)
                yield return Table(here, there, what, s => s.Set("length_gap", Gap(one, two, Math.Abs(one.Si - two.Si))), one.ToString(), two.ToString());
        }
    }

    private static IEnumerable<FactTable> Words(Position here, Position there)
    {
        foreach (var (what, one, two) in new[]
        {
            ("plug", here.Plug, there.Plug), ("polarity of the plug", here.PlugPolarity, there.PlugPolarity), ("feed", here.FeedType, there.FeedType),
            ("material of the panel", here.Mounting.PanelMaterialAt, there.Mounting.PanelMaterialAt), ("role", here.RoleAt, there.RoleAt),
            ("impedance of the factory driver", Text(here.FactoryImpedance), Text(there.FactoryImpedance)),
        })
        {
            if (one is not null && two is not null && one.At != two.At)
                yield return Table(here, there, what, s => s.Set("words_differ", FactValue.Of(one.Value != two.Value) with { Data = [new($"{what}: {one.Value}", one.At), new($"{what}: {two.Value}", two.At)] }), one.Value, two.Value);
        }
    }

    // A mirrored location repeats its lines; only one that was written twice can be wrong.
    private static IEnumerable<FactTable> Places(Position here, Position there)
    {
        if (here.Location is not [var x, var y, var z] || there.Location is not [var x2, var y2, var z2] || y.At == y2.At)
            yield break;
        yield return Table(here, there, "place across the vehicle", s => s.Set("across_gap", Gap(y, y2, Math.Abs(y.Si + y2.Si))), y.ToString(), QuantityText.Format(-y2.Si, y2.Quantity.Unit));
        foreach (var (what, one, two) in new[] { ("place along the vehicle", x, x2), ("height in the vehicle", z, z2) })
            yield return Table(here, there, what, s => s.Set("across_gap", Gap(one, two, Math.Abs(one.Si - two.Si))), one.ToString(), two.ToString());
    }

    // The sides of a vehicle that both were written out belong together when nothing but left and right tells them apart.
    private static IEnumerable<(Position Here, Position There)> Pairs(IReadOnlyList<Position> positions)
    {
        var byId = new Dictionary<string, Position>(StringComparer.Ordinal);
        foreach (var position in positions)
            byId.TryAdd(position.Id, position);
        foreach (var here in positions)
        {
            if (here.MirrorOf is { } named && byId.TryGetValue(named.Value, out var original) && original != here)
                yield return (here, original);
            else if (here is { MirrorOf: null } && here.Id.Contains("right", StringComparison.Ordinal)
                && byId.TryGetValue(here.Id.Replace("right", "left", StringComparison.Ordinal), out var left) && left.MirrorOf is null)
                yield return (here, left);
        }
    }

    private static FactTable Table(Position here, Position there, string datum, Action<FactSheet> compare, string one, string two)
    {
        var sheet = new FactSheet();
        sheet.Set("mirror_name", here.Name);
        sheet.Set("other_name", there.Name);
        sheet.Set("mirror_datum", datum);
        sheet.Set("here", one);
        sheet.Set("there", two);
        compare(sheet);
        return new FactTable(Subject.Mirror, here.Id, here.Name, sheet.Values) { At = here.At };
    }

    private static FactValue Gap(Figure one, Figure two, double gap) => FactValue.Of(Dimension.Metre, gap) with { Data = [new Datum(one.ToString(), one.At), new Datum(two.ToString(), two.At)] };

    private static Located<string>? Text(Figure? figure) => figure is null ? null : new Located<string>(figure.ToString(), figure.At);
}
