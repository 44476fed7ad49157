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

    public string Type { get; }
    public Foundation.Problems.Location TypeAt { get; }
    public bool Oval { get; }
    public Figure? Size { get; }
    public Figure? Impedance { get; }
    /// <summary>Rated noise power.</summary>
    public Figure? ContinuousPower { get; }
    public Figure? PeakPower { get; }
    public Figure? Sensitivity { get; }
    /// <summary>True when the sensitivity is stated at 2.83 V, false at 1 W.</summary>
    public bool SensitivityAtVolts { get; }
    /// <summary>The stated sensitivity at 1 W into the rated impedance, dB at 1 m; null when either is not given.</summary>
    public double? OneWattLevel => Sensitivity is not { } stated ? null
        : !SensitivityAtVolts ? stated.Si
        : Impedance is { Si: > 0 } rated ? Physics.Acoustics.Sensitivity.ToOneWatt(stated.Si, rated.Si) : null;
    public DriverParameters? Parameters { get; }
    public DriverDimensions? Dimensions { get; }
    public Figure? LowestCrossover { get; }
    /// <summary>The slope in dB/octave at which the lowest crossover is rated.</summary>
    public int? LowestCrossoverSlope { get; }
    public Figure? BuiltInCapacitor { get; }
    public Figure? BuiltInImpedance { get; }
    public Figure? OwnCapacitor { get; }
    public Terminals? Terminals { get; }
    /// <summary>The screw holes in the flange.</summary>
    public HoleCircle? Holes { get; }
    public Figure? Mass { get; }
    public bool IsTweeter => Type == "tweeter";
}

/// <summary>Thiele/Small parameters, SI.</summary>
public sealed record DriverParameters
{
    internal DriverParameters(Fields fields) => Fields = fields;

    internal Fields Fields { get; }
    public Figure? Fs => Fields.Figure("fs", Dimension.Hertz);
    public double? Qts => Fields.Number("qts");
    public double? Qes => Fields.Number("qes");
    public double? Qms => Fields.Number("qms");
    public Figure? Vas => Fields.Figure("vas", Dimension.CubicMetre);
    public Figure? Sd => Fields.Figure("sd", Dimension.SquareMetre);
    public Figure? Xmax => Fields.Length("xmax");
    public Figure? Re => Fields.Figure("re", Dimension.Ohm);
    public Figure? Le => Fields.Figure("le", Dimension.Henry);
    public Figure? Bl => Fields.Figure("bl", Dimension.ForceFactor);
    public Figure? Mms => Fields.Figure("mms", Dimension.Kilogram);
    public Figure? Cms => Fields.Figure("cms", Dimension.Compliance);
}

/// <summary>Sizes on the drawing of a driver.</summary>
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
        Profile = ReadProfile(f);
        ProfileAt = (f.Map["profile"] ?? f.Map).At;
    }

    public Figure? Flange { get; }
    public Figure? FlangeMinor { get; }
    public Figure? Cutout { get; }
    public Figure? CutoutMinor { get; }
    public Figure? Depth { get; }
    public Figure? MagnetDiameter { get; }
    public Figure? MagnetHeight { get; }
    public Figure? FlangeThickness { get; }
    public Figure? FrontHeight { get; }
    /// <summary>(distance behind the flange, radius) in metres; empty when the sheet gives none.</summary>
    public IReadOnlyList<(double Z, double R)> Profile { get; }
    public Foundation.Problems.Location ProfileAt { get; }

    private static List<(double Z, double R)> ReadProfile(Fields f)
    {
        var points = new List<(double, double)>();
        if (f.Map["profile"] is not Yaml.YamlList list)
            return points;
        foreach (var item in list.Items)
        {
            if (item is Yaml.YamlList { Items: [Yaml.YamlScalar first, Yaml.YamlScalar second] } && QuantityText.Parse(first.Text) is { } z
                && QuantityText.Parse(second.Text) is { } r && z.Dimension == Dimension.Metre && r.Dimension == Dimension.Metre)
                points.Add((z.Si, r.Si));
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
        Crossover = f.Text("crossover");
        Contains = Contained.Read(f);
    }

    public Foundation.Problems.Located<string>? Woofer { get; }
    public Foundation.Problems.Located<string>? Tweeter { get; }
    public Foundation.Problems.Located<string>? Crossover { get; }
    public IReadOnlyList<Contained> Contains { get; }
}

/// <summary>A passive crossover: one ladder for each driver, and the jumper's positions for the tweeter.</summary>
internal sealed record Crossover : Part
{
    internal Crossover(Fields f) : base(f)
    {
        LowPass = LadderPart.Read(f, "low_pass");
        HighPass = LadderPart.Read(f, "high_pass");
        Settings = [.. f.Each("tweeter_settings").Select(s => new CrossoverSetting(s.Word("name"), s.Figure("level", Dimension.Decibel), LadderPart.Read(s, "network")))];
        DefaultSetting = f.Text("default_setting")?.Value;
        Power = f.Figure("power", Dimension.Watt);
        Box = f.Figures("box", Dimension.Metre);
    }

    public IReadOnlyList<LadderPart> LowPass { get; }
    public IReadOnlyList<LadderPart> HighPass { get; }
    public IReadOnlyList<CrossoverSetting> Settings { get; }
    public string? DefaultSetting { get; }
    public Figure? Power { get; }
    public IReadOnlyList<Figure> Box { get; }
}

/// <summary>One position of the jumper: its name, its nominal change of level, and the parts it puts before the tweeter.</summary>
internal sealed record CrossoverSetting(string Name, Figure? Level, IReadOnlyList<LadderPart> Network);
