using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A vehicle and the places for drivers in it.</summary>
public sealed record Vehicle : Entry
{
    internal Vehicle(Fields f) : base(f)
    {
        FactorySource = f.Text("factory_source");
        FactoryAmplified = f.Truth("factory_amplified") ?? false;
        FactoryEqualised = f.Truth("factory_equalised") ?? false;
        Steering = f.Text("steering")?.Value;
        Alternator = f.Inner("supply")?.Figure("alternator", Dimension.Ampere);
        BatteryToCargo = f.Inner("supply")?.Length("battery_to_cargo");
        MainFusePlace = f.Inner("supply")?.Text("main_fuse_place")?.Value;
        Battery = f.Inner("supply")?.Text("battery");
        Positions = PositionReader.Read(f);
    }

    public Located<string>? FactorySource { get; }
    public bool FactoryAmplified { get; }
    public bool FactoryEqualised { get; }
    /// <summary>The side on which the driver sits, `left` or `right`; null when not recorded.</summary>
    public string? Steering { get; }
    /// <summary>What the alternator can give.</summary>
    public Figure? Alternator { get; }
    /// <summary>Along the way of a cable.</summary>
    public Figure? BatteryToCargo { get; }
    public string? MainFusePlace { get; }
    /// <summary>Where the battery is: `engine-space`, `cabin` or `cargo`; null when not recorded.</summary>
    public Located<string>? Battery { get; }
    public IReadOnlyList<Position> Positions { get; }

    public Position? Find(string position) => Positions.FirstOrDefault(p => p.Id == position);
}

/// <summary>One place in one vehicle where one driver goes.</summary>
public sealed record Position
{
    internal Position(Fields f, bool mirrored)
    {
        At = f.Text("id")?.At ?? f.At;
        Id = f.Word("id");
        Name = f.Text("name")?.Value ?? Id;
        Mirrored = mirrored;
        MirrorOf = f.Text("mirror_of");
        Side = f.Word("side", "centre");
        SideAt = f.Text("side")?.At;
        RoleAt = f.Text("role");
        Role = RoleAt?.Value ?? "";
        Place = f.Word("place");
        Wet = f.Truth("wet") ?? false;
        AirbagNear = f.Truth("airbag_near");
        PressureSensor = f.Truth("pressure_sensor");
        FactoryChannel = f.Text("factory_channel");
        Mounting = new Mounting(f.Inner("mounting") ?? new Fields(new YamlMap(f.At, []), f.Provenance, f.Problems));
        FactoryImpedance = f.Inner("factory_driver")?.Figure("impedance", Dimension.Ohm);
        FactoryResistance = f.Inner("factory_driver")?.Figure("resistance", Dimension.Ohm);
        OwnCapacitor = f.Inner("factory_driver")?.Figure("own_capacitor", Dimension.Farad);
        HasOwnCapacitor = f.Inner("factory_driver")?.Truth("has_own_capacitor") ?? (OwnCapacitor is null ? null : true);
        FeedType = f.Inner("feed")?.Text("type") ?? new Located<string>("unknown", At);
        FeedNetwork = f.Inner("feed") is { } feed ? LadderPart.Read(feed, "network") : [];
        Plug = f.Inner("connector")?.Text("family");
        PlugPolarity = f.Inner("connector")?.Text("polarity");
        PlugDistance = f.Inner("connector")?.Length("distance");
        WireGauge = f.Inner("wire")?.Figure("gauge", Dimension.SquareMetre);
        WireLength = f.Inner("wire")?.Length("length");
        Location = f.Figures("location", Dimension.Metre);
    }

    public Location At { get; }
    public string Id { get; }
    public string Name { get; }
    /// <summary>True when its data were taken from the other side of the vehicle.</summary>
    public bool Mirrored { get; }
    /// <summary>The position from which they were taken, and where it is named.</summary>
    public Located<string>? MirrorOf { get; }
    public string Side { get; }
    /// <summary>Where its side is written; null when it is not.</summary>
    public Location? SideAt { get; }
    public string Role { get; }
    /// <summary>The role and where it is written.</summary>
    public Located<string>? RoleAt { get; }
    public string Place { get; }
    public bool Wet { get; }
    /// <summary>Null when nobody has looked.</summary>
    public bool? AirbagNear { get; }
    /// <summary>Of the airbag system, in a door; null when nobody has looked.</summary>
    public bool? PressureSensor { get; }
    public Located<string>? FactoryChannel { get; }
    public Mounting Mounting { get; }
    public Figure? FactoryImpedance { get; }
    /// <summary>DC resistance of the factory driver.</summary>
    public Figure? FactoryResistance { get; }
    public Figure? OwnCapacitor { get; }
    public bool? HasOwnCapacitor { get; }
    /// <summary>`full-range`, `filtered` or `unknown`.</summary>
    public Located<string> FeedType { get; }
    public IReadOnlyList<LadderPart> FeedNetwork { get; }
    public Located<string>? Plug { get; }
    public Located<string>? PlugPolarity { get; }
    /// <summary>From the end of the plug, pulled towards the hole, to the terminals of a driver that sits on the panel.</summary>
    public Figure? PlugDistance { get; }
    public Figure? WireGauge { get; }
    public Figure? WireLength { get; }
    /// <summary>Forward, to the left, up, from the point between the front seats' heads; empty when not recorded.</summary>
    public IReadOnlyList<Figure> Location { get; }
}

/// <summary>The hole and the space behind and before it.</summary>
public sealed record Mounting
{
    internal Mounting(Fields f)
    {
        At = f.At;
        Cutout = f.Length("cutout");
        CutoutMinor = f.Length("cutout_minor");
        LargestCutout = f.Length("largest_cutout");
        Depth = f.Length("depth");
        GrilleGap = f.Length("grille_gap");
        Recess = f.Length("recess");
        PanelThickness = f.Length("panel_thickness");
        PanelMaterialAt = f.Text("panel_material");
        DoorCardGap = f.Length("door_card_gap");
        ModuleRoom = f.Figures("module_room", Dimension.Metre);
        Obstructions = [.. f.Each("obstructions").Select(o => new Obstruction(
            o.Word("name"), o.Length("depth"), o.Length("from_radius"), o.Truth("moving") ?? false, o.At)
        { FromClock = o.Number("from_clock"), ToClock = o.Number("to_clock") })];
        AimClock = f.Number("aim_clock");
        AimClockAt = f.Text("aim_clock")?.At;
        Holes = HoleCircle.Read(f.Inner("holes"));
    }

    public Location At { get; }
    public Figure? Cutout { get; }
    public Figure? CutoutMinor { get; }
    public Figure? LargestCutout { get; }
    /// <summary>From the mounting plane to what is fixed behind it, anywhere.</summary>
    public Figure? Depth { get; }
    /// <summary>From the mounting plane to the back of the grille.</summary>
    public Figure? GrilleGap { get; }
    /// <summary>The largest flange that sits in the recess or trim ring.</summary>
    public Figure? Recess { get; }
    public Figure? PanelThickness { get; }
    public string? PanelMaterial => PanelMaterialAt?.Value;
    /// <summary>The material and where it is written.</summary>
    public Located<string>? PanelMaterialAt { get; }
    public Figure? DoorCardGap { get; }
    public IReadOnlyList<Figure> ModuleRoom { get; }
    public IReadOnlyList<Obstruction> Obstructions { get; }
    /// <summary>Those that move, as a window glass does, or those that do not.</summary>
    internal Obstruction[] Behind(bool moving) => [.. Obstructions.Where(o => o.Moving == moving)];
    /// <summary>The hour towards which sound is best thrown, seen from inside the vehicle.</summary>
    public double? AimClock { get; }
    public Location? AimClockAt { get; }
    /// <summary>The screw holes in the panel, seen from the listener.</summary>
    public HoleCircle? Holes { get; }
}

/// <summary>Something behind the panel: from this depth on, from this radius outward, over a part of the clock face (both null: all around).</summary>
public sealed record Obstruction(string Name, Figure? Depth, Figure? FromRadius, bool Moving, Location At)
{
    public double? FromClock { get; init; }
    public double? ToClock { get; init; }
}
