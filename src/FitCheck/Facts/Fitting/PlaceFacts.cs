using FitCheck.Builds.Readable;
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
        Reads.DriverThere.Itself)
        .Saying("no driver");
    public static readonly TruthFact HasAdapter = Declarations.Truth(
        "has_adapter", "A spacer is chosen.",
        Reads.AdapterThere.Itself)
        .Saying("no spacer", "on a spacer");
    public static readonly TruthFact Disconnected = Declarations.Truth(
        "disconnected", "The factory driver is unplugged and nothing takes its place.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly TruthFact InCup = Declarations.Truth("in_cup", "A tweeter cup is chosen.", Reads.CupThere.Itself)
        .Saying("no cup", "in a cup");
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
        Reads.Place.Itself)
        .Saying("not a {0}");
    public static readonly TruthFact AdapterFitsHere = Declarations.Truth(
        "adapter_fits_here", "The spacer is made for this vehicle and position, or is universal.",
        Reads.Adapter["fits"], Reads.Place.Itself);
    public static readonly TruthFact AdapterHandFits = Declarations.Truth(
        "adapter_hand_fits", "The spacer's hand agrees with the side of the vehicle.",
        Reads.Adapter["handed"], Reads.Place.Itself)
        .Saying("spacer of the other hand");
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
    public static readonly TruthFact Wet = Declarations.Truth("wet", "Water runs behind the panel.", Reads.Place["wet"])
        .Saying("not wet");
    public static readonly TruthFact AirbagNear = Declarations.Truth("airbag_near", "An airbag is near.", Reads.Place["airbag_near"]);
    public static readonly TruthFact PressureSensor = Declarations.Truth(
        "pressure_sensor", "The door carries a pressure sensor of the airbag system.",
        Reads.Place["pressure_sensor"]);
    public static readonly TruthFact MetalPanel = Declarations.Truth(
        "metal_panel", "The panel is of metal.",
        Reads.Place["mounting.panel_material"])
        .Saying("not on metal");
    public static readonly TruthFact PlasticPanel = Declarations.Truth(
        "plastic_panel", "The panel is of plastic.", Reads.Place["mounting.panel_material"]);
    public static readonly TruthFact PlasticSpacer = Declarations.Truth(
        "plastic_spacer", "The spacer is of plastic.", Reads.Adapter["material"]);
    public static readonly TruthFact MetalSpacer = Declarations.Truth(
        "metal_spacer", "The spacer is of metal.", Reads.Adapter["material"]);
    public static readonly TruthFact DrillingAccepted = Declarations.Truth(
        "drilling_accepted", "The build accepts drilling.",
        Reads.Work.Itself)
        .Saying("drilling is not accepted", "drilling is accepted");
    public static readonly TruthFact EnlargingAccepted = Declarations.Truth(
        "enlarging_accepted", "The build accepts enlarging holes.",
        Reads.Work.Itself)
        .Saying("enlarging is not accepted", "enlarging is accepted");
    public static readonly TruthFact TrimmingAccepted = Declarations.Truth(
        "trimming_accepted", "The build accepts trimming parts.",
        Reads.Work.Itself)
        .Saying("trimming is not accepted", "trimming is accepted");
    public static readonly TruthFact HasFoamUnderSpacer = Declarations.Truth(
        "has_foam_under_spacer", "Foam tape or damping sheet lies between spacer and panel.",
        Reads.Tape.Itself);
    public static readonly TruthFact HasGasketRing = Declarations.Truth(
        "has_gasket_ring", "A gasket ring closes the gap to the door card.",
        Reads.Gasket.Itself);
    public static readonly TruthFact HasDoorCardGap = Declarations.Truth(
        "has_door_card_gap", "A gap is left between the driver and the door card.",
        Reads.Place["mounting.door_card_gap"])
        .Saying("no gap to the door card");
    public static readonly TruthFact HasDamping = Declarations.Truth("has_damping", "Damping sheet is on the panel.", Reads.Tape.Itself);
    public static readonly TruthFact OpenedWaterShed = Declarations.Truth(
        "opened_water_shed", "The water shed is opened and not closed again.",
        Reads.MoistureGuard.Itself, Reads.Treatment["fit.opened_water_shed"]);
    public static readonly TruthFact HasRecess = Declarations.Truth(
        "has_recess", "The panel has a recess or trim ring for the flange.",
        Reads.Place["mounting.recess"])
        .Saying("no recess");
    public static readonly TruthFact HasInnerTabs = Declarations.Truth(
        "has_inner_tabs", "Tabs stand into the opening of the spacer.",
        Reads.Adapter["inner_tabs"])
        .Saying("no inner tabs");
    public static readonly TruthFact HasDirection = Declarations.Truth(
        "has_direction", "The panel faces in a direction that is usual for its place.",
        Reads.Place["place", "side"])
        .Saying("no direction");
    public static readonly TruthFact FeedsFromFactory = Declarations.Truth(
        "feeds_from_factory", "The driver is connected to the factory radio or its amplifier.",
        Reads.Feed.Itself, Reads.Output["amplifier", "source-unit"], Reads.Place["factory_channel"])
        .Saying("not on the factory radio", "on the factory radio");

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
        Where(c, sheet);
        if (c.Driver is { } driver)
        {
            sheet.Set(DriverType, driver.Type);
            sheet.Set(RoleFits, Suits(driver.Type, position.Role));
        }
        sheet.Set(Wet, position.Wet, new Unsure(c.AtPosition("whether water runs down behind the panel"),
            "Look for a water shed behind the door card, or for traces of water.", Estimated: false)
        { Key = c.Here("wet") });
        sheet.Set(AirbagNear, position.AirbagNear,
            new Unsure(c.AtPosition("whether an airbag is near"), "Look for its mark on the trim, and in the vehicle maker's documents.",
                Estimated: false)
            { Key = c.Here("airbag_near") });
        // Only a door is the housing of one.
        sheet.Set(PressureSensor, position.PressureSensor ?? (position.Place is "door" or "" ? null : false),
            new Unsure(c.AtPosition("whether the door carries a pressure sensor"), "Look it up in the vehicle maker's documents.",
                Estimated: false)
            { Key = c.Here("pressure_sensor") });
        sheet.Set(MetalPanel, IsMetal(position), MaterialOfPanel(c));
        sheet.Set(HasRecess, position.Mounting.HasRecess, new Unsure(c.AtPosition("diameter of the recess or trim ring"),
            "Measure with a calliper, in two directions; a panel without any is `none`.", Estimated: false)
        { Key = c.Here("mounting.recess") });
        sheet.Set(PlasticPanel, IsPlastic(position), MaterialOfPanel(c));
        sheet.Set(DrillingAccepted, build.Accepted("drill"));
        sheet.Set(EnlargingAccepted, build.Accepted("enlarge-holes"));
        sheet.Set(TrimmingAccepted, build.Accepted("trim-parts"));
        sheet.Set(HasFoamUnderSpacer, build.HasTreatment("foam-tape", position.Id) || build.HasTreatment("damping-sheet", position.Id));
        sheet.Set(HasGasketRing, build.HasTreatment("gasket-ring", position.Id));
        sheet.Set(HasDamping, build.HasTreatment("damping-sheet", position.Id));
        sheet.Set(HasDoorCardGap, position.Mounting.DoorCardGap is { } gap ? gap.Si > 0 : null,
            new Unsure(c.AtPosition("gap from the panel to the back of the door card"),
                "Put lumps of modelling clay on the panel, fit the door card, take it off again and measure their height.",
                Estimated: false)
            { Key = c.Here("mounting.door_card_gap") });
        sheet.Set(OpenedWaterShed, c.Placed.OpenedWaterShed && !build.HasTreatment("moisture-guard", position.Id));
        sheet.Set(FeedsFromFactory, c.IsFed is null ? null : c.Channel?.Channel.Device.IsFactory == true, c.FedBy);
        Parts(c, sheet);
    }

    private static void Parts(PositionContext c, FactSheet sheet)
    {
        if (c.Adapter is { } adapter)
        {
            sheet.Set(AdapterFitsHere, Fit.IsFor(adapter.Fits, adapter.IsUniversal, c.Build.Vehicle.ListedAs, c.Position.Id),
                MadeFor(adapter));
            sheet.Set(AdapterHand, adapter.Handed);
            sheet.Set(AdapterHandFits, HandFits(adapter, c.Position), adapter.Handed is null
                ? new Unsure($"hand of {adapter.Name}", "Look for a mark, `L` or `R`, on its back; one that fits both sides is `no`.",
                    Estimated: false)
                { Key = DatumKey.In(adapter, "handed") }
                : SideOf(c));
            sheet.Set(HasInnerTabs, adapter.HasTabs, new Unsure($"inner tabs of {adapter.Name}",
                "Look whether tabs stand into its opening, and measure the radius between them; one without any is `none`.",
                Estimated: false));
            sheet.Set(AdapterMaterial, adapter.Material?.Value);
            var material = new Unsure($"material of {adapter.Name}", "Look for the mark on its back, or ask the maker.", Estimated: false)
            { Key = DatumKey.In(adapter, "material") };
            sheet.Set(PlasticSpacer, IsPlastic(adapter), material);
            sheet.Set(MetalSpacer, IsMetal(adapter), material);
            if (adapter.CableExit is { } exit)
                sheet.Set(AdapterLacksCableExit, !exit);
        }
        if (c.Cup is { } cup)
            sheet.Set(CupFitsHere, Fit.IsFor(cup.Fits, cup.IsUniversal, c.Build.Vehicle.ListedAs, c.Position.Id), MadeFor(cup));
    }

    private static void Where(PositionContext c, FactSheet sheet)
    {
        sheet.Set(Place, c.Position.Place.Length > 0 ? FactValue.Of(c.Position.Place)
            : FactValue.Unknown(FactType.Word, PlaceOf(c)));
        sheet.Set(Side, c.Position.KnownSide is { } side ? FactValue.Of(side) : FactValue.Unknown(FactType.Word, SideOf(c)));
        sheet.Set(HasDirection, Faces(c.Position), c.Position.Place.Length > 0 ? SideOf(c) : PlaceOf(c));
    }

    /// <summary>
    /// Whether the panel faces somewhere: bass from the cargo space has no direction, and what stands in the middle of the vehicle only
    /// where it looks up or back.
    /// </summary>
    public static bool? Faces(Position position) => position.Place switch
    {
        "" => null,
        "cargo" => false,
        "dash" or "shelf" => true,
        _ => position.KnownSide is { } side ? side != "centre" : null,
    };

    public static Unsure PlaceOf(PositionContext c) => new(c.AtPosition("what place it is"),
        "Look where the driver sits: door, dash, sail, pillar, rear-panel, shelf or cargo.", Estimated: false)
    { Key = c.Here("place") };

    public static Unsure SideOf(PositionContext c) =>
        new(c.AtPosition("which side it is"), "Left, right or centre, seen in the direction of travel.", Estimated: false)
        { Key = c.Here("side") };

    private static Unsure MadeFor(Part part) => new($"what {part.Name} is made for",
        "Read it from its box or the maker's list; one that is made for no vehicle in particular fits `any`.", Estimated: false);

    /// <summary>True when a driver of this type belongs at a position of this role.</summary>
    internal static bool Suits(string type, string role) => role switch
    {
        "tweeter" => type == "tweeter",
        "subwoofer" => type == "subwoofer",
        "woofer" => type is "woofer" or "coaxial" or "full-range",
        _ => type is "coaxial" or "full-range" or "woofer",
    };

    private static Unsure MaterialOfPanel(PositionContext c) =>
        new(c.AtPosition("material of the panel"), "Try it with a magnet, and look at a cut edge.", Estimated: false)
        { Key = c.Here("mounting.panel_material") };

    /// <summary>Null where nobody wrote of what the panel is.</summary>
    internal static bool? IsPlastic(Position position) => position.Mounting.PanelMaterial is { } of ? of == "plastic" : null;

    /// <inheritdoc cref="IsPlastic(Position)"/>
    internal static bool? IsMetal(Position position) => position.Mounting.PanelMaterial is { } of ? of is "steel" or "aluminium" : null;

    /// <summary>Null where nobody wrote of what the spacer is.</summary>
    internal static bool? IsPlastic(Adapter adapter) => adapter.Material is { } of ? of.Value is "plastic" or "abs" or "hdpe" : null;

    /// <inheritdoc cref="IsPlastic(Adapter)"/>
    internal static bool? IsMetal(Adapter adapter) => adapter.Material is { } of ? of.Value is "aluminium" or "steel" : null;

    /// <summary>
    /// Whether a spacer is made for the side of the vehicle on which the position is, or for both; null when that is not recorded.
    /// </summary>
    internal static bool? HandFits(Adapter adapter, Position position) =>
        adapter.Handed == "no" ? true : adapter.Handed is null || position.KnownSide is not { } side ? null : adapter.Handed == side;
}
