using System.Text.Json.Nodes;
using FitCheck.Evaluation;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Reports;

public class JsonSchemaTests
{
    private static string SchemaText => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "schema", "check.schema.json"));

    [Fact]
    public async Task What_is_written_keeps_the_published_schema()
    {
        var schema = await JsonSchema.FromJsonAsync(SchemaText);
        Assert.Empty(schema.Validate(ReportSnapshotTests.Written("json", SampleResult.Full)));
        Assert.Empty(schema.Validate(ReportSnapshotTests.Written("json", new CheckResult("fitcheck 0.1.0", "sha256:0", []))));
    }

    [Theory]
    [InlineData("surprise", "1")]
    [InlineData("format", "1")]
    [InlineData("program", null)]
    public async Task The_schema_refuses_another_shape(string name, string? value)
    {
        var schema = await JsonSchema.FromJsonAsync(SchemaText);
        var document = JsonNode.Parse(ReportSnapshotTests.Written("json", SampleResult.Full))!.AsObject();
        if (value is null)
            document.Remove(name);
        else
            document[name] = JsonNode.Parse(value);
        Assert.NotEmpty(schema.Validate(document.ToJsonString()));
    }

    [Fact]
    public async Task The_schema_refuses_a_finding_with_another_shape()
    {
        var schema = await JsonSchema.FromJsonAsync(SchemaText);
        foreach (var (name, value) in new[] { ("status", "\"bad\""), ("extra", "1"), ("limit", "\"3 mm\""), ("at", "{}") })
        {
            var document = JsonNode.Parse(ReportSnapshotTests.Written("json", SampleResult.Full))!;
            document["builds"]![0]!["findings"]![0]![name] = JsonNode.Parse(value);
            Assert.NotEmpty(schema.Validate(document.ToJsonString()));
        }
    }

    [Fact]
    public void An_unknown_fact_is_null_and_a_number_is_in_its_display_unit()
    {
        var facts = JsonNode.Parse(ReportSnapshotTests.Written("json", SampleResult.Full))!["builds"]![0]!["facts"]!;
        Assert.Equal(61.2, (double)facts["left-door"]!["depth_needed"]!["value"]!);
        Assert.Equal("mm", (string?)facts["left-door"]!["depth_needed"]!["unit"]);
        Assert.Null(facts["right-door"]!["glass_gap"]!["value"]);
        Assert.Null(facts["front-left"]!["factory_amplifier"]!["value"]);
        Assert.False((bool)facts["left-door"]!["cut_needed"]!["value"]!);
        Assert.Equal(3.32173, (double)facts["front-left"]!["lowest_load"]!["value"]!);
        Assert.Equal("EUR", (string?)facts["build"]!["total"]!["unit"]);
    }
}
