using System.Text.Json.Nodes;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>Held against the schema of the standard, which stands in tests/cases/sarif.</summary>
public class SarifTests
{
    private static readonly Lazy<Task<JsonSchema>> Schema = new(
        () => JsonSchema.FromFileAsync(RepositoryRoot.Of("tests", "cases", "sarif", "sarif-2.1.0-rtm.5.json")));

    public static TheoryData<string> Hostile => HostileTexts.All;

    [Fact]
    public async Task The_samples_keep_the_standard()
    {
        await Valid(Log(SampleResult.Full));
        await Valid(Log(new CheckResult("fitcheck 0.1.0", "sha256:0", [])));
        await Valid(Log(SampleLint.Full));
        await Valid(Log(new LintResult([], 0)));
    }

    [Fact]
    public async Task A_real_build_keeps_the_standard() => await Valid(Log(Real().Result!));

    // Without this, a validator that passes over keywords would agree with everything.
    [Theory]
    [InlineData("level", "\"fatal\"")]
    [InlineData("message", "{}")]
    [InlineData("ruleIndex", "-2")]
    [InlineData("partialFingerprints", "{\"a\": 1}")]
    [InlineData("surprise", "1")]
    [InlineData("suppressions", "[{\"kind\": \"wished\"}]")]
    [InlineData("locations", "[{\"physicalLocation\": {\"artifactLocation\": {\"uri\": \"a\"}, \"region\": {\"startLine\": 0}}}]")]
    public async Task The_schema_refuses_a_wrong_result(string name, string value)
    {
        var log = Log(SampleResult.Full);
        Results(log)[0]![name] = JsonNode.Parse(value);

        Assert.NotEmpty((await Schema.Value).Validate(log.ToJsonString()));
    }

    [Theory]
    [InlineData("version", "\"2.2.0\"")]
    [InlineData("version", null)]
    [InlineData("runs", null)]
    public async Task The_schema_refuses_a_wrong_log(string name, string? value)
    {
        var log = Log(SampleResult.Full).AsObject();
        if (value is null)
            log.Remove(name);
        else
            log[name] = JsonNode.Parse(value);

        Assert.NotEmpty((await Schema.Value).Validate(log.ToJsonString()));
    }

    [Fact]
    public void Statuses_are_levels_and_passes_are_left_out()
    {
        var expected = SampleResult.Build.Findings.Where(f => f.Status != Status.Pass)
            .Select(f => (f.Rule, f.Status == Status.Fail ? "error" : "warning", f.Status.Word()));

        Assert.Equal(expected, Results(Log(SampleResult.Full)).Where(r => r!["properties"] is not null)
            .Select(r => ((string)r!["ruleId"]!, (string)r["level"]!, (string)r["properties"]!["status"]!)));
    }

    [Fact]
    public void A_waived_finding_is_suppressed_with_its_reason_and_others_say_that_they_are_not()
    {
        var suppressed = Results(Log(SampleResult.Full)).ToLookup(r => r!["suppressions"]!.AsArray().Count);

        var waived = Assert.Single(suppressed[1])!["suppressions"]![0]!;
        Assert.Equal(("inSource", "accepted", "The customer brings a ring from an earlier build."),
            ((string)waived["kind"]!, (string)waived["status"]!, (string)waived["justification"]!));
        Assert.NotEmpty(suppressed[0]);
    }

    [Fact]
    public void Help_comes_from_the_rule_file_alone()
    {
        var outcome = Real();
        var log = Log(outcome.Result!);
        var rules = log["runs"]![0]!["tool"]!["driver"]!["rules"]!.AsArray();
        foreach (var result in Results(log))
        {
            var rule = rules[(int)result!["ruleIndex"]!]!;
            Assert.Equal((string)result["ruleId"]!, (string)rule["id"]!);
            var file = File.ReadAllText(RepositoryRoot.Of("rules", (string)rule["id"]! + ".yaml")).ReplaceLineEndings(" ");
            Assert.Contains((string)rule["shortDescription"]!["text"]!, file, StringComparison.Ordinal);
            Assert.Contains((string)rule["fullDescription"]!["text"]!, file, StringComparison.Ordinal);
            Assert.All(((string)rule["help"]!["text"]!).Split("\n\n"),
                p => Assert.Contains(p.Replace("Source: ", "", StringComparison.Ordinal), file, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void An_address_of_a_source_becomes_a_link()
    {
        var rule = Log(SampleResult.Full)["runs"]![0]!["tool"]!["driver"]!["rules"]!.AsArray()
            .Single(r => (string?)r!["id"] == "load/below-rated")!;
        Assert.Equal("https://example.org/a%20b", (string?)rule["helpUri"]);
    }

    [Fact]
    public void Places_are_told_from_the_folder_of_the_run()
    {
        var build = SampleResult.Build;
        CheckResult At(string file) =>
            new("", "", [build with { Findings = [build.Findings[0] with { At = new Location(file, 3, 4) }], Remarks = [] }]);
        JsonNode Place(string file) =>
            Results(Log(At(file),
                ReportOptions.Default with { Root = "/home/me/shop" }))[0]!["locations"]![0]!["physicalLocation"]!["artifactLocation"]!;

        Assert.Equal("builds/a%20b%231.yaml", (string?)Place("/home/me/shop/builds/a b#1.yaml")["uri"]);
        Assert.Equal("%SRCROOT%", (string?)Place("./builds/a.yaml")["uriBaseId"]);
        Assert.Equal("file:///home/me/other/a.yaml", (string?)Place("/home/me/other/a.yaml")["uri"]);
        Assert.Null(Place("/home/me/other/a.yaml")["uriBaseId"]);
        Assert.Equal("c%3Ad.yaml", (string?)Place("c:d.yaml")["uri"]);
    }

    [Fact]
    public void A_problem_with_a_whole_file_has_no_region() =>
        Assert.Null(Results(Log(SampleLint.Full))[0]!["locations"]![0]!["physicalLocation"]!["region"]);

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_hostile_text_is_only_text(string text)
    {
        var log = Log(EscapingTests.Everywhere(text));
        await Valid(log);
        await Valid(Log(SampleLint.Everywhere(text)));
        var message = (string)Results(log)[0]!["message"]!["text"]!;
        Assert.DoesNotContain(message, c => char.IsControl(c) && c is not ('\n' or '\t'));
        // No placeholder and no link of theirs: section 3.11.5 and 3.11.6 of the standard.
        Assert.DoesNotMatch(@"(?<!\{)(\{\{)*\{\d+\}", message);
        Assert.DoesNotMatch(@"(?<!\\)\]\(", message);
    }

    private static CheckOutcome Real() =>
        new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Check([RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml")]);

    private static async Task Valid(JsonNode log) => Assert.Empty((await Schema.Value).Validate(log.ToJsonString()));

    private static JsonArray Results(JsonNode log) => log["runs"]![0]!["results"]!.AsArray();

    private static JsonNode Log(CheckResult result, ReportOptions? options = null) =>
        JsonNode.Parse(ReportSnapshotTests.Written("sarif", result, options))!;

    private static JsonNode Log(LintResult result) => JsonNode.Parse(ReportSnapshotTests.Written("sarif", result))!;
}
