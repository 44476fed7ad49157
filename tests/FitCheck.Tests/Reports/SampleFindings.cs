using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Tests.Reports;

/// <summary>The findings of the sample.</summary>
internal static class SampleFindings
{
    public static IReadOnlyList<Finding> All => [.. Mounting, .. Unmeasured, .. Tweeters, .. Loads, .. WholeBuild];

    private static Finding[] Mounting =>
    [
        Of("mount/magnet-meets-glass", "The magnet meets the glass", Status.Fail, "left-door", "Left front door", 13) with
        {
            Parts = ["drivers/heron-165", "adapters/tern-165-ring"],
            Fact = "glass_gap",
            Value = new Uncertain(-3.2, -5.2, -1.2, 1.4),
            ValueText = "-3.2 mm",
            Unit = "mm",
            Limit = 0,
            Margin = -3.2,
            Message = "The magnet reaches 61.2 mm behind the panel; the glass, when down, is at 58 mm.",
            Advice = "Add at least 8.2 mm of spacer, or choose a driver that needs 53 mm or less.",
            Source = "Distance to moving glass at least 5 mm: common practice",
            Related = [new(new Location("catalog/drivers/heron-165.yaml", 14, 10), "mounting depth 65 mm"),
                new(new Location("catalog/vehicles/tern.yaml", 31, 14), "depth to the glass 58 mm")],
        },
        Of("mount/hole-too-tight", "The hole is too tight", Status.Pass, "left-door", "Left front door", 13) with
        {
            Fact = "hole_gap",
            Value = Uncertain.Within(4.5, 1.1),
            ValueText = "4.5 mm",
            Unit = "mm",
            Limit = 1,
            Margin = 3.5,
            Message = "The basket clears the hole by 4.5 mm.",
            Source = "Tilted body in the plane of the sheet: derived in the geometry notes",
        },
        Of("mount/grille-touched", "The cone touches the grille", Status.Warn, "left-door", "Left front door", 13) with
        {
            Fact = "front_gap",
            Value = Uncertain.Within(2.4, 1.6),
            ValueText = "2.4 mm",
            Unit = "mm",
            Limit = 3,
            Margin = -0.6,
            Message = "At full travel the surround comes within 2.4 mm of the grille; 3 mm are wanted.",
            Advice = "Set the high-pass to 80 Hz or above, or take 1 mm off the ring.",
            Source = "Distance to fixed parts at least 3 mm: common practice",
        },
    ];

    private static Finding[] Unmeasured =>
    [
        Of("mount/magnet-meets-glass", "The magnet meets the glass", Status.Measure, "right-door", "Right front door", 17) with
        {
            Parts = ["drivers/heron-165", "adapters/tern-165-ring"],
            Fact = "glass_gap",
            Unit = "mm",
            Limit = 0,
            Message = "Nobody has measured how deep the glass of the right front door stands.",
            Advice = "Measure the depth to the glass with the window fully down.",
            Source = "Distance to moving glass at least 5 mm: common practice",
            ToMeasure = [new("Depth to the glass behind Right front door",
                "Lower the window fully. Lay a straight edge across the hole and measure square to it, to the glass.", "66.2 mm or more")],
        },
        Of("mount/door-too-shallow", "The door is too shallow", Status.Measure, "rear-shelf", "Rear shelf", 25) with
        {
            Fact = "depth_gap",
            Unit = "mm",
            Limit = 3,
            Message = "The driver's mounting depth is not known.",
            Advice = "Measure the driver from the underside of its flange to the back of its magnet.",
            Source = "Distance to fixed parts at least 3 mm: common practice",
            ToMeasure = [new("Mounting depth of the oval driver", "From the underside of the flange to the back of the magnet.",
                "74 mm or less"), new("Hole in the rear shelf", "Across, between bare edges of the metal.", null)],
        },
    ];

    private static Finding[] Tweeters =>
    [
        Of("tweeter/cup-hole-tight", "The cup's hole is too tight", Status.Warn, "left-sail", "Left mirror triangle", 21) with
        {
            Fact = "wall_left",
            Value = Uncertain.Within(1.6, 0.7),
            ValueText = "1.6 mm",
            Unit = "mm",
            Limit = 2,
            Margin = -0.4,
            Message = "Enlarging the cup leaves a wall of 1.6 mm; 2 mm are wanted.",
            Advice = "Open the hole with a file, not with a hole saw, and glue a ring behind it.",
            Source = "Wall of at least 2 mm: common practice",
        },
        Of("wiring/factory-wire-cut", "A factory wire would be cut", Status.Fail, "left-sail", "Left mirror triangle", 22) with
        {
            Fact = "connection",
            ValueText = "splice",
            Message = "No harness leads from the factory plug to the tweeter, and this build forbids cutting.",
            Advice = "Add the tweeter lead for Tern, or allow cutting in the build.",
            Source = "Uncut factory wiring: common practice",
        },
    ];

    private static Finding[] Loads =>
    [
        Of("load/below-rated", "The load is lower than the output allows", Status.Pass, "front-left", "Front left output", 30) with
        {
            Fact = "lowest_load",
            Value = Uncertain.Within(3.3217341, 0.12),
            ValueText = "3.32 ohm",
            Unit = "ohm",
            Limit = 3.2,
            Margin = 0.1217341,
            Message = "The load is never below 3.32 ohm; the output allows 3.2 ohm.",
            Source = "IEC 60268-5: at least 80 % of the rated impedance",
        },
        Of("load/below-rated", "The load is lower than the output allows", Status.Fail, "rear", "Rear output, both shelves", 33) with
        {
            Fact = "lowest_load",
            Value = Uncertain.Exact(1.66),
            ValueText = "1.66 ohm",
            Unit = "ohm",
            Limit = 3.2,
            Margin = -1.54,
            Message = "Two 4 ohm drivers in parallel fall to 1.66 ohm at 502 Hz; the output allows 3.2 ohm.",
            Advice = "Put the two drivers in series, or give each an output of its own.",
            Source = "IEC 60268-5: at least 80 % of the rated impedance",
        },
    ];

    private static Finding[] WholeBuild =>
    [
        Of("list/over-budget", "The build costs more than the budget", Status.Warn, "build", "Build", 3) with
        {
            Fact = "over_budget",
            Value = Uncertain.Exact(19.5),
            ValueText = "19.50 EUR",
            Unit = "EUR",
            Limit = 0,
            Margin = -19.5,
            Message = "The parts cost 469.50 EUR; the budget is 450.00 EUR.",
            Advice = "Choose a cheaper amplifier, or raise the budget by 19.50 EUR.",
            Source = "The build's own budget",
        },
        Of("seal/no-gasket", "Nothing closes the gap to the door card", Status.Warn, "left-door", "Left front door", 14) with
        {
            Fact = "gasket",
            ValueText = "no",
            Message = "A gap of 9 mm to the door card stays open.",
            Advice = "Add a gasket ring of 12 mm free height.",
            Source = "Gasket between driver and door card: common practice",
            Waived = "The customer brings a ring from an earlier build.",
        },
    ];

    private static Finding Of(string rule, string title, Status status, string position, string name, int line) => new()
    {
        Rule = rule,
        Title = title,
        Status = status,
        Position = position,
        PositionName = name,
        Parts = [],
        Fact = "fact",
        ValueText = "unknown",
        Unit = "",
        Message = "",
        Advice = "",
        Source = "",
        At = new Location(SampleResult.File, line, 13),
        Fingerprint = $"{rule}|Front stage, first step|{position}",
    };
}
