using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Wording;
using Xunit;

namespace FitCheck.Tests.Reports;

public sealed class ComparisonTests
{
    private static readonly Location Here = new("build.yaml", 1, 1);
    private static readonly RuleHelp Drilling = new("mount/screw-holes-to-drill", "Pilot holes that have to be drilled", "Why.", "Advice.",
        null, null, CanFail: false)
    { TellsOfWork = true };

    [Fact]
    public void One_build_is_not_compared_and_many_are_not_read_side_by_side()
    {
        Assert.Null(BuildComparison.Of(Result(Build("A", 100))));
        Assert.Null(BuildComparison.Of(Result([.. Enumerable.Range(0, 5).Select(i => Build($"{i}", 100))])));
        Assert.Equal(["A", "B", "C", "D"],
            BuildComparison.Of(Result([.. Enumerable.Range(0, 4).Select(i => Build($"{i}", 100))]))!.Builds.Select(b => b.Letter));
    }

    [Fact]
    public void Differences_are_said_in_words_from_the_figures_of_the_table()
    {
        var drilled = Build("B", 184.50m, level: 101.4, Finding(Drilling.Id, Drilling.Title, Status.Warn, 2));
        var comparison =
            BuildComparison.Of(Result(Build("A", 100, level: 98.2, Finding("mount/too-deep", "Depth", Status.Pass, 4.25)), drilled))!;

        Assert.Equal(["100.00 EUR", "184.50 EUR"], Row(comparison, "Price"));
        Assert.Equal(["98 dB(A)", "101 dB(A)"], Row(comparison, "Loudest at the seat"));
        Assert.Equal(["none planned", "Front door: Pilot holes that have to be drilled"], Row(comparison, "Work on the vehicle"));
        // What is planned as work is no tight fit.
        Assert.Equal(["4.3 mm to spare before: Depth (Front door)", "nothing to compare"], Row(comparison, "Smallest margin"));
        // By hand: 184.50 - 100.00, and 101 - 98 as the table shows them.
        Assert.Equal(
            ["B is judged warn where A is judged pass, costs 84.50 EUR more than A and plays 3 dB louder; work that A does not need: "
                + "Front door: Pilot holes that have to be drilled."], comparison.Sentences);
    }

    [Fact]
    public void What_is_not_known_stays_unknown()
    {
        var comparison =
            BuildComparison.Of(
                Result(Build("A", 100, level: null, Finding("mount/too-deep", "Depth", Status.Measure, null)),
                    Build("B", 100, level: 98, silent: true)))!;

        Assert.Equal(["unknown — measure", "at least 98 dB(A); unknown — measure (Front door)"], Row(comparison, "Loudest at the seat"));
        Assert.Equal(["unknown — measure (Front door)", "nothing to compare"], Row(comparison, "Smallest margin"));
        Assert.Equal(["unknown — measure (Front door)", "unknown — measure (Front door)"], Row(comparison, "Bass is safe from"));
        Assert.Equal(["B is judged pass where A is judged measure and costs as much as A."], comparison.Sentences);
    }

    [Fact]
    public void Currencies_are_not_set_off_against_each_other()
    {
        var franc = Build("B", 100) with { Totals = [new Money(100, "CHF")] };
        Assert.Contains("is priced in other currencies (100.00 CHF against 100.00 EUR)",
            BuildComparison.Of(Result(Build("A", 100), franc))!.Sentences[0], StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    public void A_hostile_name_is_harmless_side_by_side(string name)
    {
        var result = Result(Build(name, 100), Build(name, 90));
        foreach (var format in new[] { "html", "markdown", "text" })
        {
            var told = ReportSnapshotTests.Written(format, result);
            Assert.Contains("Side by side", told, StringComparison.Ordinal);
            Assert.True(format != "html" || !told.Contains("<script", StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotContain(told, c => char.IsControl(c) && c is not ('\n' or '\t'));
        }
    }

    private static IEnumerable<string> Row(BuildComparison comparison, string label) => comparison.Rows.Single(r => r.Label == label).Cells;

    private static CheckResult Result(params IReadOnlyList<BuildResult> builds) =>
        new("fitcheck 0.1.0", "sha256:0", builds) { Rules = [Drilling] };

    private static BuildResult Build(string name, decimal price, params Finding[] findings) => Build(name, price, 98, findings: findings);

    private static BuildResult Build(string name, decimal price, double? level, params Finding[] findings) =>
        Build(name, price, level, silent: level is null, findings);

    private static BuildResult Build(string name, decimal price, double? level, bool silent, params Finding[] findings) => new()
    {
        File = "build.yaml",
        Name = name,
        VehicleName = "Tern",
        Findings = findings,
        Totals = [new Money(price, "EUR")],
        Facts =
        [
            new FactTable(Subject.Position, "front-door", "Front door",
                Values(("has_driver", FactValue.Of(true)),
                    ("level_at_full_power", silent ? null : FactValue.Of(Dimension.Decibel, 95)))) { At = Here },
            new FactTable(Subject.Build, "build", "The whole build",
                Values(("loudest_level", level is { } known ? FactValue.Of(Dimension.Decibel, known) : null))) { At = Here },
        ],
    };

    private static Dictionary<string, FactValue> Values(params (string Name, FactValue? Value)[] values) =>
        values.Where(v => v.Value is not null).ToDictionary(v => v.Name, v => v.Value!, StringComparer.Ordinal);

    private static Finding Finding(string rule, string title, Status status, double? margin) => SampleFindings.All[0] with
    {
        Rule = rule,
        Title = title,
        Status = status,
        Position = "front-door",
        PositionName = "Front door",
        Unit = "mm",
        Waived = null,
        Value = null,
        Limit = null,
        Margin = margin,
    };
}
