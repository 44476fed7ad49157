using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>
/// A waiver names its place, holds until its last day, and is told where it does nothing. The two rear doors of this build stand before a
/// grille that is 2.5 mm away, worst case -1 mm (worked by hand in front-rear-two-amps.expected).
/// </summary>
public sealed class WaiverTests
{
    private const string Grille = "mount/grille-too-near";
    private static readonly string File = RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml");
    private static readonly DateOnly Day = new(2027, 3, 31);

    [Theory]
    [InlineData(-1, true)]
    [InlineData(0, true)] // it holds on its last day
    [InlineData(1, false)]
    public void A_waiver_holds_until_its_last_day(int days, bool holds)
    {
        var build = Checked($"- {{rule: {Grille}, at: [rear-door-left, rear-door-right], until: 2027-03-31, reason: tried}}",
            Day.AddDays(days));
        var grilles = build.Findings.Where(f => f.Rule == Grille && f.Position.StartsWith("rear", StringComparison.Ordinal)).ToList();

        Assert.Equal(2, grilles.Count);
        Assert.All(grilles, f => Assert.Equal(holds ? "tried" : null, f.Waived));
        Assert.All(grilles, f => Assert.Equal(holds ? Day : null, f.WaivedUntil));
        if (holds)
            Assert.Empty(build.Remarks);
        else
            Assert.All(build.Remarks,
                r => Assert.Equal((ProblemKind.EndedWaiver, Severity.Warning, true),
                    (r.Kind, r.Severity, r.Message.Contains("held until 2027-03-31", StringComparison.Ordinal))));
        Assert.Equal(holds ? 0 : 1, build.Remarks.Count);
    }

    [Fact]
    public void Its_end_is_told_in_every_format_and_a_schema_knows_it()
    {
        var checker = Opened(Day);
        var result = checker.Check([BuildSource.Text("b.yaml",
            With($"- {{rule: {Grille}, at: [rear-door-left, rear-door-right], until: 2027-03-31, reason: tried}}"))]).Result!;
        foreach (var format in new[] { "text", "html", "markdown", "junit", "sarif", "json" })
        {
            using var text = new StringWriter { NewLine = "\n" };
            ReportList.Find(format)!.Write(result, ReportOptions.Default, text);
            Assert.Contains("2027-03-31", text.ToString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("at: rear-door-left, ", "rear-door-left")]
    [InlineData("at: [rear-door-right], ", "rear-door-right")]
    [InlineData("at: [rear-door-left, rear-door-right], ", "rear-door-left rear-door-right")]
    public void It_holds_where_it_says_and_nowhere_else(string at, string waived) =>
        Assert.Equal(waived, string.Join(' ', Checked($"- {{rule: {Grille}, {at}reason: tried}}", Day).Findings
            .Where(f => f.Waived is not null).Select(f => f.Position).Order(StringComparer.Ordinal)));

    [Fact]
    public void Each_place_at_which_it_does_nothing_is_told_with_its_column()
    {
        var remarks = Checked($"- {{rule: {Grille}, at: [rear-door-left, front-door-left, rear-door-rihgt], reason: tried}}", Day).Remarks;

        Assert.Equal(2, remarks.Count);
        Assert.All(remarks, r => Assert.Equal(ProblemKind.IdleWaiver, r.Kind));
        Assert.Contains("finds nothing wrong at `front-door-left`", remarks[0].Message, StringComparison.Ordinal);
        Assert.Contains("did you mean `rear-door-right`?", remarks[1].Message, StringComparison.Ordinal);
        Assert.True(remarks[0].At.Column < remarks[1].At.Column);
    }

    [Theory]
    [InlineData("- {rule: mount/grille-too-near, reason: tried}", "it would match at `rear-door-left`, `rear-door-right`")]
    [InlineData("- {rule: mount/too-deep, reason: tried}", "add `at` with the position that was looked at; here it finds nothing wrong")]
    [InlineData("- {rule: load/hard-to-drive, reason: tried}", "`load/hard-to-drive` speaks of each channel by itself")]
    [InlineData("- {rule: signal/turn-on-missing, until: 2020-01-01, reason: tried}",
        "`signal/turn-on-missing` speaks of each device by itself")]
    [InlineData("- {rule: seal/airbag-near, at: rear-door-left, until: 2020-01-01, reason: tried}", "is never waived")]
    [InlineData("- {rule: mount/too-deep, at: rear-door-left, until: 2027-02-29, reason: tried}", "`2027-02-29` is no day of the calendar")]
    public void One_without_its_place_or_of_no_day_is_an_error_where_it_stands(string waiver, string told)
    {
        var text = With(waiver);
        var problem = Assert.Single(Opened(Day).Check([BuildSource.Text("b.yaml", text)]).Problems);

        Assert.Equal(Severity.Error, problem.Severity);
        Assert.Contains(told, problem.Message, StringComparison.Ordinal);
        Assert.Equal(text.Split('\n').Length, problem.At.Line);
    }

    [Fact]
    public void A_rule_of_the_whole_build_needs_no_place()
    {
        var checker = Opened(Day);
        foreach (var at in new[] { "", "at: build, " })
            Assert.Empty(checker.Check([BuildSource.Text("b.yaml", With($"- {{rule: list/over-budget, {at}reason: agreed}}"))]).Problems);
    }

    [Fact]
    public void Lint_tells_a_waiver_without_its_place_too()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("b.yaml", With("- {rule: mount/grille-too-near, reason: tried}"));
        var told = Lint.Run([file], new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Problems;

        Assert.Equal(ProblemKind.PlacelessWaiver, Assert.Single(told, p => p.At.File == file.Replace('\\', '/')).Kind);
    }

    private static string With(string waiver)
    {
        var text = System.IO.File.ReadAllText(File);
        return $"{text[..text.IndexOf("\nwaive:", StringComparison.Ordinal)]}\nwaive:\n  {waiver}";
    }

    private static BuildResult Checked(string waiver, DateOnly today)
    {
        var outcome = Opened(today).Check([BuildSource.Text("b.yaml", With(waiver))]);
        Assert.Empty(outcome.Problems);
        return outcome.Result!.Builds[0];
    }

    private static Checker Opened(DateOnly today) => Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
        Today = today,
    }).Checker!;
}
