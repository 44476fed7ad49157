using FitCheck.Foundation.Problems;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A driver: woofer, tweeter, coaxial, full-range or subwoofer.</summary>
public sealed record Driver : Part
{
    internal Driver(Fields f) : base(f)
    {
        Type = f.Word("type");
        TypeAt = f.Text("type")?.At ?? f.At;
        Oval = f.Word("shape") == "oval";
        Size = f.Length("size");
        Impedance = f.Figure("impedance", Dimension.Ohm);
        Coils = f.Count("coils");
        ContinuousPower = f.Inner("power")?.Figure("continuous", Dimension.Watt);
        PeakPower = f.Inner("power")?.Figure("peak", Dimension.Watt);
        if (f.Rated("sensitivity", Dimension.Decibel) is ({ } level, var reference))
            (Sensitivity, SensitivityAtVolts) = (level, reference?.StartsWith("2.83", StringComparison.Ordinal) == true);
        Parameters = f.Inner("parameters") is { } p ? new DriverParameters(p) : null;
        Dimensions = f.Inner("dimensions") is { } d ? new DriverDimensions(d) : null;
        if (f.Rated("lowest_crossover", Dimension.Hertz) is ({ } corner, var slope))
            (LowestCrossover, LowestCrossoverSlope) = (corner, FilterSetting.Slope(slope));
        BuiltInCapacitor = f.Inner("built_in_tweeter")?.Figure("capacitor", Dimension.Farad);
        BuiltInImpedance = f.Inner("built_in_tweeter")?.Figure("impedance", Dimension.Ohm);
        OwnCapacitor = f.Inner("own_high_pass")?.Figure("capacitor", Dimension.Farad);
        Terminals = Terminals.Read(f.Inner("terminals"));
        Holes = HoleCircle.Read(f.Inner("holes"));
        Mass = f.Figure("mass", Dimension.Kilogram);
    }

    /// <summary>`woofer`, `tweeter`, `coaxial`, `full-range` or `subwoofer`.</summary>
    public string Type { get; }
    /// <summary>Where the type is written.</summary>
    public Location TypeAt { get; }
    /// <summary>True for an oval frame, false for a round one.</summary>
    public bool Oval { get; }
    /// <summary>The size class that it is sold in, metres; every sound entry has one.</summary>
    public Figure? Size { get; }
    /// <summary>Rated impedance, ohm, of each of two voice coils until a build says how these are wired; null when not given.</summary>
    public Figure? Impedance { get; private init; }
    /// <summary>How many voice coils it has; null when nobody wrote it.</summary>
    public int? Coils { get; }
    /// <summary>Rated noise power, watts; null when not given.</summary>
    public Figure? ContinuousPower { get; }
    /// <summary>Stated peak power, watts; null when not given.</summary>
    public Figure? PeakPower { get; }
    /// <summary>Stated sensitivity, dB at 1 m; null when not given.</summary>
    public Figure? Sensitivity { get; }
    /// <summary>True when the sensitivity is stated at 2.83 V, false at 1 W.</summary>
    public bool SensitivityAtVolts { get; }
    /// <summary>The stated sensitivity at 1 W into the rated impedance, dB at 1 m; null when either is not given.</summary>
    public double? OneWattLevel => Sensitivity is not { } stated ? null
        : !SensitivityAtVolts ? stated.Si
        : Impedance is { Si: > 0 } rated ? Physics.Acoustics.Sensitivity.ToOneWatt(stated.Si, rated.Si) : null;
    /// <summary>Null when none is written.</summary>
    public DriverParameters? Parameters { get; private init; }
    /// <summary>Null when none is written.</summary>
    public DriverDimensions? Dimensions { get; }
    /// <summary>The lowest corner at which it may be crossed over, hertz; null when not given.</summary>
    public Figure? LowestCrossover { get; }
    /// <summary>The slope in dB/octave at which the lowest crossover is rated; null when not given.</summary>
    public int? LowestCrossoverSlope { get; }
    /// <summary>The capacitor before the small tweeter of a coaxial, farads; null when not given.</summary>
    public Figure? BuiltInCapacitor { get; }
    /// <summary>Impedance of the small tweeter of a coaxial, ohm; null when not given.</summary>
    public Figure? BuiltInImpedance { get; }
    /// <summary>A capacitor that comes fixed to the driver, farads; null when none is written.</summary>
    public Figure? OwnCapacitor { get; }
    /// <summary>What the wires are joined to; null when not recorded.</summary>
    public Terminals? Terminals { get; }
    /// <summary>The screw holes in the flange; null when not given.</summary>
    public HoleCircle? Holes { get; }
    /// <summary>Kilograms; null when not given.</summary>
    public Figure? Mass { get; }
    /// <summary>As its terminals see it with both voice coils in use, in series or in parallel.</summary>
    internal Driver Wired(bool inSeries) => this with
    {
        Impedance = Impedance?.Times(VoiceCoils.Resistance(inSeries)),
        Parameters = Parameters is { } p ? new DriverParameters(p.Fields) { Coils = inSeries } : null,
    };
    /// <summary>True for a tweeter that stands alone, not for the one in a coaxial.</summary>
    public bool IsTweeter => Type == "tweeter";
}

/// <summary>Thiele/Small parameters, SI; each is null when nobody wrote it.</summary>
public sealed record DriverParameters
{
    internal DriverParameters(Fields fields) => Fields = fields;

    internal Fields Fields { get; }
    /// <summary>Whether two voice coils are wired in series, else in parallel; null for one, and as long as nobody says.</summary>
    internal bool? Coils { get; init; }
    /// <summary>Resonance in free air, hertz.</summary>
    public Figure? Fs => Fields.Figure("fs", Dimension.Hertz);
    /// <summary>Total quality factor, a plain number.</summary>
    public double? Qts => Fields.Number("qts");
    /// <summary>Electrical quality factor, a plain number.</summary>
    public double? Qes => Fields.Number("qes");
    /// <summary>Mechanical quality factor, a plain number.</summary>
    public double? Qms => Fields.Number("qms");
    /// <summary>The volume of air that is as compliant as the suspension, cubic metres.</summary>
    public Figure? Vas => Fields.Figure("vas", Dimension.CubicMetre);
    /// <summary>Effective area of the cone, square metres.</summary>
    public Figure? Sd => Fields.Figure("sd", Dimension.SquareMetre);
    /// <summary>Peak linear excursion to one side, metres.</summary>
    public Figure? Xmax => Fields.Length("xmax");
    /// <summary>DC resistance of the voice coil, ohm.</summary>
    public Figure? Re => Of(Fields.Figure("re", Dimension.Ohm), VoiceCoils.Resistance);
    /// <summary>Inductance of the voice coil, henry.</summary>
    public Figure? Le => Of(Fields.Figure("le", Dimension.Henry), VoiceCoils.Inductance);
    /// <summary>Force factor, tesla metres.</summary>
    public Figure? Bl => Of(Fields.Figure("bl", Dimension.ForceFactor), VoiceCoils.ForceFactor);
    /// <summary>Moving mass, kilograms.</summary>
    public Figure? Mms => Fields.Figure("mms", Dimension.Kilogram);
    /// <summary>Compliance of the suspension, metres per newton.</summary>
    public Figure? Cms => Fields.Figure("cms", Dimension.Compliance);

    private Figure? Of(Figure? ofEach, Func<bool, double> factor) => Coils is { } inSeries ? ofEach?.Times(factor(inSeries)) : ofEach;
}

/// <summary>Sizes on the drawing of a driver, metres; each is null when the drawing does not give it.</summary>
public sealed record DriverDimensions
{
    internal DriverDimensions(Fields f)
    {
        Flange = f.Length("flange");
        FlangeMinor = f.Length("flange_minor");
        Cutout = f.Length("cutout");
        CutoutMinor = f.Length("cutout_minor");
        Depth = f.Length("depth");
        MagnetDiameter = f.Length("magnet_diameter");
        MagnetHeight = f.Length("magnet_height");
        FlangeThickness = f.Length("flange_thickness");
        FrontHeight = f.Length("front_height");
        FigureOrder.Axes(f, "flange", Flange, FlangeMinor);
        FigureOrder.Axes(f, "cutout", Cutout, CutoutMinor);
        Profile = ReadProfile(f);
        ProfileAt = (f.Map["profile"] ?? f.Map).At;
    }

    /// <summary>Outer diameter of the flange; of an oval, the long axis.</summary>
    public Figure? Flange { get; }
    /// <summary>Short axis of an oval flange.</summary>
    public Figure? FlangeMinor { get; }
    /// <summary>Diameter of the hole that it needs, a tweeter's of its body; of an oval, the long axis.</summary>
    public Figure? Cutout { get; }
    /// <summary>Short axis of the hole that an oval needs.</summary>
    public Figure? CutoutMinor { get; }
    /// <summary>How far the body reaches behind the flange.</summary>
    public Figure? Depth { get; }
    /// <summary>Diameter of the magnet.</summary>
    public Figure? MagnetDiameter { get; }
    /// <summary>Length of the magnet along the axis, at the back of the body.</summary>
    public Figure? MagnetHeight { get; }
    /// <summary>Thickness of the flange.</summary>
    public Figure? FlangeThickness { get; }
    /// <summary>What stands above the front of the flange: surround or tweeter post.</summary>
    public Figure? FrontHeight { get; }
    /// <summary>(distance behind the flange, radius) in metres, from the flange to the back; empty when the sheet gives none.</summary>
    public IReadOnlyList<(double Z, double R)> Profile { get; }
    /// <summary>Where the profile is written; the sizes as a whole where there is none.</summary>
    public Location ProfileAt { get; }

    private static List<(double Z, double R)> ReadProfile(Fields f)
    {
        var points = new List<(double, double)>();
        if (f.Map["profile"] is not Yaml.YamlList list)
            return points;
        foreach (var item in list.Items)
        {
            if (item is Yaml.YamlList { Items: [Yaml.YamlScalar first, Yaml.YamlScalar second] } && QuantityText.Parse(first.Text) is { } z
                && QuantityText.Parse(second.Text) is { } r && z.Dimension == Dimension.Metre && r.Dimension == Dimension.Metre)
            {
                if (points.Count > 0 && z.Si < points[^1].Item1)
                    f.Problems.Error(first.At,
                        $"the points of a profile go from the flange to the back, found `{first.Text}` behind a point that lies deeper",
                        ProblemKind.WrongShape);
                points.Add((z.Si, r.Si));
            }
        }
        return points;
    }
}

/// <summary>A component set: woofer, tweeter, mostly a passive crossover, and what else is in the box.</summary>
public sealed record ComponentSet : Part
{
    internal ComponentSet(Fields f) : base(f)
    {
        Woofer = f.Text("woofer");
        Tweeter = f.Text("tweeter");
        Crossover = f.Text("crossover") is { Value: not FilterRange.None } id ? id : null;
        HasCrossover = Crossover is not null ? true : f.Word("crossover") == FilterRange.None ? false : null;
        Contains = Contained.Read(f);
    }

    /// <summary>The id of the woofer, and where it is named; every sound entry has one.</summary>
    public Located<string>? Woofer { get; }
    /// <summary>The id of the tweeter, and where it is named; every sound entry has one.</summary>
    public Located<string>? Tweeter { get; }
    /// <summary>The id of the passive crossover, and where it is named; null when none is in the box.</summary>
    public Located<string>? Crossover { get; }
    /// <summary>Whether a crossover is in the box; null when not recorded.</summary>
    internal bool? HasCrossover { get; }
    /// <summary>What else is in the box, in the order of the file; empty when nothing is written.</summary>
    public IReadOnlyList<Contained> Contains { get; }
}

/// <summary>A passive crossover: one ladder for each driver, and the jumper's positions for the tweeter.</summary>
internal sealed record Crossover : Part
{
    internal Crossover(Fields f) : base(f)
    {
        (IsLowPassRecorded, IsHighPassRecorded, AreSettingsRecorded) =
            (f.Map["low_pass"] is not null, f.Map["high_pass"] is not null, f.Map["tweeter_settings"] is not null);
        LowPass = LadderPart.Read(f, "low_pass");
        HighPass = LadderPart.Read(f, "high_pass");
        Settings = [.. f.Each("tweeter_settings")
            .Select(s => new CrossoverSetting(s.Word("name"), s.Figure("level", Dimension.Decibel), LadderPart.Read(s, "network")))];
        DefaultSetting = f.Text("default_setting")?.Value;
        if (f.Text("default_setting") is { } standing && !Settings.Any(s => s.Name == standing.Value))
            f.Problems.Error(standing.At,
                $"`default_setting` names no setting of this crossover: `{standing.Value}`; it has "
                    + (Settings.Count == 0 ? "none" : string.Join(", ", Settings.Select(s => s.Name))), ProblemKind.WrongShape);
        Frequency = f.Figure("crossover_frequency", Dimension.Hertz);
        NominalLoad = f.Figure("nominal_load", Dimension.Ohm);
        Power = f.Figure("power", Dimension.Watt);
        Box = f.Figures("box", Dimension.Metre);
    }

    /// <summary>False when nobody wrote what stands before the woofer, be it nothing.</summary>
    public bool IsLowPassRecorded { get; }
    /// <summary>The same of the tweeter.</summary>
    public bool IsHighPassRecorded { get; }
    /// <summary>False when nobody wrote whether it has a jumper.</summary>
    public bool AreSettingsRecorded { get; }
    public IReadOnlyList<LadderPart> LowPass { get; }
    public IReadOnlyList<LadderPart> HighPass { get; }
    public IReadOnlyList<CrossoverSetting> Settings { get; }
    public string? DefaultSetting { get; }
    /// <summary>Where it divides, as its sheet says.</summary>
    public Figure? Frequency { get; }
    /// <summary>Rated impedance of the drivers that it was made for.</summary>
    public Figure? NominalLoad { get; }
    /// <summary>Continuous power that it may be fed.</summary>
    public Figure? Power { get; }
    public IReadOnlyList<Figure> Box { get; }
}

/// <summary>One position of the jumper: its name, its nominal change of level, and the parts it puts before the tweeter.</summary>
internal sealed record CrossoverSetting(string Name, Figure? Level, IReadOnlyList<LadderPart> Network);
