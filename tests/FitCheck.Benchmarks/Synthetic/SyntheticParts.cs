namespace FitCheck.Benchmarks.Synthetic;

/// <summary>What goes between driver and vehicle: spacers, cups, harnesses, crossovers, sets, cables and sundries.</summary>
internal static class SyntheticParts
{
    public static EntryText Adapter(int index, int vehicles)
    {
        var dice = new Dice(2_000_000UL + (ulong)index);
        var (size, opening, outer, circle) = dice.Of((130, 116, 150, 136), (165, 146, 182, 160), (200, 184, 222, 200));
        var e = new EntryText($"spacer-{size}-{index}", "adapter", $"Spacer for {size} mm drivers, number {index}", dice).Sold(dice, 2, 9,
            45)
            .Line($"thickness: {dice.Whole(6, 30)} mm").Line("handed: \"no\"").Line($"opening: {opening} mm").Line($"outer: {outer} mm")
            .Line($"material: {dice.Of("mdf", "abs", "plywood", "hdpe", "aluminium")}").Line($"cuttable: {dice.Of("true", "false")}")
            .Line($"cable_exit: {dice.Of("true", "false")}")
            .Line($"boss_depth: {dice.Whole(5, 15)} mm").Line("screw: 4.2 mm")
            .Line($"vehicle_holes: {{circle: {circle} mm, count: 4, angles: [45, 135, 225, 315], slot: {dice.Whole(2, 9)} mm, screw: 5 "
                + $"mm}}").Line("driver_holes:")
            .Line($"  - {{circle: {circle - 4} mm, angles: [45, 135, 225, 315], slot: 4 mm, screw: 4.2 mm}}")
            .Line($"  - {{circle: {circle - 4} mm, angles: [0, 120, 240], slot: 2 mm, screw: 4.2 mm}}");
        return vehicles == 0 || dice.Chance(0.3) ? e
            : e.Line("fits:").Line($"  - {{vehicle: vehicle-{dice.Whole(1, vehicles)}, positions: [front-door-left, front-door-right]}}")
            .Line($"  - {{vehicle: vehicle-{dice.Whole(1, vehicles)}}}");
    }

    public static EntryText Cup(int index, int vehicles)
    {
        var dice = new Dice(3_000_000UL + (ulong)index);
        var hole = dice.Whole(43, 46);
        var e = new EntryText($"cup-{hole}-{index}", "cup", $"Tweeter cup {hole} mm, number {index}", dice).Sold(dice, 2, 8, 24)
            .Line($"hole: {hole} mm ± 0.3 mm").Line($"depth: {dice.Whole(18, 26)} mm")
            .Line($"outer: {hole + 9} mm").Line($"grille_gap: {dice.Whole(6, 9)} mm").Line($"flange_recess: {hole + 7} mm")
            .Line("material: abs").Line($"cuttable: {dice.Of("true", "false")}")
            .Line("module_room: [60 mm, 40 mm, 22 mm]");
        return vehicles == 0 ? e
            : e.Line("fits:")
            .Line($"  - {{vehicle: vehicle-{dice.Whole(1, vehicles)}, positions: [front-tweeter-left, front-tweeter-right]}}");
    }

    public static EntryText Harness(int index)
    {
        var dice = new Dice(4_000_000UL + (ulong)index);
        return new EntryText($"harness-{index}", "harness", $"Harness number {index}", dice).Sold(dice, 2, 6, 19)
            .Line($"from: {dice.Of("duo-a", "duo-b", "quad-c", "blade-d", "mini-t")}")
            .Line($"to: {{type: tabs, positive: {dice.Of("6.3 mm, negative: 4.8 mm", "4.8 mm, negative: 2.8 mm")}, polarity: keyed}}")
            .Line($"length: {dice.Of("6 in", "150 mm", "200 mm")}")
            .Line("polarity: keyed").Line($"gauge: {dice.Of("0.75 mm2", "18 AWG")}");
    }

    public static string CrossoverId(int index) => $"crossover-{index}";

    public static EntryText Crossover(int index)
    {
        var dice = new Dice(5_000_000UL + (ulong)index);
        var corner = 100 * dice.Whole(26, 40);
        var e = new EntryText(CrossoverId(index), "crossover", $"Passive crossover number {index}", dice).Sold(dice, 2, 25, 90)
            .Line("nominal_load: 4 ohm").Line($"crossover_frequency: {corner} Hz")
            .Line($"power: {10 * dice.Whole(5, 15)} W").Line("box: [110 mm, 70 mm, 35 mm]").Line("low_pass:")
            .Line($"  - {{place: series, inductance: {Dice.Digits(4e3 / (2 * Math.PI * corner), 2)} mH, resistance: 0.2 ohm}}")
            .Line("high_pass:")
            .Line($"  - {{place: series, capacitance: {Dice.Digits(1e6 / (2 * Math.PI * corner * 4), 2)} uF}}")
            .Line($"  - {{place: shunt, inductance: {Dice.Digits(5e3 / (2 * Math.PI * corner), 2)} mH, resistance: 0.32 ohm}}")
            .Line("tweeter_settings:").Line("  - {name: 0 dB, level: 0 dB, network: []}");
        return e.Line("  - name: -3 dB").Line("    level: -3 dB").Line("    network:").Line("      - {place: series, resistance: 1.2 ohm}")
            .Line("      - {place: shunt, resistance: 10 ohm}").Line("default_setting: 0 dB");
    }

    public static EntryText Set(int index, int drivers, int crossovers, int sundries)
    {
        var dice = new Dice(6_000_000UL + (ulong)index);
        var group = dice.Whole(0, ((drivers - 2) / 4) - 1);
        return new EntryText($"set-{index}", "component-set", $"Component set number {index}", dice).Sold(dice, 2, 120, 420)
            .Line($"woofer: {SyntheticDrivers.IdOf(4 * group)}")
            .Line($"tweeter: {SyntheticDrivers.IdOf((4 * group) + 1)}").Line($"crossover: {CrossoverId(dice.Whole(0, crossovers - 1))}")
            .Line("contains:")
            .Line($"  - {{part: {SundryId(dice.Whole(0, sundries - 1))}, quantity: 1}}");
    }

    public static string SundryId(int index) => $"sundry-{index}";

    public static EntryText Sundry(int index)
    {
        var dice = new Dice(7_000_000UL + (ulong)index);
        var (type, lines) = dice.Of<(string, string[])>(
            ("capacitor", [$"capacitance: {dice.Of("4.7", "10", "33", "100", "220")} uF", "voltage: 100 V"]),
            ("resistor", [$"resistance: {dice.Of("1", "2.2", "3.3", "47")} ohm", $"power: {dice.Whole(5, 20)} W"]),
            ("l-pad", [$"series_resistance: {dice.Of("0.82", "1.5", "2.2")} ohm", $"shunt_resistance: {dice.Of("4", "6.8", "15")} ohm",
                "power: 20 W"]),
            ("foam-tape", [$"length: {dice.Whole(3, 10)} m", "free_height: 10 mm", "compressed_height: 6 mm"]),
            ("screws", [$"length: {dice.Of(16, 19, 25, 32)} mm", "diameter: 3.9 mm"]));
        var e = new EntryText(SundryId(index), "sundry", $"{char.ToUpperInvariant(type[0])}{type[1..]} number {index}", dice).Sold(dice, 2,
            2, 15).Line($"type: {type}");
        foreach (var line in lines)
            e.Line(line);
        return e;
    }

    public static EntryText Cable(int index)
    {
        var dice = new Dice(8_000_000UL + (ulong)index);
        return new EntryText($"cable-{index}", "wiring", $"Cable number {index}", dice).Sold(dice, 1, 12, 80)
            .Line($"type: {dice.Of("power-cable", "speaker-cable")}")
            .Line($"gauge: {dice.Of("4 AWG", "8 AWG", "14 AWG", "2.5 mm2", "10 mm2")}").Line("conductor: copper")
            .Line($"length: {dice.Of(5, 10)} m").Line("insulation: 105 degC");
    }
}
