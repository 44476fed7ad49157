namespace FitCheck.Facts.Values;

/// <summary>
/// Everything that a fact may look at. What a chart settles once, on what a change of a build has to act and which data are asked for
/// follow from the inputs that facts declare of it.
/// </summary>
internal static class Reads
{
    // What is wired together and what feeds it; each of these has a part in the load of an output and in what reaches a driver.
    private static readonly string[] Wired =
    [
        "amplifier.filter_slopes", "amplifier.high_pass_range", "amplifier.low_pass_range", "amplifier.power_converter",
        "amplifier.ratings", "build.channels.high_pass", "build.channels.joined", "build.channels.limit", "build.channels.low_pass",
        "build.fit.disconnected", "build.fit.keeps_factory_driver", "build.fit.new_wire.length", "crossover.default_setting",
        "crossover.high_pass", "crossover.low_pass", "crossover.tweeter_settings", "driver.built_in_tweeter.capacitor",
        "driver.built_in_tweeter.impedance", "driver.coils", "driver.impedance", "driver.own_high_pass.capacitor", "driver.parameters",
        "driver.power.continuous", "driver.sensitivity", "driver.size", "driver.type", "harness.length", "position.factory_channel",
        "position.factory_driver.has_own_capacitor", "position.factory_driver.impedance", "position.factory_driver.own_capacitor",
        "position.factory_driver.resistance", "position.feed", "position.location", "position.mounting.aim_clock", "position.role",
        "position.wire.gauge", "position.wire.length", "source-unit.ratings", "sundry.capacitance", "sundry.series_resistance",
        "sundry.shunt_resistance", "sundry.type", "wiring",
    ];

    private static readonly string[] Powered = ["amplifier", "build.channels", "build.devices", "line-converter", "source-unit"];

    // A position's own.
    public static readonly Source Driver = new("the driver", RestsOn.Driver, "driver");
    public static readonly Source Adapter = new("the spacer", RestsOn.Mount, "adapter");
    public static readonly Source Cup = new("the cup", RestsOn.Mount, "cup");
    public static readonly Source Under = new("what the driver lies on: the spacer, or the panel", RestsOn.Mount, null);
    public static readonly Source OnPanel = new("what lies on the panel: the spacer, or the driver", RestsOn.Mount, null);
    public static readonly Source Place = new("the position", RestsOn.Place, "position");
    public static readonly Source Vehicle = new("the vehicle", RestsOn.Place, "vehicle");
    public static readonly Source Measured = new("what the build has measured there", RestsOn.Place, "build");
    /// <summary>Settled before any part is looked at, as the four that follow are.</summary>
    public static readonly Source DriverThere = new(
        "whether there is a driver, and of what type", RestsOn.Nothing, "driver", "driver.type");
    public static readonly Source AdapterThere = new("whether there is a spacer", RestsOn.Nothing, null);
    public static readonly Source CupThere = new("whether there is a cup", RestsOn.Nothing, null);
    public static readonly Source Mounted = new("whether a driver is mounted, and on what", RestsOn.Nothing, null, "driver.type");
    public static readonly Source Work = new("the work that is accepted", RestsOn.Nothing, "build", "build.accepts");
    public static readonly Source Harness = new("the harness", RestsOn.Build, "harness");
    public static readonly Source Module = new("the crossover whose module lies there", RestsOn.Build, "crossover");
    public static readonly Source Gasket = new("the gasket ring", RestsOn.Build, "sundry");
    public static readonly Source Tape = new("foam tape and damping sheet", RestsOn.Build, "sundry");
    public static readonly Source MoistureGuard = new("the water shed", RestsOn.Build, "sundry");
    public static readonly Source Treatment = new("what the build does to the place", RestsOn.Build, "build");
    public static readonly Source Screws = new("the screws", RestsOn.Build, "sundry");
    public static readonly Source Wire = new(
        "the new speaker wire", RestsOn.Build, null, "build.fit.new_wire.length", "wiring.gauge", "wiring.length");
    public static readonly Source Inline = new("what is in line before the driver", RestsOn.Build, "sundry");
    public static readonly Source Grommets = new("rubber passages", RestsOn.Build, "sundry");
    public static readonly Source Box = new("the box", RestsOn.Build, "build", "build.fit.box", "build.fit.port");

    // The output that feeds a position, and beyond.
    public static readonly Source Feed = new("which output feeds it", RestsOn.Build, "build");
    public static readonly Source Limit = new("the power limit of its output", RestsOn.Build, "build", "build.channels.limit");
    public static readonly Source Output = new("the device of its output", RestsOn.Build, null);
    public static readonly Source Network = new(
        "what is wired to its output, and the filters before it", RestsOn.Build, null, [.. Wired, "build.fit"]);
    public static readonly Source Beside = new("spacers beside it", RestsOn.Build, "adapter", "adapter.tilt");
    public static readonly Source Amplification = new("the power and voltage of its output", RestsOn.Build, null, Powered);
    public static readonly Source Loom = new(
        "how every output and driver is wired", RestsOn.Build, null, "amplifier.channels", "build.channels", "build.devices", "build.fit",
        "driver.type", "position.factory_channel", "position.role", "position.side", "source-unit.channels");
    public static readonly Source BothSides = new(
        "the place and its counterpart on the other side", RestsOn.Build, null, "adapter", "amplifier", "build.channels", "build.devices",
        "build.fit", "crossover", "cup", "driver", "harness", "position", "source-unit", "sundry", "wiring");
    public static readonly Source Everywhere = new(
        "every output and position", RestsOn.Build, null, [.. Wired, .. Powered, "adapter", "cup", "build.fit", "position"]);

    // An output's own.
    public static readonly Source OwnNetwork = new("what is wired to it", RestsOn.Build, null, [.. Wired, "build.fit"]);
    public static readonly Source OwnLimit = new("its power limit", RestsOn.Build, "build", "build.channels.limit");
    public static readonly Source OwnOutput = new("its device", RestsOn.Build, null, Powered);
    public static readonly Source OwnFilters = new("its filters, and the devices that make them", RestsOn.Build, null, Powered);

    // A device's own.
    public static readonly Source Device = new("the device", RestsOn.Build, null, "amplifier", "line-converter", "source-unit");
    public static readonly Source Chain = new("the devices before it", RestsOn.Build, null, [.. Powered, "vehicle"]);
    public static readonly Source Devices = new("every device", RestsOn.Build, null, [.. Powered, "sundry", "vehicle"]);
    public static readonly Source Demand = new(
        "what is asked of the amplifiers", RestsOn.Build, null, [.. Wired, "amplifier", "build.fit"]);
    public static readonly Source Gain = new("the gain that is set", RestsOn.Build, "build", "build.devices.gain");
    public static readonly Source Supply = new(
        "the way of the supply", RestsOn.Build, null, "build.devices.fuse_distance", "build.devices.place", "build.supply.fuse_distance",
        "build.supply.place", "vehicle.supply");
    public static readonly Source PowerCable = new(
        "the power cable", RestsOn.Build, null, "build.devices", "build.supply", "vehicle.supply", "wiring");
    public static readonly Source Fuse = new("the fuse of the cable", RestsOn.Build, "wiring", "wiring");
    public static readonly Source MainCable = new(
        "the cable that amplifiers share", RestsOn.Build, null, "build.supply", "vehicle.supply", "wiring");
    public static readonly Source GroundCable = new("the ground cable", RestsOn.Build, null, "build.devices", "wiring");
    public static readonly Source Holders = new("fuse holders and distribution blocks", RestsOn.Build, "wiring", "wiring");
    public static readonly Source ListedCables = new("kits and cables on the list", RestsOn.Build, "wiring", "wiring");
    public static readonly Source SignalCables = new("signal cables on the list", RestsOn.Build, "wiring", "wiring");
    public static readonly Source RemoteWires = new("remote wires on the list", RestsOn.Build, "wiring", "wiring");

    public static readonly Source Whole = new("the whole build, and all that it names", RestsOn.Build, null, Source.Everything);
    public static readonly Source Entry = new("an entry of the catalog, and others of its class", RestsOn.Build, null, Source.Everything);
}
