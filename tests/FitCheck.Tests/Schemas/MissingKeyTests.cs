using FitCheck.Catalog;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Schemas;

/// <summary>All that is missing is told at once, with a line to paste for each: pasted, nothing is missing any more.</summary>
public sealed class MissingKeyTests
{
    public static TheoryData<string> PartKinds() => [.. Kinds.All.Select(k => k.Kind)];

    [Theory, MemberData(nameof(PartKinds))]
    public void The_lines_that_are_told_are_all_that_an_entry_lacks(string kind)
    {
        var (_, lines) = Told(kind, $"kind: {kind}\n");

        Assert.NotEmpty(lines);
        Assert.Equal("", Told(kind, $"kind: {kind}\n{string.Join('\n', lines)}\n").Message);
    }

    [Theory]
    [InlineData("driver", "holes: {count: 4}\n", "holes", "circle: 160 mm", "angles: [45, 135, 225, 315]")]
    [InlineData("amplifier", "ratings:\n  - {peak: true}\n", "ratings", "power: 60 W", "load: 4 ohm", "basis: continuous")]
    public void What_is_missing_within_is_told_with_its_place(string kind, string text, string within, params string[] expected)
    {
        var problems = Problems(kind, text).Where(p => p.Message.Contains($"missing here, in `{within}`", StringComparison.Ordinal));

        var message = Assert.Single(problems).Message;
        Assert.All(expected, e => Assert.Contains($"`{e}", message, StringComparison.Ordinal));
    }

    // A line says what the key means, in the order of the schema.
    [Fact]
    public void A_line_has_its_meaning_behind_it() =>
        Assert.Equal([
            "thickness: 12 mm  # how thick it is, in the middle where it is angled", "opening: 146 mm  # diameter of its opening"],
            Told("adapter", "id: a\nkind: adapter\nname: A\nprovenance: measured\nowned: true\n").Lines);

    private static (string Message, IReadOnlyList<string> Lines) Told(string kind, string text)
    {
        var message = string.Join('\n', Problems(kind, text).Select(p => p.Message));
        return (message, [.. message.Split("; or instead of")[0].Split('`').Where((_, i) => i % 2 == 1)
            .Where(l => l.Contains(": ", StringComparison.Ordinal))]);
    }

    private static IReadOnlyList<Problem> Problems(string kind, string text)
    {
        var problems = new ProblemList();
        new SchemaCheck().Check(kind, YamlReader.Read(new SourceText("x.yaml", text), problems)!, problems);
        return problems.Sorted();
    }
}
