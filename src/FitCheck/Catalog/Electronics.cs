using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>A source unit: the radio, with what its outputs deliver.</summary>
internal sealed record SourceUnit : Part
{
    /// <summary>The vehicle of which nobody knows which radio it came with, whose place this takes; null for an entry.</summary>
    public Vehicle? UnrecordedOf { get; init; }

    internal SourceUnit(Fields f) : base(f)
    {
        Factory = f.Truth("factory") ?? false;
        Channels = f.Texts("channels");
        Ratings = Rating.Read(f);
        LowestLoad = f.Figure("lowest_load", Dimension.Ohm);
        PowerConverter = f.Truth("power_converter");
        LowLevelVoltage = f.Figure("low_level_voltage", Dimension.Volt);
        LowLevelOutputs = f.Text("low_level_outputs")?.Value == FilterRange.None ? 0 : f.Count("low_level_outputs");
        SensesLoad = f.Truth("senses_load");
        OutputGround = f.Text("output_ground");
        RemoteOutput = f.Truth("remote_output");
        Filters = DeviceFilters.Read(f);
        SupplyRange = SupplyRange.Read(f);
    }

    public bool Factory { get; }
    public IReadOnlyList<Located<string>> Channels { get; }
    public IReadOnlyList<Rating> Ratings { get; }
    public Figure? LowestLoad { get; }
    /// <summary>
    /// Whether its output stage has a supply converter and so is not bound to the battery's voltage; null when not recorded.
    /// </summary>
    public bool? PowerConverter { get; }
    public Figure? LowLevelVoltage { get; }
    /// <summary>How many outputs it has at line level; null when nobody wrote it.</summary>
    public int? LowLevelOutputs { get; }
    /// <summary>Whether it has outputs at line level at all: somebody counted them, or wrote what they give.</summary>
    public bool? HasLineOutputs => LowLevelOutputs is { } count ? count > 0 : LowLevelVoltage is not null ? true : null;
    /// <summary>Whether it looks for a driver on its outputs; null when not recorded.</summary>
    public bool? SensesLoad { get; }
    /// <summary>`floating` where both wires of an output are driven, `common` where minus is ground; null when nobody wrote it.</summary>
    public Located<string>? OutputGround { get; }
    public bool? RemoteOutput { get; }
    public DeviceFilters Filters { get; }
    public SupplyRange? SupplyRange { get; }
}

/// <summary>A line converter: speaker level in, line level out.</summary>
internal sealed record LineConverter : Part
{
    internal LineConverter(Fields f) : base(f)
    {
        Channels = f.Count("channels") ?? 0;
        InputLimit = f.Figure("input_limit", Dimension.Volt);
        InputLoad = f.Figure("input_load", Dimension.Ohm);
        InputGround = f.Text("input_ground");
        Ratio = f.Number("ratio");
        OutputLimit = f.Figure("output_limit", Dimension.Volt);
        RemoteOutput = f.Truth("remote_output");
        Filters = DeviceFilters.Read(f);
        SupplyRange = SupplyRange.Read(f);
    }

    public int Channels { get; }
    public Figure? InputLimit { get; }
    public Figure? InputLoad { get; }
    /// <summary>`floating` where no wire of an input is joined to ground, `common` where minus is; null when nobody wrote it.</summary>
    public Located<string>? InputGround { get; }
    public double? Ratio { get; }
    public Figure? OutputLimit { get; }
    public bool? RemoteOutput { get; }
    public DeviceFilters Filters { get; }
    public SupplyRange? SupplyRange { get; }
}

/// <summary>An amplifier with its stated ratings.</summary>
internal sealed record Amplifier : Part
{
    internal Amplifier(Fields f) : base(f)
    {
        Channels = f.Count("channels") ?? 0;
        Ratings = Rating.Read(f);
        LowestLoad = f.Figure("lowest_load", Dimension.Ohm);
        LowestBridgedLoad = f.Figure("lowest_bridged_load", Dimension.Ohm);
        Bridgeable = f.Truth("bridgeable");
        Bridges = Bridges.Read(f, Channels);
        PowerConverter = f.Truth("power_converter");
        Class = f.Word("class");
        Efficiency = f.Figure("efficiency", Dimension.One);
        Fuses = f.Figures("fuses", Dimension.Ampere);
        HasFuses = f.Map["fuses"] is null ? null : Fuses.Count > 0;
        Terminal = f.Figure("terminal", Dimension.SquareMetre);
        SupplyRange = SupplyRange.Read(f);
        LowLevel = AmplifierInput.Read(f, "low_level_input");
        HighLevel = AmplifierInput.Read(f, "high_level_input");
        LowLevelLowest = LowLevel.Volts("lowest");
        LowLevelHighest = LowLevel.Volts("highest");
        HighLevelHighest = HighLevel.Volts("highest");
        FigureOrder.Range(f, LowLevelLowest, LowLevelHighest);
        HighLevelLoad = HighLevel.Fields?.Figure("load", Dimension.Ohm);
        SensesSignal = HighLevel.IsThere == false ? false : HighLevel.Fields?.Truth("senses_signal");
        HighLevelGround = HighLevel.Fields?.Text("ground");
        Filters = DeviceFilters.Read(f);
    }

    public int Channels { get; }
    public IReadOnlyList<Rating> Ratings { get; }
    public Figure? LowestLoad { get; }
    public Figure? LowestBridgedLoad { get; }
    public bool? Bridgeable { get; }
    /// <summary>The pairs that may be bridged; null when nobody wrote them.</summary>
    public Bridges? Bridges { get; }
    /// <summary>As of a source unit.</summary>
    public bool? PowerConverter { get; }
    /// <summary>Class of its output stage: `AB`, `D`, `G` or `H`; empty when not given.</summary>
    public string Class { get; }
    public Figure? Efficiency { get; }
    /// <summary>The fuses on its case.</summary>
    public IReadOnlyList<Figure> Fuses { get; }
    /// <summary>Whether there are any; null when nobody wrote it.</summary>
    public bool? HasFuses { get; }
    /// <summary>The thickest cable that its supply terminals take.</summary>
    public Figure? Terminal { get; }
    public SupplyRange? SupplyRange { get; }
    /// <summary>The input at line level.</summary>
    public AmplifierInput LowLevel { get; }
    /// <summary>The input at speaker level.</summary>
    public AmplifierInput HighLevel { get; }
    public DeviceFilters Filters { get; }
    public Figure? LowLevelLowest { get; }
    public Figure? LowLevelHighest { get; }
    public Figure? HighLevelHighest { get; }
    /// <summary>What a source sees at the speaker-level input.</summary>
    public Figure? HighLevelLoad { get; }
    /// <summary>Whether a signal at its speaker-level input switches it on; null when not recorded.</summary>
    public bool? SensesSignal { get; }
    /// <summary>`floating` where no wire of the speaker-level input is joined to ground, `common` where minus is.</summary>
    public Located<string>? HighLevelGround { get; }
}

/// <summary>Cable, fuse, terminal or kit.</summary>
internal sealed record WiringPart : Part
{
    internal WiringPart(Fields f) : base(f)
    {
        Type = f.Word("type");
        Gauge = f.Figure("gauge", Dimension.SquareMetre);
        if (f.Map["conductor"] is null && Needed(Type).Contains("conductor"))
            f.Problems.Error(f.Text("type")!.At,
                $"missing key `conductor`: copper-clad aluminium carries less than copper, so a {Type.Replace('-', ' ')} says which it is; "
                    + "add `conductor: copper`", Foundation.Problems.ProblemKind.WrongShape);
        Conductor = f.Text("conductor")?.Value;
        Length = f.Length("length");
        Channels = f.Count("channels");
        Current = f.Figure("current", Dimension.Ampere);
        Insulation = f.Figure("insulation", Dimension.Kelvin);
        FuseStandard = f.Text("fuse_standard")?.Value;
        Ways = f.Count("ways");
        Outlet = f.Figure("outlet", Dimension.SquareMetre);
        Contains = Contained.Read(f);
    }

    /// <summary>The keys that a part of a type can't be without.</summary>
    internal static IReadOnlyList<string> Needed(string type) => type is "power-cable" or "speaker-cable" ? ["conductor"] : [];

    public string Type { get; }
    public Figure? Gauge { get; }
    /// <summary>`copper`, `tinned-copper`, `copper-clad-aluminium` or `aluminium`; null when not recorded.</summary>
    public string? Conductor { get; }
    public bool CopperClad => Conductor == "copper-clad-aluminium";
    /// <summary>Of its conductor at 20 °C, ohm·m; that of copper when not recorded.</summary>
    public double Resistivity => Conductor switch
    {
        "copper-clad-aluminium" => WireGauge.CopperCladAluminium,
        "aluminium" => WireGauge.Aluminium,
        _ => WireGauge.Copper,
    };
    public Figure? Length { get; }
    /// <summary>How many channels a signal cable carries.</summary>
    public int? Channels { get; }
    /// <summary>What a cable may carry, or a fuse lets through.</summary>
    public Figure? Current { get; }
    /// <summary>What the insulation stands, °C.</summary>
    public Figure? Insulation { get; }
    /// <summary>How many outlets a distribution block has.</summary>
    public int? Ways { get; }
    /// <summary>The thickest cable that an outlet of a distribution block takes; `gauge` is what its inlet takes.</summary>
    public Figure? Outlet { get; }
    /// <summary>Pattern of the fuse, or of what a holder or block takes.</summary>
    public string? FuseStandard { get; }
    public IReadOnlyList<Contained> Contains { get; }
}

/// <summary>Treatment or sundry: tape, ring, sheet, screws, capacitor, L-pad, resistor.</summary>
internal sealed record Sundry : Part
{
    internal Sundry(Fields f) : base(f)
    {
        Type = f.Word("type");
        foreach (var key in Needed(Type))
        {
            // Without it the part would pass for a plain wire.
            if (f.Map[key] is null)
                f.Problems.Error(f.Text("type")!.At, $"missing key `{key}`, which a sundry of type {Type} needs",
                    Foundation.Problems.ProblemKind.WrongShape);
        }
        Capacitance = f.Figure("capacitance", Dimension.Farad);
        Resistance = f.Figure("resistance", Dimension.Ohm);
        SeriesResistance = f.Figure("series_resistance", Dimension.Ohm);
        ShuntResistance = f.Figure("shunt_resistance", Dimension.Ohm);
        Power = f.Figure("power", Dimension.Watt);
        Voltage = f.Figure("voltage", Dimension.Volt);
        Inner = f.Length("inner");
        Outer = f.Length("outer");
        FreeHeight = f.Length("free_height");
        CompressedHeight = f.Length("compressed_height");
        Length = f.Length("length");
        Diameter = f.Length("diameter");
    }

    /// <summary>The keys that a sundry of a type can't be without: what it is to the network it stands in.</summary>
    internal static IReadOnlyList<string> Needed(string type) => type switch
    {
        "capacitor" => ["capacitance"],
        "resistor" => ["resistance"],
        "l-pad" => ["series_resistance", "shunt_resistance"],
        _ => [],
    };

    public string Type { get; }
    public Figure? Capacitance { get; }
    public Figure? Resistance { get; }
    public Figure? SeriesResistance { get; }
    public Figure? ShuntResistance { get; }
    /// <summary>Of a resistor or an L-pad: what it may turn into heat.</summary>
    public Figure? Power { get; }
    /// <summary>Of a capacitor: the peak voltage that it stands.</summary>
    public Figure? Voltage { get; }
    /// <summary>Of a gasket ring: its diameters.</summary>
    public Figure? Inner { get; }
    public Figure? Outer { get; }
    public Figure? FreeHeight { get; }
    public Figure? CompressedHeight { get; }
    /// <summary>Of a screw: its length under the head.</summary>
    public Figure? Length { get; }
    /// <summary>Of a screw: its thread's outer diameter.</summary>
    public Figure? Diameter { get; }
}
