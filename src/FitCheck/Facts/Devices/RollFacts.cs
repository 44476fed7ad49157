using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>Whether a cable reaches in one piece: the length on its roll against the way that it takes.</summary>
internal static class RollFacts
{
    /// <summary>Of a supply cable.</summary>
    public static readonly FactGroup OfRun = new(Subject.Device);

    public static readonly NumberFact CableWay = OfRun.Number(
        "cable_way", Dimension.Metre, "Length of the power cable's route.",
        Reads.PowerCable.Itself);
    public static readonly NumberFact CableSpare = OfRun.Number(
        "cable_spare", Dimension.Metre,
        "Length by which a roll of the power cable exceeds its route; negative when one piece does not reach.",
        Reads.PowerCable.Itself);
    public static readonly WordFact GroundName = OfRun.Word(
        "ground_name", "Name of the ground cable.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly NumberFact GroundWay = OfRun.Number(
        "ground_way", Dimension.Metre, "Length of the ground cable's route.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly NumberFact GroundSpare = OfRun.Number(
        "ground_spare", Dimension.Metre,
        "Length by which a roll of the ground cable exceeds its route; negative when one piece does not reach.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);

    /// <summary>Of a new speaker wire.</summary>
    public static readonly FactGroup OfWire = new(Subject.Position);

    public static readonly WordFact NewWireName = OfWire.Word("new_wire_name", "Name of the new speaker wire.", Reads.Wire.Itself);
    public static readonly NumberFact NewWireWay = OfWire.Number(
        "new_wire_way", Dimension.Metre, "Length of the new speaker wire's route.",
        Reads.Wire.Itself);
    public static readonly NumberFact NewWireSpare = OfWire.Number(
        "new_wire_spare", Dimension.Metre,
        "Length by which a roll of the new speaker wire exceeds its route; negative when one piece does not reach.",
        Reads.Wire.Itself);

    public static void Compute(SupplyRunContext c, FactSheet sheet)
    {
        if (c.Run.Cable?.Part is { } cable)
        {
            var way = c.Length();
            Unsure[] open = way is { Estimated: false } ? [] : [c.LengthUnsure(way is not null, Passing(cable))];
            Set(sheet, CableWay, CableSpare, cable, way?.Metres, way?.Datum, open);
        }
        sheet.Set(GroundName, c.Run.Ground?.Part.Name ?? "no ground cable");
        if (c.Run.Ground?.Part is { } ground)
        {
            var (metres, estimated) = c.GroundLength;
            Set(sheet, GroundWay, GroundSpare, ground, metres,
                c.Run.GroundLength is { } given ? new Datum($"length of the ground cable of {c.Name}: {given}", given.At) : null,
                estimated ? [c.GroundUnsure(Passing(ground))] : []);
        }
    }

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Placed is not { NewWire.Part: { } cable, NewWireLength: { } length })
            return;
        sheet.Set(NewWireName, cable.Name);
        Set(sheet, NewWireWay, NewWireSpare, cable, length.Si, new Datum(c.AtPosition("length of the new wire"), length),
            length.IsEstimated
                ? [new Unsure(c.AtPosition("length of the new wire"),
                "Lay a string along the route that the wire will take, and measure it.", Estimated: true, Passing(cable))
                { Key = new DatumKey(c.Position.Id, DatumKey.Line, "new_wire.length") }] : []);
    }

    private static void Set(FactSheet sheet, NumberFact taken, NumberFact spare, WiringPart cable, double? way, Datum? datum,
        IReadOnlyList<Unsure> open)
    {
        var type = FactType.Number(Dimension.Metre);
        IReadOnlyList<Datum> data = datum is null ? [] : [datum];
        sheet.Set(taken,
            way is { } metres ? FactValue.Of(Dimension.Metre, metres) with { Data = data, Unsure = open }
                : FactValue.Unknown(type, [.. open]));
        var roll = new Unsure($"length of {cable.Name} on its roll", "Read it from the roll.", cable.Length is not null)
        { Key = DatumKey.In(cable, "length") };
        sheet.Set(spare, way is { } known && cable.Length is { } length
            ? FactValue.Of(Dimension.Metre, length.Si - known)
            with
            {
                Data = [.. data, new Datum($"length of {cable.Name}: {length}", length.At)],
                Unsure = [.. open, .. length.IsEstimated ? [roll] : Array.Empty<Unsure>()]
            }
            : FactValue.Unknown(type, [.. open, .. cable.Length is null ? [roll] : Array.Empty<Unsure>()]));
    }

    private static Func<PassLimit, string?>? Passing(WiringPart cable) => cable.Length is { } roll
        ? limit => limit.AtLeast
            ? $"{QuantityText.FormatLimit(Math.Max(0, roll.Si - limit.Limit), Unit.Find("m")!, orMore: false)} or less" : null : null;
}
