using System.Text.Json;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Schemas;

/// <summary>
/// The validator takes keywords that it does not know in silence. So each keyword that our schemas use must be proved to be enforced.
/// </summary>
public sealed class SchemaKeywordTests
{
    // A schema with the keyword, a document that keeps it, and one that breaks it.
    private static readonly Dictionary<string, (string Schema, string Good, string Bad)> Proofs = new()
    {
        ["type"] = ("""{"type":"string"}""", "\"a\"", "[1]"),
        ["properties"] = ("""{"type":"object","properties":{"a":{"type":"string"}}}""", """{"a":"x"}""", """{"a":[]}"""),
        ["required"] = ("""{"type":"object","required":["a"]}""", """{"a":1}""", "{}"),
        ["additionalProperties"] =
            ("""{"type":"object","properties":{"a":{}},"additionalProperties":false}""", """{"a":1}""", """{"b":1}"""),
        ["enum"] = ("""{"enum":["a","b"]}""", "\"a\"", "\"c\""),
        ["pattern"] = ("""{"type":"string","pattern":"^a+$"}""", "\"aa\"", "\"b\""),
        ["items"] = ("""{"type":"array","items":{"type":"string"}}""", """["a"]""", "[1]"),
        ["minItems"] = ("""{"type":"array","minItems":2}""", "[1,2]", "[1]"),
        ["maxItems"] = ("""{"type":"array","maxItems":1}""", "[1]", "[1,2]"),
        ["minimum"] = ("""{"type":"number","minimum":1}""", "1", "0"),
        ["maximum"] = ("""{"type":"number","maximum":1}""", "1", "2"),
        ["minLength"] = ("""{"type":"string","minLength":1}""", "\"a\"", "\"\""),
        ["anyOf"] = ("""{"anyOf":[{"type":"string"},{"type":"array"}]}""", "[1]", "1"),
        ["$ref"] = ("""{"$ref":"#/definitions/d","definitions":{"d":{"type":"string"}}}""", "\"a\"", "1"),
    };

    private static readonly string[] SayNothing = ["$schema", "title", "description", "definitions"];

    public static TheoryData<string> Proven => [.. Proofs.Keys];

    [Theory, MemberData(nameof(Proven))]
    public async Task The_validator_enforces(string keyword)
    {
        var (text, good, bad) = Proofs[keyword];
        var schema = await JsonSchema.FromJsonAsync(text);

        Assert.Empty(schema.Validate(good));
        Assert.NotEmpty(schema.Validate(bad));
    }

    [Fact]
    public void Every_keyword_in_use_is_proven()
    {
        var used = SchemaText.Kinds.SelectMany(k => Keywords(JsonDocument.Parse(SchemaText.Of(k)!).RootElement, isMapOfSchemas: false))
            .Distinct();

        Assert.Empty(used.Except(Proofs.Keys).Except(SayNothing));
    }

    public static TheoryData<string> Kinds => [.. SchemaText.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public void A_schema_refuses_an_unknown_key_with_its_place(string kind)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("x.yaml", "name: A\nnmae: B\n"), problems)!;

        new SchemaCheck().Check(kind, root, problems);

        Assert.Contains(problems.Sorted(),
            p => p.At is { Line: 2, Column: 1 } && p.Message.Contains("unknown key `nmae`", StringComparison.Ordinal));
    }

    // Names under `properties` and `definitions` are names, not keywords.
    private static IEnumerable<string> Keywords(JsonElement schema, bool isMapOfSchemas)
    {
        if (schema.ValueKind != JsonValueKind.Object)
            yield break;
        foreach (var property in schema.EnumerateObject())
        {
            if (!isMapOfSchemas)
                yield return property.Name;
            if (!isMapOfSchemas && property.Name is "enum" or "required" or "default")
                continue;
            foreach (var inner in Keywords(property.Value, !isMapOfSchemas && property.Name is "properties" or "definitions"))
                yield return inner;
        }
    }
}
