using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>What a rule must keep beyond being readable.</summary>
public sealed class RuleChecksTests
{
    [Fact]
    public void The_sample_keeps_everything() => Assert.Empty(RuleChecks.Of(RuleTestFacts.Rule(SampleRule.TooDeep)));

    [Theory]
    [InlineData("id: mount/too-deep", "id: mount/use-spacer",
        "a rule is named after the defect, not after the advice; `use-spacer` begins with `use-`")]
    [InlineData("choose a flatter one.", "choose a flatter one", "`advice` is a sentence and ends with a full stop")]
    [InlineData("breaks the window.", "breaks the window", "`why` is a sentence and ends with a full stop")]
    [InlineData("given: 8 mm, expect: pass", "given: 8 mm, expect: warn", "the example `comfortable` gives pass, not warn")]
    [InlineData("given: 3 mm, expect: pass", "given: 4 mm, expect: pass", "no example stands exactly on this limit, `3 mm`")]
    [InlineData("expect: none", "expect: fail", "the example `not asked` gives none, not fail")]
    [InlineData("{{ name }}", "{{ nme }}",
        "the message names `nme`, which is neither a fact of this subject nor a word of messages; did you mean `name`?")]
    [InlineData("{{ name }}", "{{ name / 2 }}", "the message can't be rendered: ")]
    public void A_breach_is_told(string good, string bad, string message)
    {
        Assert.Contains(good, SampleRule.TooDeep, StringComparison.Ordinal);
        var problem = Assert.Single(RuleChecks.Of(RuleTestFacts.Rule(SampleRule.TooDeep.Replace(good, bad, StringComparison.Ordinal))));
        Assert.StartsWith(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_status_has_to_be_shown()
    {
        var problems = RuleChecks.Of(RuleTestFacts.Rule(SampleRule.About("depth_margin", "{ below: depth_needed }", "never")));
        Assert.Equal("no example shows pass", Assert.Single(problems).Message);
    }
}
