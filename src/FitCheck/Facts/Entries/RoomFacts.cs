using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether there can be the room that an entry tells of: in a cup, behind a panel, between battery and cargo space.</summary>
internal static class RoomFacts
{
    public static readonly FactGroup Declarations = new(Subject.Entry);

    public static readonly NumberFact CupDepth = Declarations.Number(
        "cup_depth", Dimension.Metre, "How deep a tweeter a cup takes.", Reads.Entry.Itself);
    public static readonly NumberFact CupHole = Declarations.Number(
        "cup_hole", Dimension.Metre, "Hole of a cup.", Reads.Entry.Itself);
    public static readonly NumberFact BatteryWay = Declarations.Number(
        "battery_way", Dimension.Metre, "Way of a cable to the cargo space from a battery that is in it.", Reads.Entry.Itself);
    public static readonly WordFact ObstructionName = Declarations.Word(
        "obstruction_name", "Something that stands behind a panel.", Reads.Entry.Itself);
    public static readonly NumberFact ObstructionDepth = Declarations.Number(
        "obstruction_depth", Dimension.Metre, "Where it stands, from the mounting plane.", Reads.Entry.Itself);
    public static readonly NumberFact FixedDepth = Declarations.Number(
        "fixed_depth", Dimension.Metre, "Depth at the same place, to what is fixed anywhere behind the panel.", Reads.Entry.Itself);

    /// <summary>What an entry has once.</summary>
    public static void Compute(Entry entry, FactSheet sheet)
    {
        if (entry is Cup cup)
        {
            sheet.Set(CupDepth, cup.Depth, "depth");
            sheet.Set(CupHole, cup.Hole, "hole");
        }
        if (entry is Vehicle { Battery.Value: "cargo", BatteryToCargo: { } way } vehicle)
            sheet.Set(BatteryWay, FactValue.Of(Dimension.Metre, way.Si) with
            {
                Data = [new Datum("route from the battery to the cargo space", way), new Datum("place of the battery", vehicle.Battery.At)],
            });
    }

    /// <summary>Of each thing behind each panel; a mirrored position has the same.</summary>
    public static IEnumerable<FactTable> Each(Entry entry) => entry is not Vehicle vehicle ? [] :
        from position in vehicle.Positions
        where !position.Mirrored && position.Mounting.Depth is not null
        from obstruction in position.Mounting.Obstructions
        where obstruction.Depth is not null
        select Table(vehicle, position, obstruction);

    private static FactTable Table(Vehicle vehicle, Position position, Obstruction obstruction)
    {
        var sheet = new FactSheet();
        sheet.Set(EntryFacts.EntryName, vehicle.Name);
        sheet.Set(ObstructionName, $"{obstruction.Name} at {position.Name}");
        var (stands, depth) = (obstruction.Depth!, position.Mounting.Depth!);
        sheet.Set(ObstructionDepth, FactValue.Of(Dimension.Metre, stands.Si) with
        {
            Data = [new Datum($"depth of {obstruction.Name}", stands), new Datum("depth behind the panel", depth)],
        });
        sheet.Set(FixedDepth, depth.Si);
        return new FactTable(Subject.Entry, vehicle.Id, vehicle.Name, sheet.Values) { At = stands.At };
    }
}
