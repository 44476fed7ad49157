namespace FitCheck.Benchmarks.Synthetic;

/// <summary>Radios, amplifiers, line converters, and the vehicles that they go into.</summary>
internal static class SyntheticElectronics
{
    public static EntryText Amplifier(int index)
    {
        var dice = new Dice(9_000_000UL + (ulong)index);
        var channels = dice.Of(1, 2, 4, 4, 5);
        var power = 10 * dice.Whole(4, 12);
        var efficiency = dice.Whole(55, 80);
        // What all outputs draw into 2 ohm at 14.4 V, up to the next 5 A.
        var fuse = 5 * (int)Math.Ceiling(channels * power * 1.5 / (14.4 * efficiency / 100) / 5);
        return new EntryText($"amplifier-{channels}-{power}-{index}", "amplifier", $"Amplifier number {index}", dice).Sold(dice, 1, 120,
            480).Line($"class: {dice.Of("AB", "D", "D")}").Line($"channels: {channels}")
            .Line("ratings:")
            .Line($"  - {{power: {power} W, load: 4 ohm, supply: 14.4 V, distortion: 1 %, basis: continuous, all_channels: true}}")
            .Line($"  - {{power: {power * 3 / 2} W, load: 2 ohm, supply: 14.4 V, distortion: 1 %, basis: continuous, all_channels: true}}")
            .Line("lowest_load: 2 ohm").Line("bridgeable: false")
            .Line("low_level_input: {lowest: 0.2 V, highest: 4 V}").Line("high_level_input: {highest: 16 V, senses_signal: true}")
            .Line("high_pass_range: [40 Hz, 400 Hz]").Line("low_pass_range: [40 Hz, 250 Hz]")
            .Line("filter_slopes: [12 dB/octave, 24 dB/octave]")
            .Line($"efficiency: {efficiency} %").Line($"fuses: [{fuse} A]").Line("terminal: 8 AWG").Line("box: [190 mm, 110 mm, 40 mm]")
            .Line("power_converter: true");
    }

    public static string RadioId(int index) => $"radio-{index}";

    public static EntryText Radio(int index)
    {
        var dice = new Dice(10_000_000UL + (ulong)index);
        return new EntryText(RadioId(index), "source-unit", $"Radio number {index}", dice).Sold(dice, 1, 90, 400).Line("factory: true")
            .Line("channels: [front-left, front-right, rear-left, rear-right]").Line("ratings:")
            .Line($"  - {{power: {dice.Whole(14, 22)} W, load: 4 ohm, supply: 14.4 V, distortion: 1 %, basis: continuous, all_channels: "
                + $"true}}").Line("  - {power: 45 W, load: 4 ohm, basis: peak}")
            .Line("lowest_load: 4 ohm").Line($"connector: {dice.Of("block-m", "block-k")}").Line("remote_output: true")
            .Line($"senses_load: {dice.Of("true", "false")}").Line("filters: false").Line("supply_current: 10 A");
    }

    public static EntryText Converter(int index)
    {
        var dice = new Dice(11_000_000UL + (ulong)index);
        return new EntryText($"converter-{index}", "line-converter", $"Line converter number {index}", dice).Sold(dice, 1, 25, 120)
            .Line($"channels: {dice.Of(2, 4)}").Line("input_limit: 20 V").Line("input_load: 1 kohm")
            .Line($"ratio: {dice.Of("0.1", "0.12", "0.15")}").Line("output_limit: 2 V").Line("remote_output: true")
            .Line($"supply_current: {dice.Whole(60, 160)} mA");
    }

    public static EntryText Vehicle(int number, int radios)
    {
        var dice = new Dice(12_000_000UL + (ulong)number);
        var e = new EntryText($"vehicle-{number}", "vehicle", $"Vehicle number {number}",
            dice).Line($"steering: {dice.Of("left", "left", "left", "right")}")
            .Line($"factory_source: {RadioId(dice.Whole(0, radios - 1))}").Line("factory_amplified: false").Line("supply:")
            .Line($"  alternator: {10 * dice.Whole(9, 16)} A")
            .Line($"  battery_to_cargo: {dice.Around(3.8, 6):0.0} m").Line("  main_fuse_place: in the fuse box on the battery lid").Line("")
            .Line("positions:");
        Pair(e, "front-door", "Front door", Door(dice, 165, 148, (60, 76)), "front", (660, 740, -760));
        Pair(e, "front-tweeter", "Dash corner",
        [
            "role: tweeter", "place: dash", "airbag_near: false", "mounting:", $"  cutout: {dice.Whole(43, 45)} mm",
            $"  depth: {dice.Whole(24, 32)} mm", $"  grille_gap: {dice.Whole(7, 10)} mm", "  panel_thickness: 2.5 mm",
            "  panel_material: plastic", "  module_room: [70 mm, 45 mm, 25 mm]", "factory_driver: {impedance: 4 ohm, size: 25 mm}",
            "feed: {type: full-range}", "connector: {family: mini-t, polarity: known}",
        ], "front", (820, 600, -320));
        if (dice.Chance(0.8))
            Pair(e, "rear-door", "Rear door", Door(dice, 130, 118, (52, 64)), "rear", (-160, 720, -740));
        return e;
    }

    private static string[] Door(Dice dice, int size, int cutout, (double Low, double High) depth) =>
    [
        "role: woofer", "place: door", "wet: true", "airbag_near: false", "pressure_sensor: false", "mounting:",
        $"  cutout: {cutout + dice.Whole(-2, 2)} mm",
        FormattableString.Invariant($"  depth: {dice.Around(depth.Low, depth.High):0.0} mm ± 1 mm (measured)"),
        $"  grille_gap: {dice.Whole(18, 30)} mm", $"  recess: {size + dice.Whole(6, 14)} mm", "  panel_thickness: 1 mm",
        "  panel_material: steel", "  obstructions:",
        "    - name: window glass",
        FormattableString.Invariant($"      depth: {dice.Around(depth.Low - 4, depth.High - 6):0.0} mm  # glass fully down"),
        "      from_clock: 8.5", "      to_clock: 2.5", "      moving: true",
        $"  holes: {{circle: {size - 6} mm, count: 4, angles: [45, 135, 225, 315], slot: 2 mm, screw: 5 mm}}", "  aim_clock: 10.5",
        FormattableString.Invariant($"factory_driver: {{impedance: 4 ohm, resistance: {dice.Whole(31, 36) / 10.0} ohm, size: {size} mm}}"),
        "feed: {type: full-range}", $"connector: {{family: {dice.Of("duo-a", "duo-b")}, polarity: known}}",
        FormattableString.Invariant($"wire: {{gauge: 0.75 mm2, length: {dice.Around(2.6, 4.8):0.0} m}}"),
    ];

    private static void Pair(EntryText e, string id, string name, string[] lines, string channel, (int X, int Y, int Z) place)
    {
        e.Line($"  - id: {id}-left").Line($"    name: {name}, left").Line("    side: left").Line($"    factory_channel: {channel}-left");
        foreach (var line in lines)
            e.Line("    " + line);
        e.Line($"    location: [{place.X} mm, {place.Y} mm, {place.Z} mm]").Line("").Line($"  - id: {id}-right")
            .Line($"    name: {name}, right").Line($"    mirror_of: {id}-left").Line("    side: right")
            .Line($"    factory_channel: {channel}-right").Line("");
    }
}
