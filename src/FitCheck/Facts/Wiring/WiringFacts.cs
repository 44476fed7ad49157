using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Wiring;

/// <summary>
/// From the factory plug to the driver's terminals: does it mate, does a wire have to be cut, does the polarity stay known.
/// </summary>
internal static class WiringFacts
{
    private const string CellTest =
        "Touch a 1.5 V cell to the wires for a moment before connecting: with the cell's plus on the plus wire of a woofer its cone "
            + "moves out.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact UsesFactoryPlug = Declarations.Truth(
        "uses_factory_plug", "The driver is connected to the factory wire.",
        Reads.Driver.Itself, Reads.Wire.Itself)
        .Saying("new wire");
    public static readonly WordFact FactoryPlug = Declarations.Word(
        "factory_plug", "Family of the factory plug.",
        Reads.Driver.Itself, Reads.Harness.Itself, Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly TruthFact HasHarness = Declarations.Truth("has_harness", "A harness adapter is chosen.", Reads.Harness.Itself)
        .Saying("no harness adapter", "has a harness adapter");
    public static readonly TruthFact HarnessMatesPlug = Declarations.Truth(
        "harness_mates_plug", "The harness adapter's plug mates with the factory plug.",
        Reads.Driver.Itself, Reads.Harness.Itself, Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly TruthFact HarnessMatesDriver = Declarations.Truth(
        "harness_mates_driver", "The harness adapter's other end mates with the driver's terminals.",
        Reads.Driver["terminals.negative", "terminals.positive"], Reads.Harness["to.negative", "to.positive"], Reads.Wire.Itself,
        Reads.Place.Itself);
    public static readonly TruthFact MatesDirectly = Declarations.Truth(
        "mates_directly", "The factory plug mates with the driver directly.",
        Reads.Driver["terminals.family"], Reads.Harness.Itself, Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly TruthFact NeedsSplice = Declarations.Truth(
        "needs_splice", "No plug path exists, so factory wires must be cut and spliced.",
        Reads.Driver["terminals.family", "terminals.negative", "terminals.positive"], Reads.Harness["to.negative", "to.positive"],
        Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly TruthFact CuttingAccepted = Declarations.Truth(
        "cutting_accepted", "The build accepts cutting factory wires.",
        Reads.Place.Itself)
        .Saying("cutting is not accepted", "cutting is accepted");
    public static readonly TruthFact PolarityFollowed = Declarations.Truth(
        "polarity_followed", "Plus and minus can be followed from the factory plug to the driver.",
        Reads.Driver["terminals.polarity", "type"], Reads.Harness["polarity"], Reads.Wire.Itself, Reads.Place["connector.polarity"],
        Reads.BothSides["build.fit.polarity", "harness.polarity"]);
    public static readonly TruthFact LeadsSwapped = Declarations.Truth(
        "leads_swapped", "Plus and minus change places on the way to the driver: in the harness adapter, or at the driver.",
        Reads.Harness["polarity"], Reads.Wire.Itself, Reads.BothSides["build.fit.polarity", "harness.polarity"])
        .Saying("leads not swapped");
    public static readonly TruthFact Unplugged = Declarations.Truth(
        "unplugged", "The build writes that this position is disconnected.",
        Reads.Loom.Itself)
        .Saying("not disconnected");
    public static readonly TruthFact UnpluggedAndFed = Declarations.Truth(
        "unplugged_and_fed", "The position is disconnected, and yet a driver is to play there.",
        Reads.Loom.Itself)
        .Saying("not disconnected and fed");
    public static readonly WordFact DriverTerminals = Declarations.Word(
        "driver_terminals", "The driver's terminals.",
        Reads.Driver["terminals.family", "terminals.negative", "terminals.positive"], Reads.Harness.Itself, Reads.Wire.Itself,
        Reads.Place.Itself);
    public static readonly WordFact WiringPath = Declarations.Word(
        "wiring_path", "What the wire runs through, from the factory plug or the output to the driver's terminals.",
        Reads.Driver["terminals.family", "terminals.negative", "terminals.positive"], Reads.Harness["to.negative", "to.positive"],
        Reads.Wire.Itself, Reads.Place.Itself);
    public static readonly TruthFact HasNewWire = Declarations.Truth(
        "has_new_wire", "New speaker wire is pulled to this position.",
        Reads.Wire.Itself)
        .Saying("no new wire");
    public static readonly TruthFact InDoor = Declarations.Truth("in_door", "The position is in a door.", Reads.Place.Itself)
        .Saying("not a door");
    public static readonly TruthFact HasRubberPassage = Declarations.Truth(
        "has_rubber_passage", "A grommet for the new wire is on the list.",
        Reads.Grommets.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        sheet.Set(Unplugged, c.Placed.Disconnected);
        sheet.Set(UnpluggedAndFed,
            c.Placed.Disconnected && (c.Placed.Driver is not null || c.Placed.KeepsFactoryDriver || c.Channel is not null));
        if (c.Driver is not { } driver)
            return;
        sheet.Set(LeadsSwapped, IsSwapped(c.Placed));
        var uses = c.Placed.NewWire is null;
        sheet.Set(UsesFactoryPlug, uses);
        sheet.Set(HasNewWire, !uses);
        sheet.Set(InDoor, c.Position.Place.Length > 0 ? c.Position.Place == "door" : null, Fitting.PlaceFacts.PlaceOf(c));
        sheet.Set(HasRubberPassage,
            c.Build.Placed.Any(p => p.Sundries.Any(s => s.Part.Type == "grommet"))
                || c.Build.Extras.Any(e => e.Part is Sundry { Type: "grommet" }));
        sheet.Set(CuttingAccepted, c.Build.Accepted("cut-wires"));
        sheet.Set(DriverTerminals, Describe(driver.Terminals));
        sheet.Set(WiringPath, Path(c.Placed));
        var harness = c.Placed.Harness?.Part;
        sheet.Set(HasHarness, harness is not null);
        if (!uses)
        {
            // A new wire is marked from end to end.
            sheet.Set(PolarityFollowed, !IsSwapped(c.Placed) || IsMeant(c));
            return;
        }
        var plug = c.Position.Plug;
        sheet.Set(FactoryPlug, plug?.Value);
        var noPlug = new Unsure(c.AtPosition("factory plug"),
            "Take the factory driver out and compare its plug with the harness adapter's.", Estimated: false)
        { Key = c.Here("connector.family") };
        var noTerminals = new Unsure($"terminals of {driver.Name}", "Look at the driver: tab widths, a plug, or bare leads.",
            Estimated: false)
        { Key = DatumKey.In(driver, "terminals") };
        bool? mates = plug is null ? null : driver.Terminals is { } own ? own.Type == "plug" && own.Family?.Value == plug.Value : null;
        sheet.Set(MatesDirectly, mates, plug is null ? noPlug : noTerminals);
        bool? plugEnd = harness is null || plug is null ? null : harness.From?.Value == plug.Value;
        bool? driverEnd = harness is null || driver.Terminals is null ? null : harness.To?.Takes(driver.Terminals) == true;
        if (harness is not null)
        {
            sheet.Set(HarnessMatesPlug, plugEnd, noPlug);
            sheet.Set(HarnessMatesDriver, driverEnd, noTerminals);
        }
        bool? path = harness is null ? mates
            : plugEnd is false || driverEnd is false ? false : plugEnd is null || driverEnd is null ? null : true;
        sheet.Set(NeedsSplice, !path, plug is null ? noPlug : noTerminals);
        sheet.Set(PolarityFollowed, Polarity(c, driver, harness),
            new Unsure(c.AtPosition("polarity of the factory wires"), CellTest, Estimated: false) { Key = c.Here("connector.polarity") });
    }

    /// <summary>From the factory plug or the output to the driver: `duo-a plug → Harness … → tabs of 6.3 mm (+) and 4.8 mm (−)`.</summary>
    public static string Path(FittedPosition placed)
    {
        var end = Describe(placed.Driver?.Part.Terminals);
        if (placed.NewWire is { } wire)
            return $"new wire{(wire.Part.Gauge is { } gauge ? $" {WireGauge.NameOf(gauge.Si) ?? gauge.ToString()}" : "")}"
                + $"{(placed.NewWireLength is { } length ? $", {length}" : "")} → {end}";
        var plug = placed.Position.Plug is { } family ? $"{family.Value} plug" : "factory wire";
        var (harness, terminals) = (placed.Harness?.Part, placed.Driver?.Part.Terminals);
        if (harness is not null && terminals is not null && harness.From?.Value == placed.Position.Plug?.Value
            && harness.To?.Takes(terminals) == true)
            return $"{plug} → {harness.Name} → {end}";
        return harness is null && terminals is { Type: "plug" } && terminals.Family?.Value == placed.Position.Plug?.Value
            ? $"{plug} → the driver's own socket"
            : $"{plug}, cut and spliced → {end}";
    }

    // Twice is straight again.
    private static bool IsSwapped(FittedPosition placed) =>
        placed.Reversed != (placed is { NewWire: null, Harness.Part.Polarity.Value: "crossed" });

    // A tweeter or a subwoofer may sum better in reverse, where both sides are and somebody chose it; common practice, no source.
    private static bool IsMeant(PositionContext c) => c.Placed.Reversed && (c.Driver!.IsTweeter || c.Driver.Type == "subwoofer")
        && (Sides.Other(c.Build.Vehicle, c.Position.Id) is not { } other
            || c.Build.Placed.FirstOrDefault(p => p.Position.Id == other.Id) is not { Driver: not null } there || IsSwapped(there));

    // Known all the way, or not known: an unmarked lead anywhere breaks the chain.
    private static bool? Polarity(PositionContext c, Driver driver, Harness? harness)
    {
        if (IsSwapped(c.Placed) && !IsMeant(c))
            return false;
        if (c.Position.PlugPolarity?.Value != "known" || driver.Terminals?.Polarity is null or "unmarked")
            return null;
        return harness is { Polarity.Value: "unmarked" } or { Polarity: null } ? null : true;
    }

    private static string Describe(Terminals? t) => t?.Type switch
    {
        null => "terminals that its data sheet does not name",
        "tabs" => $"tabs of {t.Positive} (+) and {t.Negative} (−)",
        "plug" => $"a {t.Family?.Value} plug",
        "screws" => "screw terminals",
        _ => "bare leads",
    };
}
