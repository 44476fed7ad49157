using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Fitting;

/// <summary>What is where: the names that messages use, and the state of the place.</summary>
internal static class PlaceFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Truth("has_driver", "A driver is chosen for the position.").On(RestsOn.Nothing),
        Truth("has_adapter", "A spacer or mounting adapter is chosen.").On(RestsOn.Nothing),
        Truth("disconnected", "The factory driver is unplugged and nothing takes its place."),
        Truth("in_cup", "A tweeter cup is chosen.").On(RestsOn.Nothing),
        Word("driver_name", "Name of the driver.").On(RestsOn.Driver),
        Word("adapter_name", "Name of the spacer.").On(RestsOn.Mount),
        Word("cup_name", "Name of the tweeter cup.").On(RestsOn.Mount),
        Word("harness_name", "Name of the harness adapter."),
        Word("module_name", "Name of the crossover module that lies here."),
        Word("vehicle_name", "Name of the vehicle.").On(RestsOn.Place),
        Word("role", "What the position is for: woofer, tweeter, full-range or subwoofer.").On(RestsOn.Place),
        Word("driver_type", "Type of the driver.").On(RestsOn.Driver),
        Truth("role_fits", "The driver's type suits the position's role.").On(RestsOn.Driver | RestsOn.Place),
        Word("place", "Where in the vehicle: door, dash, sail, pillar, rear-panel, shelf or cargo.").On(RestsOn.Place),
        Truth("adapter_fits_here", "The spacer is made for this vehicle and position, or is universal.").On(RestsOn.Mount | RestsOn.Place),
        Truth("adapter_hand_fits", "The spacer's hand agrees with the side of the vehicle.").On(RestsOn.Mount | RestsOn.Place),
        Word("adapter_hand", "The hand of the spacer.").On(RestsOn.Mount),
        Word("side", "The side of the vehicle.").On(RestsOn.Place),
        Word("adapter_material", "Material of the spacer.").On(RestsOn.Mount),
        Truth("adapter_lacks_cable_exit", "The spacer has no exit for the cable.").On(RestsOn.Mount),
        Truth("cup_fits_here", "The tweeter cup is made for this vehicle and position, or is universal.").On(RestsOn.Mount | RestsOn.Place),
        Truth("wet", "Water runs behind the panel.").On(RestsOn.Place),
        Truth("airbag_near", "An airbag is near.").On(RestsOn.Place),
        Truth("pressure_sensor", "The door carries a pressure sensor of the airbag system.").On(RestsOn.Place),
        Truth("metal_panel", "The panel is of metal.").On(RestsOn.Place),
        Truth("drilling_accepted", "The build accepts drilling.").On(RestsOn.Nothing),
        Truth("enlarging_accepted", "The build accepts enlarging holes.").On(RestsOn.Nothing),
        Truth("trimming_accepted", "The build accepts trimming parts.").On(RestsOn.Nothing),
        Truth("has_foam_under_spacer", "Foam tape or damping sheet lies between spacer and panel."),
        Truth("has_gasket_ring", "A gasket ring closes the gap to the door card."),
        Truth("has_door_card_gap", "A gap is left between the driver and the door card.").On(RestsOn.Place),
        Truth("has_damping", "Damping sheet is on the panel."),
        Truth("opened_water_shed", "The water shed is opened and not closed again."),
        Truth("feeds_from_factory", "The driver hangs on the factory radio or its amplifier."),
    ];

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        var (build, position) = (c.Build, c.Position);
        sheet.Set("has_driver", c.Driver is not null);
        sheet.Set("has_adapter", c.Adapter is not null);
        sheet.Set("disconnected", c.Placed.Disconnected);
        sheet.Set("in_cup", c.Cup is not null);
        sheet.Set("driver_name", c.Driver?.Name ?? "no driver");
        sheet.Set("adapter_name", c.Adapter?.Name ?? "no spacer");
        sheet.Set("cup_name", c.Cup?.Name ?? "no cup");
        sheet.Set("harness_name", c.Placed.Harness?.Part.Name ?? "no harness adapter");
        sheet.Set("module_name", c.Placed.Module?.Part.Name ?? "no module");
        sheet.Set("vehicle_name", build.Vehicle.Name);
        sheet.Set("role", position.Role);
        sheet.Set("place", position.Place);
        sheet.Set("side", position.Side);
        if (c.Driver is { } driver)
        {
            sheet.Set("driver_type", driver.Type);
            sheet.Set("role_fits", Suits(driver.Type, position.Role));
        }
        sheet.Set("wet", position.Wet);
        sheet.Set("airbag_near", position.AirbagNear, new Unsure(c.AtPosition("whether an airbag is near"), "Look for its mark on the trim, and in the vehicle maker's documents.", Estimated: false));
        // Only a door is the housing of one.
        sheet.Set("pressure_sensor", position.PressureSensor ?? (position.Place == "door" ? null : false),
            new Unsure(c.AtPosition("whether the door carries a pressure sensor"), "Look it up in the vehicle maker's documents.", Estimated: false));
        sheet.Set("metal_panel", position.Mounting.PanelMaterial is "steel" or "aluminium");
        sheet.Set("drilling_accepted", build.Accepted("drill"));
        sheet.Set("enlarging_accepted", build.Accepted("enlarge-holes"));
        sheet.Set("trimming_accepted", build.Accepted("trim-parts"));
        sheet.Set("has_foam_under_spacer", build.HasTreatment("foam-tape", position.Id) || build.HasTreatment("damping-sheet", position.Id));
        sheet.Set("has_gasket_ring", build.HasTreatment("gasket-ring", position.Id));
        sheet.Set("has_damping", build.HasTreatment("damping-sheet", position.Id));
        sheet.Set("has_door_card_gap", position.Mounting.DoorCardGap is { Si: > 0 });
        sheet.Set("opened_water_shed", c.Placed.OpenedWaterShed && !build.HasTreatment("moisture-guard", position.Id));
        sheet.Set("feeds_from_factory", c.Channel?.Channel.Device.IsFactory == true);
        Parts(c, sheet);
    }

    private static void Parts(PositionContext c, FactSheet sheet)
    {
        if (c.Adapter is { } adapter)
        {
            sheet.Set("adapter_fits_here", Fit.Covers(adapter.Fits, c.Build.Vehicle.Id, c.Position.Id));
            sheet.Set("adapter_hand", adapter.Handed);
            sheet.Set("adapter_hand_fits", adapter.Handed == "no" || adapter.Handed == c.Position.Side);
            sheet.Set("adapter_material", adapter.Material?.Value);
            if (adapter.CableExit is { } exit)
                sheet.Set("adapter_lacks_cable_exit", !exit);
        }
        if (c.Cup is { } cup)
            sheet.Set("cup_fits_here", Fit.Covers(cup.Fits, c.Build.Vehicle.Id, c.Position.Id));
    }

    /// <summary>True when a driver of this type belongs at a position of this role.</summary>
    internal static bool Suits(string type, string role) => role switch
    {
        "tweeter" => type == "tweeter",
        "subwoofer" => type == "subwoofer",
        "woofer" => type is "woofer" or "coaxial" or "full-range",
        _ => type is "coaxial" or "full-range" or "woofer",
    };

    private static FactDeclaration Truth(string name, string meaning) => Declare.Truth(Subject.Position, name, meaning);

    private static FactDeclaration Word(string name, string meaning) => Declare.Word(Subject.Position, name, meaning);
}
