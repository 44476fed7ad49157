using FitCheck.Facts.Values;
using FitCheck.Rules.Model;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Reading rule files: what is taken, and what is refused where.</summary>
public sealed class RuleReaderTests
{
    [Fact]
    public void The_sample_is_read_whole()
    {
        var rule = RuleTestFacts.Rule(SampleRule.TooDeep);
        Assert.Equal(("mount/too-deep", Subject.Position, "mm", 10), (rule.Id, rule.Subject, rule.Unit!.Symbol, rule.Examples.Count));
        Assert.Equal(("below 3 mm", "below 0 mm"), (rule.Warn!.ToString(), rule.Fail!.ToString()));
        Assert.Equal("has_driver in_cup depth_margin", string.Join(' ', rule.Names));
        Assert.Equal("Wind the glass down before anything is screwed in.", rule.Caution);
    }

    [Theory]
    [InlineData("title: Depth", "titel: Depth", "3:1", "`titel` is no key of a rule; did you mean `title`?")]
    [InlineData("title: Depth of the driver against the space behind the panel\n", "", "2:1", "a rule needs the key `title`")]
    [InlineData("id: mount/too-deep", "id: TooDeep", "2:5",
        "a rule's id is `family/slug` in lower-case letters, digits and hyphens, found `TooDeep`")]
    [InlineData("subject: position", "subject: postion", "4:10",
        "`subject` of a rule is one of position, channel, build, driver, device, entry, figure, rating, mirror, reference, not "
            + "`postion`; did you mean `position`?")]
    [InlineData("about: [driver, adapter]", "about: [driver, adaptor]", "5:17",
        "`about` of a rule is one of driver, adapter, cup, harness, crossover, output, vehicle, module, cable, budget, quote, device, "
            + "feeder, fuse, ground, not `adaptor`; did you mean `adapter`?")]
    [InlineData("about: [driver, adapter]", "about: driver", "5:8", "`about` of a rule needs a list, found `driver`")]
    [InlineData("when: has_driver and not in_cup", "when: depth_margin", "6:7",
        "`when` needs an expression that is true or false; this one is a number in mm")]
    [InlineData("when: has_driver and not in_cup", "when: has_drivr", "6:7", "no fact is named `has_drivr`; did you mean `has_driver`?")]
    [InlineData("fact: depth_margin", "fact: depth_margin + 3 ohm", "7:20",
        "`+` needs two values of one dimension; the left is mm, the right is ohm")]
    [InlineData("unit: mm", "unit: ohm", "8:7", "the unit `ohm` doesn't fit the fact, which is a number in mm")]
    [InlineData("unit: mm", "unit: MM", "8:7", "`MM` is no unit that FitCheck knows; did you mean `mm`?")]
    [InlineData("unit: mm\n", "", "2:1", "a rule about a number needs the key `unit`; the fact is a number in mm")]
    [InlineData("warn: { below: 3 mm }", "warn: { below: 3 ohm }", "9:16", "the fact is a number in mm, but this limit is a number in ohm")]
    [InlineData("warn: { below: 3 mm }", "warn: { below: 3 }", "9:16", "the fact is a number in mm, but this limit is a pure number")]
    [InlineData("warn: { below: 3 mm }", "warn: { belwo: 3 mm }", "9:9", "`belwo` is no key of `warn`; did you mean `below`?")]
    [InlineData("warn: { below: 3 mm }", "warn: { is: 3 mm }", "9:9", "the fact is a number in mm; its threshold is `below` or `above`")]
    [InlineData("warn: { below: 3 mm }", "warn: 3 mm", "9:7",
        "`warn` of a rule needs a threshold such as `{ below: 3 mm }`, or the word `never`, found `3 mm`")]
    [InlineData("warn: { below: 3 mm }", "warn: { below: [3 mm] }", "9:16", "`below` of `warn` needs an expression, found a list")]
    [InlineData("warn: { below: 3 mm }", "warn: { is: [[a]] }", "9:14", "`is` of `warn` needs a value, found a list")]
    [InlineData("warn: { below: 3 mm }", "warn: {}", "9:7", "`warn` needs `below`, `above` or `is`, or is the word `never`")]
    [InlineData("warn: { below: 3 mm }", "warn: never", "13:9", "the rule says `warn: never`, so this message is never shown")]
    [InlineData("  pass: \"{{ value }} is left behind the driver.\"\n", "", "12:3", "`message` needs the key `pass`")]
    [InlineData("source: { title: \"common practice, no source\" }", "source: common practice", "18:9",
        "`source` of a rule needs a mapping with `title` and perhaps `url`, found `common practice`")]
    [InlineData("given: 8 mm, expect: pass", "given: 8 mm, expect: ok", "21:47",
        "`expect` of an example is one of pass, warn, measure, fail, none, not `ok`")]
    [InlineData("given: 8 mm, expect: pass", "given: 8, expect: pass", "21:33", "expected a number in mm or `unknown`, found `8`")]
    [InlineData("given: 8 mm, expect: pass", "expect: pass", "21:5", "an example needs `given` or `facts`")]
    [InlineData("{ low: -1 mm, value: 1 mm, high: 3 mm }", "{ low: 2 mm, value: 1 mm }", "25:37",
        "a value lies between its `low` and its `high`")]
    [InlineData("facts: { has_driver: false }", "facts: { has_drier: false }", "30:33",
        "no fact is named `has_drier`; did you mean `has_driver`?")]
    [InlineData("facts: { has_driver: false }", "facts: { has_driver: maybe }", "30:45",
        "expected true or false or `unknown`, found `maybe`")]
    public void A_mistake_is_told_where_it_stands(string good, string bad, string at, string message)
    {
        Assert.Contains(good, SampleRule.TooDeep, StringComparison.Ordinal);
        Assert.Null(RuleTestFacts.TryRule(SampleRule.TooDeep.Replace(good, bad, StringComparison.Ordinal), out var problems));
        Assert.Contains($"rules/mount/too-deep.yaml:{at}: error: {message}", problems.Select(p => p.ToString()), StringComparer.Ordinal);
    }

    [Fact]
    public void A_rule_that_never_warns_and_never_fails_is_refused()
    {
        RuleTestFacts.TryRule(SampleRule.About("depth_margin", "never", "never"), out var problems);
        Assert.Equal("a rule that never warns and never fails says nothing; give `warn` or `fail` a threshold",
            Assert.Single(problems).Message);
    }

    [Fact]
    public void A_truth_has_no_unit()
    {
        RuleTestFacts.TryRule(SampleRule.About("in_cup", "never", "{ is: true }"), out var problems);
        Assert.Equal("the fact is true or false and has no unit; leave `unit` out", Assert.Single(problems).Message);
    }

    [Theory]
    [InlineData("below")]
    [InlineData("above")]
    public void A_truth_has_no_bounds(string key)
    {
        RuleTestFacts.TryRule(SampleRule.About("in_cup", "never", $"{{ {key}: true }}", unit: ""), out var problems);
        Assert.Equal("the fact is true or false; its threshold is `is`", Assert.Single(problems).Message);
    }

    [Fact]
    public void A_threshold_is_told_as_it_is_read_and_names_the_facts_of_all_its_bounds()
    {
        var rule = RuleTestFacts.Rule(
            SampleRule.About("depth_margin", "{ below: depth_needed, above: depth_available }", "{ below: 0 mm }"));
        Assert.Equal("below depth_needed or above depth_available", rule.Warn!.ToString());
        Assert.Equal("depth_margin depth_needed depth_available", string.Join(' ', rule.Names));
        var words = RuleTestFacts.Rule(SampleRule.About("connection", "never", "{ is: [none, cut] }", unit: ""));
        Assert.Equal("is none or is cut", words.Fail!.ToString());
        Assert.Equal(["none", "cut"], words.Fail.Bounds.Select(b => b.Text));
    }

    [Fact]
    public void All_mistakes_are_told_at_once()
    {
        RuleTestFacts.TryRule("id: x\nsubject: position\nfact: nothing\n", out var problems);
        Assert.Equal(["1:1", "1:5", "3:7"], problems.Select(p => $"{p.At.Line}:{p.At.Column}"), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("- a")]
    [InlineData("text")]
    public void Something_else_than_a_mapping_is_refused(string yaml)
    {
        Assert.Null(RuleTestFacts.TryRule(yaml, out var problems));
        Assert.StartsWith("a rule is a mapping that begins with `id:`", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_of_another_subject_may_name_its_facts()
    {
        var yaml = SampleRule.About("corner", "{ below: 2 kHz }", "never", unit: "Hz")
            .Replace("subject: position", "subject: channel", StringComparison.Ordinal);
        Assert.Equal(Subject.Channel, RuleTestFacts.Rule(yaml).Subject);
    }
}
