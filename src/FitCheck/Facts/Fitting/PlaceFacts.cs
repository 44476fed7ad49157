using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Fitting;

/// <summary>What is where: the names that messages use, and the state of the place.</summary>
internal static class PlaceFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact HasDriver = Declarations.Truth(
        "has_driver", "A driver is chosen for the position.",
        Reads.DriverThere.Itself);
    public static readonly TruthFact HasAdapter = Declarations.Truth(
        "has_adapter", "A spacer or mounting adapter is chosen.",
        Reads.AdapterThere.Itself);
    public static readonly TruthFact Disconnected = Declarations.Truth(
        "disconnected", "The factory driver is unplugged and nothing takes its place.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly TruthFact InCup = Declarations.Truth("in_cup", "A tweeter cup is chosen.", Reads.CupThere.Itself);
    public static readonly WordFact DriverName = Declarations.Word("driver_name", "Name of the driver.", Reads.Driver.Itself);
    public static readonly WordFact AdapterName = Declarations.Word("adapter_name", "Name of the spacer.", Reads.Adapter.Itself);
    public static readonly WordFact CupName = Declarations.Word("cup_name", "Name of the tweeter cup.", Reads.Cup.Itself);
    public static readonly WordFact HarnessName = Declarations.Word("harness_name", "Name of the harness adapter.", Reads.Harness.Itself);
    public static readonly WordFact ModuleName = Declarations.Word(
        "module_name", "Name of the crossover module that lies here.",
        Reads.Module.Itself);
    public static readonly WordFact VehicleName = Declarations.Word("vehicle_name", "Name of the vehicle.", Reads.Place.Itself);
    public static readonly WordFact Role = Declarations.Word(
        "role", "What the position is for: woofer, tweeter, full-range or subwoofer.",
        Reads.Place.Itself);
    public static readonly WordFact DriverType = Declarations.Word("driver_type", "Type of the driver.", Reads.Driver.Itself);
    public static readonly TruthFact RoleFits = Declarations.Truth(
        "role_fits", "The driver's type suits the position's role.",
        Reads.Driver.Itself, Reads.Place.Itself);
    public static readonly WordFact Place = Declarations.Word(
        "place", "Where in the vehicle: door, dash, sail, pillar, rear-panel, shelf or cargo.",
        Reads.Place.Itself);
    public static readonly TruthFact AdapterFitsHere = Declarations.Truth(
        "adapter_fits_here", "The spacer is made for this vehicle and position, or is universal.",
        Reads.Adapter["fits"], Reads.Place.Itself);
    public static readonly TruthFact AdapterHandFits = Declarations.Truth(
        "adapter_hand_fits", "The spacer's hand agrees with the side of the vehicle.",
        Reads.Adapter["handed"], Reads.Place.Itself);
    public static readonly WordFact AdapterHand = Declarations.Word("adapter_hand", "The hand of the spacer.", Reads.Adapter["handed"]);
    public static readonly WordFact Side = Declarations.Word("side", "The side of the vehicle.", Reads.Place.Itself);
    public static readonly WordFact AdapterMaterial = Declarations.Word(
        "adapter_material", "Material of the spacer.",
        Reads.Adapter["material"]);
    public static readonly TruthFact AdapterLacksCableExit = Declarations.Truth(
        "adapter_lacks_cable_exit", "The spacer has no exit for the cable.",
        Reads.Adapter["cable_exit"]);
    public static readonly TruthFact CupFitsHere = Declarations.Truth(
        "cup_fits_here", "The tweeter cup is made for this vehicle and position, or is universal.",
        Reads.Cup["fits"], Reads.Place.Itself);
    public static readonly TruthFact Wet = Declarations.Truth("wet", "Water runs behind the panel.", Reads.Place["wet"]);
    public static readonly TruthFact AirbagNear = Declarations.Truth("airbag_near", "An airbag is near.", Reads.Place["airbag_near"]);
    public static readonly TruthFact PressureSensor = Declarations.Truth(
        "pressure_sensor", "The door carries a pressure sensor of the airbag system.",
        Reads.Place["pressure_sensor"]);
    public static readonly TruthFact MetalPanel = Declarations.Truth(
        "metal_panel", "The panel is of metal.",
        Reads.Place["mounting.panel_material"]);
    public static readonly TruthFact DrillingAccepted = Declarations.Truth(
        "drilling_accepted", "The build accepts drilling.",
        Reads.Work.Itself);
    public static readonly TruthFact EnlargingAccepted = Declarations.Truth(
        "enlarging_accepted", "The build accepts enlarging holes.",
        Reads.Work.Itself);
    public static readonly TruthFact TrimmingAccepted = Declarations.Truth(
        "trimming_accepted", "The build accepts trimming parts.",
        Reads.Work.Itself);
    public static readonly TruthFact HasFoamUnderSpacer = Declarations.Truth(
        "has_foam_under_spacer", "Foam tape or damping sheet lies between spacer and panel.",
        Reads.Tape.Itself);
    public static readonly TruthFact HasGasketRing = Declarations.Truth(
        "has_gasket_ring", "A gasket ring closes the gap to the door card.",
        Reads.Gasket.Itself);
    public static readonly TruthFact HasDoorCardGap = Declarations.Truth(
        "has_door_card_gap", "A gap is left between the driver and the door card.",
        Reads.Place["mounting.door_card_gap"]);
    public static readonly TruthFact HasDamping = Declarations.Truth("has_damping", "Damping sheet is on the panel.", Reads.Tape.Itself);
    public static readonly TruthFact OpenedWaterShed = Declarations.Truth(
        "opened_water_shed", "The water shed is opened and not closed again.",
        Reads.MoistureGuard.Itself, Reads.Treatment["fit.opened_water_shed"]);
    public static readonly TruthFact FeedsFromFactory = Declarations.Truth(
        "feeds_from_factory", "The driver hangs on the factory radio or its amplifier.",
        Reads.Feed.Itself, Reads.Output["amplifier", "source-unit"], Reads.Place["factory_channel"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        var (build, position) = (c.Build, c.Position);
        sheet.Set(HasDriver, c.Driver is not null);
        sheet.Set(HasAdapter, c.Adapter is not null);
        sheet.Set(Disconnected, c.Placed.Disconnected);
        sheet.Set(InCup, c.Cup is not null);
        sheet.Set(DriverName, c.Driver?.Name ?? "no driver");
        sheet.Set(AdapterName, c.Adapter?.Name ?? "no spacer");
        sheet.Set(CupName, c.Cup?.Name ?? "no cup");
        sheet.Set(HarnessName, c.Placed.Harness?.Part.Name ?? "no harness adapter");
        sheet.Set(ModuleName, c.Placed.Module?.Part.Name ?? "no module");
        sheet.Set(VehicleName, build.Vehicle.Name);
        sheet.Set(Role, position.Role);
        sheet.Set(Place, position.Place);
        sheet.Set(Side, position.Side);
        if (c.Driver is { } driver)
        {
            sheet.Set(DriverType, driver.Type);
            sheet.Set(RoleFits, Suits(driver.Type, position.Role));
        }
        sheet.Set(Wet, position.Wet);
        sheet.Set(AirbagNear, position.AirbagNear,
            new Unsure(c.AtPosition("whether an airbag is near"), "Look for its mark on the trim, and in the vehicle maker's documents.",
                Estimated: false));
        // Only a door is the housing of one.
        sheet.Set(PressureSensor, position.PressureSensor ?? (position.Place == "door" ? null : false),
            new Unsure(c.AtPosition("whether the door carries a pressure sensor"), "Look it up in the vehicle maker's documents.",
                Estimated: false));
        sheet.Set(MetalPanel, position.Mounting.PanelMaterial is "steel" or "aluminium");
        sheet.Set(DrillingAccepted, build.Accepted("drill"));
        sheet.Set(EnlargingAccepted, build.Accepted("enlarge-holes"));
        sheet.Set(TrimmingAccepted, build.Accepted("trim-parts"));
        sheet.Set(HasFoamUnderSpacer, build.HasTreatment("foam-tape", position.Id) || build.HasTreatment("damping-sheet", position.Id));
        sheet.Set(HasGasketRing, build.HasTreatment("gasket-ring", position.Id));
        sheet.Set(HasDamping, build.HasTreatment("damping-sheet", position.Id));
        sheet.Set(HasDoorCardGap, position.Mounting.DoorCardGap is { Si: > 0 });
        sheet.Set(OpenedWaterShed, c.Placed.OpenedWaterShed && !build.HasTreatment("moisture-guard", position.Id));
        sheet.Set(FeedsFromFactory, c.Channel?.Channel.Device.IsFactory == true);
        Parts(c, sheet);
    }

    private static void Parts(PositionContext c, FactSheet sheet)
    {
        if (c.Adapter is { } adapter)
        {
            sheet.Set(AdapterFitsHere, Fit.Covers(adapter.Fits, c.Build.Vehicle.Id, c.Position.Id));
            sheet.Set(AdapterHand, adapter.Handed);
            sheet.Set(AdapterHandFits, HandFits(adapter, c.Position));
            sheet.Set(AdapterMaterial, adapter.Material?.Value);
            if (adapter.CableExit is { } exit)
                sheet.Set(AdapterLacksCableExit, !exit);
        }
        if (c.Cup is { } cup)
            sheet.Set(CupFitsHere, Fit.Covers(cup.Fits, c.Build.Vehicle.Id, c.Position.Id));
    }

    /// <summary>True when a driver of this type belongs at a position of this role.</summary>
    internal static bool Suits(string type, string role) => role switch
    {
        "tweeter" => type == "tweeter",
        "subwoofer" => type == "subwoofer",
        "woofer" => type is "woofer" or "coaxial" or "full-range",
        _ => type is "coaxial" or "full-range" or "woofer",
    };

    /// <summary>True when a spacer is made for the side of the vehicle on which the position is, or for both.</summary>
    internal static bool HandFits(Adapter adapter, Position position) => adapter.Handed == "no" || adapter.Handed == position.Side;
}
