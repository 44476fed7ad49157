using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>The schema that editors use accepts what the reader accepts, and refuses what it can tell.</summary>
public sealed class RuleSchemaTests
{
    [Fact]
    public void The_samples_are_valid()
    {
        Assert.Empty(Check(SampleRule.TooDeep));
        Assert.Empty(Check(SampleRule.TooDeep.Replace("warn: { below: 3 mm }", "warn: never", StringComparison.Ordinal)));
        Assert.Empty(Check(SampleRule.TooDeep.Replace("given: 8 mm", "given: true", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("subject: position", "subject: postion")] // enum
    [InlineData("title: Depth", "titel: Depth")] // additionalProperties, required
    [InlineData("id: mount/too-deep", "id: TooDeep")] // pattern
    [InlineData("about: [driver, adapter]", "about: driver")] // type
    [InlineData("about: [driver, adapter]", "about: [adaptor]")] // items
    [InlineData("name: comfortable", "name: ''")] // minLength
    [InlineData("given: unknown, expect: measure", "given: unknown, expect: ok")] // in examples
    public void A_violation_is_told(string good, string bad)
    {
        Assert.Contains(good, SampleRule.TooDeep, StringComparison.Ordinal);
        Assert.NotEmpty(Check(SampleRule.TooDeep.Replace(good, bad, StringComparison.Ordinal)));
    }

    private static IReadOnlyList<Problem> Check(string yaml)
    {
        var problems = new ProblemList();
        new SchemaCheck().Check("rule", YamlReader.Read(new SourceText("r.yaml", yaml), problems)!, problems);
        return problems.Sorted();
    }
}
