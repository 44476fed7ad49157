using System.Xml.Linq;
using System.Xml.Schema;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>Held against tests/cases/junit/junit.xsd, our own wording of what test servers agree on.</summary>
public class JUnitTests
{
    public static TheoryData<string> Hostile => HostileTexts.All;

    [Fact]
    public void The_samples_keep_the_schema()
    {
        Assert.Empty(Violations(File(SampleResult.Full)));
        Assert.Empty(Violations(File(SampleResult.Full, ReportOptions.Default with { AsExpected = true })));
        Assert.Empty(Violations(File(SampleResult.Passing, ReportOptions.Default with { AsExpected = true })));
        Assert.Empty(Violations(File(new CheckResult("fitcheck 0.1.0", "sha256:0", []))));
        Assert.Empty(Violations(Lint(SampleLint.Full)));
        Assert.Empty(Violations(Lint(new LintResult([], 7))));
    }

    [Theory]
    [InlineData("testcase", "name", "")]
    [InlineData("testcase", "line", "0")]
    [InlineData("testsuite", "tests", "many")]
    [InlineData("failure", "message", "")]
    public void The_schema_refuses_a_wrong_attribute(string element, string attribute, string value)
    {
        var file = File(SampleResult.Full);
        file.Descendants(element).First().SetAttributeValue(attribute, value);
        Assert.NotEmpty(Violations(file));
    }

    [Fact]
    public void The_schema_refuses_two_outcomes_of_one_case()
    {
        var file = File(SampleResult.Full);
        var failure = file.Descendants("failure").First();
        failure.AddAfterSelf(new XElement(failure));
        Assert.NotEmpty(Violations(file));
    }

    // contract: failure from --fail-on up, measure skipped, pass and warn passed, waived findings skipped with their reason
    [Theory]
    [InlineData(Status.Fail, "failure", "skipped", "passed")]
    [InlineData(Status.Measure, "failure", "failure", "passed")]
    [InlineData(Status.Warn, "failure", "failure", "failure")]
    public void Fail_on_decides_what_is_a_failure(Status failOn, string fail, string measure, string warn)
    {
        var file = File(SampleResult.Full, ReportOptions.Default with { FailOn = failOn });
        foreach (var finding in SampleResult.Build.Findings)
        {
            var outcome =
                Outcome(file.Descendants("testcase").Single(c => (string?)c.Attribute("name") == $"{finding.Rule} {finding.Position}"));
            Assert.Equal(
                finding.Waived is not null ? "skipped"
                    : finding.Status switch { Status.Fail => fail, Status.Measure => measure, Status.Warn => warn, _ => "passed" },
                    outcome);
        }
    }

    [Fact]
    public void Counts_are_those_of_the_cases()
    {
        foreach (var element in File(SampleResult.Full).Descendants().Where(e => e.Name.LocalName is "testsuites" or "testsuite"))
        {
            var cases = element.Descendants("testcase").ToList();
            Assert.Equal((cases.Count, cases.Count(c => Outcome(c) == "failure"), cases.Count(c => Outcome(c) == "skipped")),
                ((int)element.Attribute("tests")!, (int)element.Attribute("failures")!, (int)element.Attribute("skipped")!));
        }
    }

    [Fact]
    public void A_skipped_case_says_what_to_measure()
    {
        var message = (string?)File(SampleResult.Full).Descendants("testcase")
            .Single(c => (string?)c.Attribute("name") == "mount/magnet-meets-glass right-door").Element("skipped")!.Attribute("message");

        Assert.StartsWith("Measure Depth to the glass", message, StringComparison.Ordinal);
        Assert.EndsWith("Passes with 66.2 mm or more.", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_warning_of_lint_fails_only_when_asked_for()
    {
        Assert.Equal("passed", Outcome(Lint(SampleLint.Full).Descendants("testcase").Last()));
        Assert.Equal("failure",
            Outcome(Lint(SampleLint.Full, ReportOptions.Default with { FailOn = Status.Warn }).Descendants("testcase").Last()));
        Assert.Equal("passed", Outcome(Assert.Single(Lint(new LintResult([], 7)).Descendants("testcase"))));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_is_only_text(string text)
    {
        var file = File(EscapingTests.Everywhere(text));
        Assert.Empty(Violations(file));
        Assert.Empty(Violations(File(EscapingTests.Everywhere(text), ReportOptions.Default with { AsExpected = true })));
        Assert.Empty(Violations(Lint(SampleLint.Everywhere(text))));
        // Nothing of it became an element: there are as many as in the sample.
        Assert.Equal(File(SampleResult.Full).Descendants("testcase").Count(), file.Descendants("testcase").Count());
        if (!text.Any(c => char.IsControl(c) || char.IsSurrogate(c) || c >= '\uFFFE'))
            Assert.Contains(text, (string?)file.Descendants("failure").First().Attribute("message"), StringComparison.Ordinal);
    }

    private static string Outcome(XElement one) =>
        one.Element("failure") is not null ? "failure" : one.Element("skipped") is not null ? "skipped" : "passed";

    private static List<string> Violations(XDocument file)
    {
        var schemas = new XmlSchemaSet();
        schemas.Add(null, RepositoryRoot.Of("tests", "cases", "junit", "junit.xsd"));
        var violations = new List<string>();
        file.Validate(schemas, (_, e) => violations.Add(e.Message));
        return violations;
    }

    private static XDocument File(CheckResult result, ReportOptions? options = null) =>
        XDocument.Parse(ReportSnapshotTests.Written("junit", result, options));

    private static XDocument Lint(LintResult result, ReportOptions? options = null) =>
        XDocument.Parse(ReportSnapshotTests.Written("junit", result, options));
}
