using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Sheet;
using FitCheck.Tests.Reports;

namespace FitCheck.Tests.Sheet;

/// <summary>A result with something for every section of the sheet.</summary>
internal static class SampleSheet
{
    public static BuildResult Build => SampleResult.Build with
    {
        Facts =
        [
            Table(Subject.Position, "left-door", "Left front door", Door("left", "half past four")),
            Table(Subject.Position, "right-door", "Right front door", Door("right", "half past seven")),
            Table(Subject.Channel, "front-left", "Front left output", new()
            {
                ["gain_target"] = FactValue.Of(Dimension.Volt, 16.733),
                ["high_pass_filter"] = FactValue.Of("80 Hz at 12 dB/octave"),
            }),
            Table(Subject.Channel, "rear", "Rear output", new() { ["gain_target"] = FactValue.Unknown(FactType.Number(Dimension.Volt)) }),
            Table(Subject.Device, "amp", "Plover four-channel amplifier", new()
            {
                ["has_feeder"] = FactValue.Of(true),
                ["device_name"] = FactValue.Of("Plover four-channel amplifier"),
                ["feeder_name"] = FactValue.Of("Tern factory radio"),
                ["uses_speaker_level"] = FactValue.Of(true),
                ["gain_setting"] = FactValue.Of(Dimension.Volt, 2),
            }),
        ],
        Drawings = [SampleDrawings.LeftDoor with { Face = Face(10.5) }, SampleDrawings.RightDoor with { Face = Face(1.5) }],
        Wirings = [new("front-left", "Front left output", "Plover four-channel amplifier", ["1"], [], "Heron crossover",
            [new("Left front door", "Heron 165 mm woofer", "new wire → tabs of 6.3 mm (+) and 4.8 mm (−)", IsTweeter: false,
                IsFactory: false)])],
        Supply = new(
            new() { Name = "the main cable", Gauge = "4 AWG", LengthM = 4.2, FuseA = 100, FuseDistanceMm = 300, Status = Status.Pass },
            "Block",
            [new() { Name = "Plover four-channel amplifier", Gauge = "8 AWG", LengthM = 0.4, FuseA = 40, GroundGauge = "8 AWG",
                Status = Status.Pass }]),
        Settings = [new(["Left front door"], "High-pass", "40 Hz or higher"),
            new(["Left front door"], "Thick side of the spacer", "told elsewhere") { WhileMounting = true }],
    };

    public static string Written(params BuildResult[] builds)
    {
        using var output = new StringWriter { NewLine = "\n" };
        SheetReport.Write(new CheckResult("fitcheck 0.1.0", "sha256:3f1c9a52", builds), ReportOptions.Default, output);
        return output.ToString();
    }

    /// <summary>A face of two holes, one of which has to be drilled in the panel's other part.</summary>
    public static FaceDrawing Face(double aim) => new()
    {
        CutoutRadius = 79,
        SpacerRadius = 92,
        PanelScrew = 5,
        Panel = [new(45, 86, Meets: true), new(315, 86, Meets: false)],
        Driver = [new(45, 77.5, Meets: true), new(315, 77.5, Meets: true)],
        AimHour = aim,
        TiltDeg = 8,
    };

    private static Dictionary<string, FactValue> Door(string hand, string thick) => new()
    {
        ["has_driver"] = FactValue.Of(true),
        ["has_adapter"] = FactValue.Of(true),
        ["place"] = FactValue.Of("door"),
        ["wet"] = FactValue.Of(true),
        ["pressure_sensor"] = FactValue.Of(true),
        ["has_glass"] = FactValue.Of(true),
        ["uses_factory_plug"] = FactValue.Of(true),
        ["driver_name"] = FactValue.Of("Heron 165 mm woofer, one of a set"),
        ["adapter_name"] = FactValue.Of("Ring for Tern front door"),
        ["adapter_hand"] = FactValue.Of(hand),
        ["adapter_tilt"] = FactValue.Of(Dimension.Radian, 8 * Math.PI / 180),
        ["spacer_thick_side"] = FactValue.Of(thick),
        ["aim_towards"] = FactValue.Of("the listener"),
        ["panel_turn"] = FactValue.Of("as it is drawn for this side"),
        ["hole_available"] = FactValue.Of(Dimension.Metre, 0.158),
        ["hole_needed"] = FactValue.Of(Dimension.Metre, 0.1347),
        ["panel_holes"] = FactValue.Of(Dimension.One, 2),
        ["panel_holes_meeting"] = FactValue.Of(Dimension.One, 1),
        ["panel_holes_missed_at"] = FactValue.Of("10:30"),
        ["screw_longest"] = FactValue.Of(Dimension.Metre, 0.017),
    };

    private static FactTable Table(Subject subject, string key, string name, Dictionary<string, FactValue> values) =>
        new(subject, key, name, values) { At = new Location(SampleResult.File, 1, 1) };
}
