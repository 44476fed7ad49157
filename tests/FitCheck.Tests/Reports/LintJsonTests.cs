using System.Text.Json.Nodes;
using FitCheck.Foundation.Problems;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Reports;

public class LintJsonTests
{
    private static string SchemaText => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "schema", "lint.schema.json"));

    public static TheoryData<string> Hostile => HostileTexts.All;

    [Fact]
    public async Task What_is_written_keeps_the_published_schema()
    {
        var schema = await JsonSchema.FromJsonAsync(SchemaText);
        Assert.Empty(schema.Validate(ReportSnapshotTests.Written("json", SampleLint.Full)));
        Assert.Empty(schema.Validate(ReportSnapshotTests.Written("json", new LintResult([], 0))));
    }

    [Theory]
    [InlineData("severity", "\"fatal\"")]
    [InlineData("at", "{}")]
    [InlineData("rule", "\"\"")]
    [InlineData("extra", "1")]
    public async Task The_schema_refuses_another_shape(string name, string value)
    {
        var schema = await JsonSchema.FromJsonAsync(SchemaText);
        var document = JsonNode.Parse(ReportSnapshotTests.Written("json", SampleLint.Full))!;
        document["problems"]![0]![name] = JsonNode.Parse(value);
        Assert.NotEmpty(schema.Validate(document.ToJsonString()));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_is_only_text(string text)
    {
        var problems = JsonNode.Parse(ReportSnapshotTests.Written("json", SampleLint.Everywhere(text)))!["problems"]!.AsArray();
        if (!text.Any(char.IsSurrogate))
            Assert.All(problems, p => Assert.Equal(text, (string?)p!["message"]));
        var html = ReportSnapshotTests.Written("html", SampleLint.Everywhere(text));
        Assert.DoesNotMatch("<(script|img|b)[ >]", html);
        Assert.Equal(1, html.Split("</main>").Length - 1);
    }

    [Fact]
    public void A_fingerprint_stays_when_lines_move()
    {
        var before = SampleLint.Full;
        var after = before with
        {
            Problems = [.. before.Problems.Select(
                p => p with { At = p.At with { Line = p.At.Line + 40, Column = 9 },
                    Message = p.Message.Replace("in line 6", "in line 46", StringComparison.Ordinal) })],
        };

        Assert.Equal(before.Fingerprints(f => f), after.Fingerprints(f => f));
        Assert.Equal(before.Problems.Count, before.Fingerprints(f => f).Distinct().Count());
    }

    [Fact]
    public void Equal_problems_of_one_file_are_told_apart_by_their_order()
    {
        var twice = SampleLint.Full.Problems[1];
        var fingerprints = new LintResult([twice, twice with { At = new Location(twice.At.File, 30, 5) }], 1).Fingerprints(f => f);

        Assert.NotEqual(fingerprints[0], fingerprints[1]);
        Assert.Equal(fingerprints[0], new LintResult([twice with { At = new Location(twice.At.File, 90, 1) }], 1).Fingerprints(f => f)[0]);
    }

    [Fact]
    public void The_words_of_a_rule_may_change_and_the_fingerprint_of_a_part_stays()
    {
        var problem = SampleLint.Full.Problems[3];

        Assert.Equal(new LintResult([problem], 1).Fingerprints(f => f),
            new LintResult([problem with { Message = "other words" }], 1).Fingerprints(f => f));
    }
}
