using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A vehicle and the places for drivers in it.</summary>
public sealed record Vehicle : Entry
{
    internal Vehicle(Fields f, Func<string, YamlMap, YamlMap>? asRead = null) : base(f)
    {
        FactorySource = f.Text("factory_source");
        FactoryAmplified = f.Truth("factory_amplified");
        FactoryEqualised = f.Truth("factory_equalised");
        SpeakerReturns = f.Text("speaker_returns");
        Steering = f.Text("steering")?.Value;
        Alternator = f.Inner("supply")?.Figure("alternator", Dimension.Ampere);
        BatteryToCargo = f.Inner("supply")?.Length("battery_to_cargo");
        BatteryToSeat = f.Inner("supply")?.Length("battery_to_seat");
        BatteryToDash = f.Inner("supply")?.Length("battery_to_dash");
        Voltage = f.Inner("supply")?.Figure("voltage", Dimension.Volt);
        MainFusePlace = f.Inner("supply")?.Text("main_fuse_place")?.Value;
        Battery = f.Inner("supply")?.Text("battery");
        Positions = PositionReader.Read(f, asRead);
    }

    /// <summary>The id of the source unit that the maker fitted, and where it is named; null when not recorded.</summary>
    public Located<string>? FactorySource { get; }
    /// <summary>Whether the factory sound has an amplifier of its own; null when nobody has looked.</summary>
    public bool? FactoryAmplified { get; }
    /// <summary>Whether the factory source shapes the sound for the factory drivers; null when nobody has looked.</summary>
    public bool? FactoryEqualised { get; }
    /// <summary>
    /// Whether each loudspeaker has a minus wire of its own up to the radio, `separate`, or shares one, `common`; null when nobody has
    /// looked.
    /// </summary>
    public Located<string>? SpeakerReturns { get; }
    /// <summary>The side on which the driver sits, `left` or `right`; null when not recorded.</summary>
    public string? Steering { get; }
    /// <summary>What the alternator can give, amperes; null when not recorded.</summary>
    public Figure? Alternator { get; }
    /// <summary>From the battery to the cargo space along the way of a cable, metres; null when not recorded.</summary>
    public Figure? BatteryToCargo { get; }
    /// <summary>From the battery to under a front seat along the way of a cable, metres; null when not recorded.</summary>
    public Figure? BatteryToSeat { get; }
    /// <summary>From the battery to behind the dashboard along the way of a cable, metres; null when not recorded.</summary>
    public Figure? BatteryToDash { get; }
    /// <summary>Nominal voltage of the supply, 12 V or 24 V; null when not recorded.</summary>
    public Figure? Voltage { get; }
    /// <summary>Where near the battery there is room for the holder of the main fuse, in words; null when not recorded.</summary>
    public string? MainFusePlace { get; }
    /// <summary>Where the battery is: `engine-space`, `cabin` or `cargo`; null when not recorded.</summary>
    public Located<string>? Battery { get; }
    /// <summary>
    /// What the catalog calls the vehicle whose figures stand in for those of the one that is meant, of which <see cref="Entry.Name"/> is
    /// the name; null where that is the catalog's own.
    /// </summary>
    internal string? StandIn { get; init; }
    /// <summary>The places for drivers, in the order of the file.</summary>
    public IReadOnlyList<Position> Positions { get; }

    /// <summary>The id by which parts say that they are made for it; empty where the catalog does not have it.</summary>
    internal string ListedAs => StandIn is null ? Id : "";

    /// <summary>The place with this id, or null.</summary>
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
        Wet = f.Truth("wet");
        AirbagNear = f.Truth("airbag_near");
        PressureSensor = f.Truth("pressure_sensor");
        FactoryChannel = f.Text("factory_channel");
        Mounting = new Mounting(f.Inner("mounting") ?? new Fields(new YamlMap(f.At, []), f.Provenance, f.Problems));
        HasFactoryDriver = f.Inner("factory_driver") is not null ? true : f.Word("factory_driver") == FilterRange.None ? false : null;
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

    /// <summary>Where its id is written.</summary>
    public Location At { get; }
    /// <summary>`front-door-left`; unique in its vehicle.</summary>
    public string Id { get; }
    /// <summary>What a person calls it; the id when no name is written.</summary>
    public string Name { get; }
    /// <summary>True when its data were taken from the other side of the vehicle.</summary>
    public bool Mirrored { get; }
    /// <summary>The position from which they were taken, and where it is named; null when none is.</summary>
    public Located<string>? MirrorOf { get; }
    /// <summary>`left`, `right` or `centre`; `centre` too when nothing is written.</summary>
    public string Side { get; }
    /// <summary>Its side; null when it is not recorded.</summary>
    internal string? KnownSide => SideAt is null ? null : Side;
    /// <summary>Where its side is written; null when it is not.</summary>
    public Location? SideAt { get; }
    /// <summary>What sort of driver goes there: `woofer`, `tweeter`, `full-range` or `subwoofer`; empty when not recorded.</summary>
    public string Role { get; }
    /// <summary>The role and where it is written; null when it is not.</summary>
    public Located<string>? RoleAt { get; }
    /// <summary>`door`, `dash`, `sail`, `pillar`, `rear-panel`, `shelf` or `cargo`; empty when not recorded.</summary>
    public string Place { get; }
    /// <summary>Whether water runs down behind the panel; null when nobody has looked.</summary>
    public bool? Wet { get; }
    /// <summary>Null when nobody has looked.</summary>
    public bool? AirbagNear { get; }
    /// <summary>Of the airbag system, in a door; null when nobody has looked.</summary>
    public bool? PressureSensor { get; }
    /// <summary>The factory output that feeds it, such as `front-left`, and where it is named; null when not recorded.</summary>
    public Located<string>? FactoryChannel { get; }
    /// <summary>The hole and the space around it; without any figure when none is written.</summary>
    public Mounting Mounting { get; }
    /// <summary>Whether the maker fitted a driver there; null when nobody has looked.</summary>
    public bool? HasFactoryDriver { get; }
    /// <summary>Rated impedance of the factory driver, ohm; null when not recorded.</summary>
    public Figure? FactoryImpedance { get; }
    /// <summary>DC resistance of the factory driver, ohm; null when not recorded.</summary>
    public Figure? FactoryResistance { get; }
    /// <summary>The capacitor that is fixed to the factory driver, farads; null when not recorded.</summary>
    public Figure? OwnCapacitor { get; }
    /// <summary>
    /// Whether a capacitor is fixed to the factory driver; true too when its figure is written, null when nobody has looked.
    /// </summary>
    public bool? HasOwnCapacitor { get; }
    /// <summary>`full-range`, `filtered` or `unknown`.</summary>
    public Located<string> FeedType { get; }
    /// <summary>
    /// The parts in the factory wire that stay when the driver is changed, from the source to the driver; empty when none is written.
    /// </summary>
    public IReadOnlyList<LadderPart> FeedNetwork { get; }
    /// <summary>The family of the plug, and where it is named; null when not recorded.</summary>
    public Located<string>? Plug { get; }
    /// <summary>`known` or `unknown`: whether it is known which wire is plus; null when not recorded.</summary>
    public Located<string>? PlugPolarity { get; }
    /// <summary>
    /// From the end of the plug, pulled towards the hole, to the terminals of a driver that sits on the panel, metres; null when not
    /// recorded.
    /// </summary>
    public Figure? PlugDistance { get; }
    /// <summary>Cross-section of the factory speaker wire, square metres; null when not recorded.</summary>
    public Figure? WireGauge { get; }
    /// <summary>Length of the factory speaker wire one way, metres; null when not recorded.</summary>
    public Figure? WireLength { get; }
    /// <summary>Metres forward, to the left, up, from the point between the front seats' heads; empty when not recorded.</summary>
    public IReadOnlyList<Figure> Location { get; }
}

/// <summary>The hole and the space behind and before it. Lengths are metres, and null when not recorded.</summary>
public sealed record Mounting
{
    internal Mounting(Fields f)
    {
        At = f.At;
        Cutout = f.Length("cutout");
        CutoutMinor = f.Length("cutout_minor");
        FigureOrder.Axes(f, "hole", Cutout, CutoutMinor);
        LargestCutout = f.Length("largest_cutout");
        Depth = f.Length("depth");
        GrilleGap = f.Length("grille_gap");
        var flat = f.Word("recess") == FilterRange.None;
        Recess = flat ? null : f.Length("recess");
        HasRecess = Recess is not null ? true : flat ? false : null;
        RecessMinor = f.Length("recess_minor");
        PanelThickness = f.Length("panel_thickness");
        PanelMaterialAt = f.Text("panel_material");
        DoorCardGap = f.Length("door_card_gap");
        ModuleRoom = f.Figures("module_room", Dimension.Metre);
        AreObstructionsRecorded = f.Map["obstructions"] is not null;
        Obstructions = [.. f.Each("obstructions").Select(o => new Obstruction(
            o.Word("name"), o.Length("depth"), o.Length("from_radius"), o.Truth("moving"), o.At)
        { FromClock = o.Number("from_clock"), ToClock = o.Number("to_clock") })];
        AimClock = f.Number("aim_clock");
        AimClockAt = f.Text("aim_clock")?.At;
        Holes = HoleCircle.Read(f.Inner("holes"));
    }

    /// <summary>Where it is written; the position where nothing is.</summary>
    public Location At { get; }
    /// <summary>Diameter of the hole in the panel; of an oval, the long axis.</summary>
    public Figure? Cutout { get; }
    /// <summary>Short axis of an oval hole.</summary>
    public Figure? CutoutMinor { get; }
    /// <summary>The diameter to which the hole may be enlarged.</summary>
    public Figure? LargestCutout { get; }
    /// <summary>From the mounting plane to what is fixed behind it, anywhere.</summary>
    public Figure? Depth { get; }
    /// <summary>From the mounting plane to the back of the grille.</summary>
    public Figure? GrilleGap { get; }
    /// <summary>The largest flange that sits in the recess or trim ring.</summary>
    public Figure? Recess { get; }
    /// <summary>Whether there is a recess or trim ring; null when nobody has looked.</summary>
    public bool? HasRecess { get; }
    /// <summary>Short axis of an oval recess or trim ring; null where it is round or nothing is written.</summary>
    public Figure? RecessMinor { get; }
    /// <summary>Thickness of the panel.</summary>
    public Figure? PanelThickness { get; }
    /// <summary>`steel`, `plastic`, `aluminium` or `fibreboard`; null when not recorded.</summary>
    public string? PanelMaterial => PanelMaterialAt?.Value;
    /// <summary>The material and where it is written; null when it is not.</summary>
    public Located<string>? PanelMaterialAt { get; }
    /// <summary>From the panel to the back of the door card.</summary>
    public Figure? DoorCardGap { get; }
    /// <summary>Room for the box of a crossover: length, width, height; empty when not recorded.</summary>
    public IReadOnlyList<Figure> ModuleRoom { get; }
    /// <summary>
    /// What stands behind the panel, in the order of the file; empty where nothing stands there, and when nobody has looked.
    /// </summary>
    public IReadOnlyList<Obstruction> Obstructions { get; }
    /// <summary>False when nobody has looked what stands behind the panel.</summary>
    public bool AreObstructionsRecorded { get; }
    /// <summary>
    /// Those that move, as a window glass does, or those that do not; one of which nobody wrote whether it moves may be either.
    /// </summary>
    internal Obstruction[] Behind(bool moving) => [.. Obstructions.Where(o => o.Moving is null || o.Moving == moving)];
    /// <summary>Whether anything behind the panel moves; null when that is not recorded.</summary>
    internal bool? HasMoving => Obstructions.Any(o => o.Moving == true) ? true
        : !AreObstructionsRecorded || Obstructions.Any(o => o.Moving is null) ? null : false;
    /// <summary>The hour towards which sound is best thrown, 0 to 12, seen from inside the vehicle; null when not recorded.</summary>
    public double? AimClock { get; }
    /// <summary>Where that hour is written; null when it is not.</summary>
    public Location? AimClockAt { get; }
    /// <summary>The screw holes in the panel, seen from the listener; null when not recorded.</summary>
    public HoleCircle? Holes { get; }
}

/// <summary>
/// Something behind the panel: from this depth on, from this radius outward, over a part of the clock face (both hours null: all around).
/// </summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Depth">From the mounting plane, metres; null when not recorded.</param>
/// <param name="FromRadius">From the axis of the hole, metres; null when not recorded.</param>
/// <param name="Moving">True for what moves, as a window glass does; null when not recorded.</param>
/// <param name="At">Where it is written.</param>
public sealed record Obstruction(string Name, Figure? Depth, Figure? FromRadius, bool? Moving, Location At)
{
    /// <summary>The hour at which it begins, 0 to 12, clockwise as seen from inside the vehicle; null all around.</summary>
    public double? FromClock { get; init; }
    /// <summary>The hour at which it ends; null all around.</summary>
    public double? ToClock { get; init; }
}
