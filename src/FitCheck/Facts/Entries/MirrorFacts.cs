using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>
/// What differs between a position and the one on the other side of the vehicle. Data that were taken over can't differ and are not
/// compared.
/// </summary>
internal static class MirrorFacts
{
    public static readonly FactGroup Declarations = new(Subject.Mirror);

    public static readonly WordFact MirrorName = Declarations.Word("mirror_name", "Name of the position.", Reads.Entry.Itself);
    public static readonly WordFact OtherName = Declarations.Word(
        "other_name", "Name of the position on the other side.",
        Reads.Entry.Itself);
    public static readonly WordFact MirrorDatum = Declarations.Word("mirror_datum", "What is compared.", Reads.Entry.Itself);
    public static readonly WordFact Here = Declarations.Word("here", "The datum of this position.", Reads.Entry.Itself);
    public static readonly WordFact There = Declarations.Word(
        "there", "What the position on the other side makes one expect here.",
        Reads.Entry.Itself);
    public static readonly NumberFact LengthGap = Declarations.Number(
        "length_gap", Dimension.Metre, "How far two lengths differ.",
        Reads.Entry.Itself);
    public static readonly NumberFact AngleGap = Declarations.Number(
        "angle_gap", Dimension.Radian, "How far hours on the clock face are from the mirror image of the other side's.",
        Reads.Entry.Itself);
    public static readonly TruthFact WordsDiffer = Declarations.Truth(
        "words_differ", "Two data that are not lengths differ.",
        Reads.Entry.Itself);
    public static readonly TruthFact SameSide = Declarations.Truth(
        "same_side", "Both positions are on the same side of the vehicle.",
        Reads.Entry.Itself);
    public static readonly NumberFact AcrossGap = Declarations.Number(
        "across_gap", Dimension.Metre, "How far the place across the vehicle is from the mirror image of the other.",
        Reads.Entry.Itself);

    public static IEnumerable<FactTable> Of(Vehicle vehicle)
    {
        foreach (var (here, there) in Pairs(vehicle.Positions))
        {
            if (here.SideAt is { } side && there.SideAt is { } other && side != other)
                yield return Table(here, there, "side",
                    s => s.Set(SameSide,
                        FactValue.Of(here.Side == there.Side)
                            with
                        { Data = [new($"side: {here.Side}", side), new($"side: {there.Side}", other)] }), here.Side, there.Side);
            foreach (var table in Lengths(here, there).Concat(Words(here, there)).Concat(Places(here, there)).Concat(Hours(here, there)))
                yield return table;
        }
    }

    private static IEnumerable<FactTable> Lengths(Position here, Position there)
    {
        var (a, b) = (here.Mounting, there.Mounting);
        (string What, Figure? One, Figure? Two)[] compared =
        [
            ("cutout", a.Cutout, b.Cutout), ("smaller cutout", a.CutoutMinor, b.CutoutMinor), ("depth", a.Depth, b.Depth),
            ("gap to the grille", a.GrilleGap, b.GrilleGap),
            ("recess", a.Recess, b.Recess), ("thickness of the panel", a.PanelThickness, b.PanelThickness),
            ("gap to the door card", a.DoorCardGap, b.DoorCardGap),
            ("circle of screw holes", a.Holes?.Circle, b.Holes?.Circle), ("largest cutout", a.LargestCutout, b.LargestCutout),
            .. Obstructions(a, b)
                .SelectMany(
                o => new[] { ($"depth of the {o.Here.Name}", o.Here.Depth, o.There.Depth),
                    ($"distance of the {o.Here.Name}", o.Here.FromRadius, o.There.FromRadius) }),
        ];
        foreach (var (what, one, two) in compared)
        {
            if (one is not null && two is not null && one.At != two.At)
                yield return Table(here, there, what, s => s.Set(LengthGap, Gap(one, two, Math.Abs(one.Si - two.Si))), one.ToString(),
                    two.ToString());
        }
    }

    private static IEnumerable<FactTable> Words(Position here, Position there)
    {
        foreach (var (what, one, two) in new[]
        {
            ("plug", here.Plug, there.Plug), ("polarity of the plug", here.PlugPolarity, there.PlugPolarity),
            ("feed", here.FeedType, there.FeedType),
            ("material of the panel", here.Mounting.PanelMaterialAt, there.Mounting.PanelMaterialAt), ("role", here.RoleAt, there.RoleAt),
            ("impedance of the factory driver", Text(here.FactoryImpedance), Text(there.FactoryImpedance)),
            ("number of screw holes", Count(here.Mounting.Holes), Count(there.Mounting.Holes)),
        })
        {
            if (one is not null && two is not null && one.At != two.At)
                yield return Table(here, there, what,
                    s => s.Set(WordsDiffer,
                        FactValue.Of(one.Value != two.Value)
                            with
                        { Data = [new($"{what}: {one.Value}", one.At), new($"{what}: {two.Value}", two.At)] }), one.Value,
                                two.Value);
        }
    }

    // Seen from the listener, what is at one hour on the left is at the same hour before twelve on the right.
    private static IEnumerable<FactTable> Hours(Position here, Position there)
    {
        var (a, b) = (here.Mounting, there.Mounting);
        if (a.Holes is { } holes && b.Holes is { } others && holes.At != others.At && holes.Angles.Count == others.Angles.Count)
            yield return Compared("screw holes", [.. holes.Angles.Select(HoleFit.Hour)], holes.At, [.. others.Angles.Select(HoleFit.Hour)],
                others.At);
        if (a is { AimClock: { } aim, AimClockAt: { } at } && b is { AimClock: { } aim2, AimClockAt: { } at2 } && at != at2)
            yield return Compared("the sound aimed", [aim], at, [aim2], at2);
        foreach (var (one, two) in Obstructions(a, b))
        {
            if (one is { FromClock: { } from, ToClock: { } to } && two is { FromClock: { } from2, ToClock: { } to2 })
                yield return Compared($"the ends of the {one.Name}", [from, to], one.At, [from2, to2], two.At);
        }

        FactTable Compared(string what, List<double> hours, Location at, List<double> others, Location there2)
        {
            var expected = others.ConvertAll(h => 12 - h);
            var gap = hours.Max(h => expected.Min(e => Apart(h, e)));
            gap = Math.Max(gap, expected.Max(e => hours.Min(h => Apart(h, e))));
            var (told, wanted) = (Told(hours), Told(expected));
            return Table(here, there, what,
                s => s.Set(AngleGap,
                    FactValue.Of(Dimension.Radian, gap * Math.PI / 6)
                        with
                    { Data = [new($"{what} at {told}", at), new($"{what} at {Told(others)}", there2)] }), told, wanted);
        }
    }

    private static string Told(List<double> hours) => HoleFit.Hours([.. hours.Select(h => HoleFit.Hour(h * 30)).Order()]);

    private static double Apart(double hour, double other) => Math.Abs(Math.IEEERemainder(hour - other, 12));

    // Those that are named alike and were written twice.
    private static IEnumerable<(Obstruction Here, Obstruction There)> Obstructions(Mounting here, Mounting there) =>
        from one in here.Obstructions
        from two in there.Obstructions
        where one.Name == two.Name && one.At != two.At
        select (one, two);

    // A mirrored location repeats its lines; only one that was written twice can be wrong.
    private static IEnumerable<FactTable> Places(Position here, Position there)
    {
        if (here.Location is not [var x, var y, var z] || there.Location is not [var x2, var y2, var z2] || y.At == y2.At)
            yield break;
        yield return Table(here, there, "place across the vehicle", s => s.Set(AcrossGap, Gap(y, y2, Math.Abs(y.Si + y2.Si))),
            y.ToString(), QuantityText.Format(-y2.Si, y2.Quantity.Unit));
        foreach (var (what, one, two) in new[] { ("place along the vehicle", x, x2), ("height in the vehicle", z, z2) })
            yield return Table(here, there, what, s => s.Set(AcrossGap, Gap(one, two, Math.Abs(one.Si - two.Si))), one.ToString(),
                two.ToString());
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
        sheet.Set(MirrorName, here.Name);
        sheet.Set(OtherName, there.Name);
        sheet.Set(MirrorDatum, datum);
        sheet.Set(Here, one);
        sheet.Set(There, two);
        compare(sheet);
        return new FactTable(Subject.Mirror, here.Id, here.Name, sheet.Values) { At = here.At };
    }

    private static FactValue Gap(Figure one, Figure two, double gap) =>
        FactValue.Of(Dimension.Metre, gap) with { Data = [new Datum(one.ToString(), one.At), new Datum(two.ToString(), two.At)] };

    private static Located<string>? Count(HoleCircle? holes) =>
        holes is null ? null : new Located<string>(QuantityText.Number(holes.Angles.Count, 0), holes.At);

    private static Located<string>? Text(Figure? figure) => figure is null ? null : new Located<string>(figure.ToString(), figure.At);
}
