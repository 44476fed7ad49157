namespace FitCheck.Benchmarks.Synthetic;

/// <summary>Drivers whose Thiele/Small parameters agree with each other and with the sensitivity, as those of a real driver do.</summary>
internal static class SyntheticDrivers
{
    // Density of air times the speed of sound squared at 20 °C: 1.204 kg/m³ · (343.2 m/s)².
    private const double Stiffness = 1.204 * 343.2 * 343.2;

    private static readonly Size[] Sizes =
    [
        new("100", "100 mm", 52, (4.5, 6.5), (85, 110), 118, 94, (42, 50), 70, "115 mm"),
        new("130", "130 mm", 88, (8, 11), (68, 88), 136, 115, (50, 60), 80, "132 mm"),
        new("165", "165 mm", 137, (13.5, 17.5), (53, 68), 167, 144, (60, 72), 90, "156 mm"),
        new("200", "200 mm", 214, (25, 32), (39, 49), 206, 182, (76, 90), 110, "196 mm"),
    ];

    private static readonly Size[] Subwoofers =
    [
        new("200", "200 mm", 214, (58, 74), (34, 40), 210, 184, (108, 122), 120, "196 mm"),
        new("250", "250 mm", 325, (100, 122), (28, 34), 264, 232, (132, 150), 142, "249 mm"),
        new("300", "300 mm", 480, (140, 180), (24, 29), 316, 280, (146, 166), 156, "299 mm"),
    ];

    /// <summary>Which of the sizes a woofer has, so that a set can ask for one that suits.</summary>
    public static string IdOf(int index) =>
        index % 4 == 1 ? $"maker-{index % 60:00}-t25-{index}" : $"maker-{index % 60:00}-{Letter(index)}{SizeOf(index).Word}-{index}";

    public static EntryText Of(int index)
    {
        var dice = new Dice(1_000_000UL + (ulong)index);
        return index % 4 == 1 ? Tweeter(index, dice) : Cone(index, dice);
    }

    private static char Letter(int index) => (index % 4) switch { 0 => 'w', 2 => 'c', _ => 's' };

    private static Size SizeOf(int index) => index % 4 == 3 ? Subwoofers[index / 4 % Subwoofers.Length] : Sizes[index / 4 % Sizes.Length];

    private static EntryText Cone(int index, Dice dice)
    {
        var size = SizeOf(index);
        var type = (index % 4) switch { 0 => "woofer", 2 => "coaxial", _ => "subwoofer" };
        var load = dice.Of(4, 4, 4, 2, 3, 8);
        var power = 10 * dice.Whole(size.Magnet / 14, size.Magnet / 9) * (type == "subwoofer" ? 3 : 1);
        var e = new EntryText(IdOf(index), "driver",
            $"Maker {index % 60:00} {char.ToUpperInvariant(Letter(index))}{size.Word}-{load} {type}, number {index}", dice)
            .Sold(dice, type == "subwoofer" ? 1 : 2, 40, 260)
            .Line($"type: {type}").Line($"size: {size.Nominal}").Line("shape: round").Line($"impedance: {load} ohm")
            .Line($"power: {{continuous: {power} W, peak: {dice.Whole(2, 4) * power} W}}");
        Parameters(e, dice, size, type, load);
        Dimensions(e, dice, size);
        if (type == "coaxial")
            e.Line($"built_in_tweeter: {{capacitor: {dice.Of("3.3", "4.7", "6.8")} uF, impedance: 4 ohm}}");
        return e.Line(
            $"terminals: {{type: tabs, positive: {dice.Of("6.3 mm, negative: 4.8 mm", "4.8 mm, negative: 2.8 mm")}, polarity: keyed}}")
            .Line($"mass: {10 * (int)dice.Around(size.Magnet, size.Magnet * 1.4)} g");
    }

    private static void Parameters(EntryText e, Dice dice, Size size, string type, int load)
    {
        var fs = Dice.Rounded(dice.Around(size.Resonance.Low, size.Resonance.High), 3);
        var mms = Dice.Rounded(dice.Around(size.Mass.Low, size.Mass.High), 3);
        var omega = 2 * Math.PI * fs;
        var cms = Dice.Rounded(1e6 / (omega * omega * mms), 3);
        var vas = Dice.Rounded(Stiffness * size.Area * size.Area * cms * 1e-8, 3);
        var qes = Dice.Rounded(type == "subwoofer" ? dice.Around(0.42, 0.58) : dice.Around(0.58, 0.85), 2);
        var qms = Dice.Rounded(dice.Around(3.5, 7), 3);
        var re = Dice.Rounded(load * dice.Around(0.8, 0.9), 3);
        var bl = Math.Sqrt(omega * mms * 1e-3 * re / qes);
        // 112.2 dB and 9.64e-10 (Vas in litres): Small, JAES 1972.
        var level = 112.2 + (10 * Math.Log10(9.64e-10 * fs * fs * fs * vas / qes));
        var atVolts = dice.Chance(0.4);
        var stated = Math.Round(2 * (level + (atVolts ? 10 * Math.Log10(8.0 / load) : 0) + dice.Around(-1, 1))) / 2;
        e.Line($"sensitivity: {stated} dB @ {(atVolts ? "2.83 V" : "1 W")}/1 m").Line("parameters:")
            .Line($"  fs: {fs} Hz").Line($"  qts: {Dice.Digits(qes * qms / (qes + qms), 2)}").Line($"  qes: {qes}").Line($"  qms: {qms}")
            .Line($"  vas: {vas} L").Line($"  sd: {size.Area} cm2")
            .Line($"  xmax: {Dice.Digits(dice.Around(3, 4.5) * (type == "subwoofer" ? 2.6 : 1), 2)} mm")
            .Line($"  re: {re} ohm").Line($"  le: {Dice.Digits(dice.Around(0.07, 0.11) * load, 2)} mH")
            .Line($"  bl: {Dice.Digits(bl, 3)} T m")
            .Line($"  mms: {mms} g").Line($"  cms: {cms} mm/N");
    }

    private static void Dimensions(EntryText e, Dice dice, Size size)
    {
        var depth = dice.Around(size.Depth.Low, size.Depth.High);
        var magnet = size.Magnet * 0.5;
        e.Line("dimensions:").Line($"  flange: {size.Flange + dice.Whole(0, 3)} mm")
            .Line($"  cutout: {size.Cutout + dice.Whole(-1, 1)} mm{dice.Of("", "", " ± 0.3 mm")}")
            .Line($"  depth: {depth:0.0} mm{dice.Of("", "", " ± 0.3 mm", " ± 0.3 mm (measured)")}")
            .Line($"  magnet_diameter: {size.Magnet} mm")
            .Line($"  magnet_height: {dice.Whole(15, 19)} mm").Line($"  flange_thickness: {dice.Of("4", "4.5", "5")} mm")
            .Line($"  front_height: {dice.Whole(7, 14)} mm");
        if (dice.Chance(0.6))
        {
            e.Line("  profile:").Line($"    - [0 mm, {size.Cutout / 2.0} mm]")
                .Line($"    - [{depth * 0.4:0.0} mm, {size.Cutout * 0.42:0.0} mm]")
                .Line($"    - [{depth * 0.7:0.0} mm, {magnet:0.0} mm]").Line($"    - [{depth:0.0} mm, {magnet:0.0} mm]");
        }
        e.Line($"holes: {{circle: {size.Circle}, count: 4, angles: [45, 135, 225, 315], slot: {dice.Whole(1, 4)} mm, screw: "
            + $"{dice.Of("4.2", "4.8", "5")} mm}}");
    }

    private static EntryText Tweeter(int index, Dice dice)
    {
        var load = dice.Of(4, 4, 4, 6);
        var power = 5 * dice.Whole(3, 8);
        var fs = 50 * dice.Whole(18, 28);
        var qes = Dice.Rounded(dice.Around(1.2, 1.7), 3);
        var qms = Dice.Rounded(dice.Around(2.2, 3.2), 3);
        return new EntryText(IdOf(index), "driver", $"Maker {index % 60:00} T25 tweeter, number {index}", dice).Sold(dice, 2, 25, 140)
            .Line("type: tweeter").Line("size: 25 mm").Line("shape: round").Line($"impedance: {load} ohm")
            .Line($"power: {{continuous: {power} W, peak: {3 * power} W}}")
            .Line($"sensitivity: {dice.Whole(178, 186) / 2.0} dB @ 1 W/1 m").Line("parameters:").Line($"  fs: {fs} Hz")
            .Line($"  qts: {Dice.Digits(qes * qms / (qes + qms), 3)}")
            .Line($"  qes: {qes}").Line($"  qms: {qms}").Line($"  re: {Dice.Digits(load * 0.86, 3)} ohm").Line("  le: 0.02 mH")
            .Line("dimensions:")
            .Line($"  flange: {dice.Whole(50, 54)} mm").Line($"  cutout: {dice.Whole(43, 45)} mm ± 0.3 mm")
            .Line($"  depth: {dice.Whole(15, 22)} mm")
            .Line("  flange_thickness: 2.5 mm").Line($"  front_height: {dice.Whole(4, 6)} mm")
            .Line($"lowest_crossover: {100 * (int)Math.Ceiling(fs * 2.2 / 100)} Hz @ 12 dB/octave")
            .Line("terminals: {type: plug, family: mini-t, polarity: keyed}").Line($"mass: {dice.Whole(40, 70)} g");
    }

    /// <summary>Area in cm², masses in g, resonances in Hz, lengths in mm.</summary>
    private sealed record Size(
        string Word, string Nominal, int Area, (double Low, double High) Mass, (double Low, double High) Resonance, int Flange, int Cutout,
        (double Low, double High) Depth, int Magnet, string Circle);
}
