using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Tests.Reports;

/// <summary>
/// A result as `check` gives it, with every status, an unknown depth, a waiver, two tweeters and a list; vehicle and parts are invented.
/// </summary>
internal static class SampleResult
{
    public const string File = "builds/tern-front.yaml";

    private static readonly Dimension Metre = Dimension.Metre;

    public static CheckResult Full => new("fitcheck 0.1.0", "sha256:3f1c9a52", [Build]) { Rules = Rules };

    private static IReadOnlyList<RuleHelp> Rules =>
    [
        .. SampleFindings.All.DistinctBy(f => f.Rule).OrderBy(f => f.Rule, StringComparer.Ordinal)
            .Select(f =>
            new RuleHelp(f.Rule, f.Title, $"Why {f.Rule} asks.", f.Advice, f.Source,
                f.Rule == "load/below-rated" ? "https://example.org/a b" : null, f.Status == Status.Fail)),
    ];

    public static CheckResult Passing => new("fitcheck 0.1.0", "sha256:3f1c9a52", [Build with
    {
        Findings = [.. Build.Findings.Where(f => f.Status == Status.Pass)],
    }]);

    public static BuildResult Build => new()
    {
        File = File,
        Name = "Front stage, first step",
        Notes = "Doors may be drilled; no factory wire may be cut.",
        VehicleName = "Tern 5-door estate, 2016 to 2021",
        Findings = [.. SampleFindings.All.Order(Comparer<Finding>.Create(Finding.Compare))],
        Facts = Facts,
        Drawings = [SampleDrawings.LeftDoor, SampleDrawings.RightDoor, SampleDrawings.Sail, SampleDrawings.Shelf],
        Loads = [SampleDrawings.LeftChannel, SampleDrawings.RearChannel],
        List =
        [
            new("drivers/heron-165", "Heron 165 mm component set", 1, 1, 1, new(189.00m, "EUR"), new(189.00m, "EUR"), "current"),
            new("adapters/tern-165-ring", "Ring for Tern front door, 165 mm, ABS, tilted 6 deg", 2, 2, 1, new(34.50m, "EUR"),
                new(34.50m, "EUR"), "to-order"),
            new("harnesses/tern-speaker", "Speaker lead for Tern, uncut", 2, 1, 2, new(7.90m, "EUR"), new(15.80m, "EUR"), "current"),
            new("sundries/foam-tape", "Closed-cell foam tape, 10 m", 1, 1, 1, new(11.20m, "EUR"), new(11.20m, "EUR"), "current"),
            new("amplifiers/plover-4", "Plover four-channel amplifier", 1, 1, 1, new(219.00m, "EUR"), new(219.00m, "EUR"), "discontinued"),
        ],
        Totals = [new(469.50m, "EUR")],
        Budget = new(450m, "EUR"),
        Cautions =
        [
            "The front doors carry pressure sensors for the side airbags. Do not vent or seal these doors without the maker's procedure.",
            "Disconnect the battery before work, and wait as long as the vehicle's manual says.",
            "Fit the fuse last, within 450 mm of the battery.",
            "At full power this build reaches 112 dB at the seat; 94 dB is safe for one hour a day.",
        ],
        RuleChanges =
        [
            new("seal/gap-to-the-door-card", "Gap to the door card", "switched off", IsOff: true, "Our cards have a lip of their own",
                new Location("shop/seal/gap-to-the-door-card.yaml", 1, 1)),
            new("mount/glass-too-near", "Distance to the window", "warns below 8 mm instead of below 5 mm", IsOff: false,
                "The glass of older cars wobbles", new Location("shop/mount/glass-too-near.yaml", 1, 1)),
        ],
        Remarks = [new(new Location(File, 41, 3), Severity.Warning,
            "The waiver of `signal/no-turn-on` matches no finding. Delete it.") { Kind = ProblemKind.IdleWaiver }],
    };

    private static IReadOnlyList<FactTable> Facts =>
    [
        Table(Subject.Position, "left-door", "Left front door", 12, new(StringComparer.Ordinal)
        {
            ["depth_needed"] = FactValue.Of(Metre, new Uncertain(0.0612, 0.0592, 0.0632, 0.0014)),
            ["glass_gap"] = FactValue.Of(Metre, new Uncertain(-0.0032, -0.0052, -0.0012, 0.0014)),
            ["holes_met"] = FactValue.Of(Dimension.One, 4),
            ["cut_needed"] = FactValue.Of(truth: false),
        }),
        Table(Subject.Position, "right-door", "Right front door", 16, new(StringComparer.Ordinal)
        {
            ["depth_needed"] = FactValue.Of(Metre, new Uncertain(0.0612, 0.0592, 0.0632, 0.0014)),
            ["glass_gap"] = FactValue.Unknown(FactType.Number(Metre)),
        }),
        Table(Subject.Position, "left-sail", "Left mirror triangle", 20, new(StringComparer.Ordinal)
        {
            ["body_gap"] = FactValue.Of(Metre, Uncertain.Within(0.0011, 0.0007)),
            ["connection"] = FactValue.Of("splice"),
        }),
        Table(Subject.Position, "rear-shelf", "Rear shelf", 24,
            new(StringComparer.Ordinal) { ["depth_needed"] = FactValue.Unknown(FactType.Number(Metre)) }),
        Table(Subject.Channel, "front-left", "Front left output", 30, new(StringComparer.Ordinal)
        {
            ["lowest_load"] = FactValue.Of(Dimension.Ohm, Uncertain.Within(3.3217341, 0.12)),
            ["factory_amplifier"] = FactValue.Unknown(FactType.Truth),
        }),
        Table(Subject.Channel, "rear", "Rear output, both shelves", 33,
            new(StringComparer.Ordinal) { ["lowest_load"] = FactValue.Of(Dimension.Ohm, 1.66) }),
        Table(Subject.Build, "build", "Build", 1, new(StringComparer.Ordinal) { ["total"] = FactValue.Of(Dimension.Currency, 469.5) })
            with { Currency = "EUR" },
    ];

    private static FactTable Table(Subject subject, string key, string name, int line, Dictionary<string, FactValue> values) =>
        new(subject, key, name, values) { At = new Location(File, line, 5) };
}
