using CsCheck;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Schemas;

/// <summary>
/// The quick answer of a schema never lets pass what the schema library refuses, and the entries that there are need no second answer.
/// </summary>
public sealed class SchemaShapeTests
{
    private static readonly string[] Values =
        ["", "~", "null", "true", "5", "-5", "0", "13", "2.5", "1e400", "12345678901234567890", "65 mm", "65mm", "65", "2 9/16 in",
            "65 mm ± 1 mm (measured)", "65 mm +/- 1", "4 ohm", "-3 dB", "14 AWG",
         "3000 Hz @ 12 dB/octave", "90 dB @ 2.83 V/1 m", "129.00 EUR", "some-id", "Some Id", "woofer", "measured", "{}", "[]",
         "[1 mm, 2 mm]", "[1, 2, 3]", "'true'", "\"\"", "٣ mm", "|\n    65 mm\n"];

    private static readonly (string Kind, string Text)[] Entries =
    [
        .. FitCheck.Catalog.Kinds.All.SelectMany(
            k => Directory.GetFiles(RepositoryRoot.Of("catalog", k.Folder), "*.yaml").Order(StringComparer.Ordinal)
                .Select(f => (k.Kind, File.ReadAllText(f)))),
    ];

    [Fact]
    public void Every_entry_of_the_catalog_holds_at_once() =>
        Assert.Empty(
            Entries.Where(e => !Shape(e.Kind).Holds(YamlReader.Read(new SourceText("f", e.Text), new ProblemList())!)).Select(e => e.Text));

    [Fact]
    public void What_holds_is_valid_for_the_library_and_what_is_valid_holds()
    {
        var check = new SchemaCheck();
        var shapes = FitCheck.Catalog.Kinds.All.ToDictionary(k => k.Kind, k => Shape(k.Kind));
        var (valid, broken) = (0, 0);
        Gen.Select(Gen.Int[0, Entries.Length - 1], Gen.Double[0, 1], Gen.Int[0, 4], Gen.Int[0, Values.Length - 1])
            .Sample((entry, place, edit, value) =>
        {
            var (kind, text) = Entries[entry];
            var source = new SourceText("f", Edited(text.Split('\n'), place, edit, Values[value]));
            if (YamlReader.Read(source, new ProblemList()) is not { } root)
                return;
            var problems = new ProblemList();
            lock (check)
                check.Tell(kind, root, problems);
            var holds = shapes[kind].Holds(root);
            Assert.True(!holds || problems.Count == 0, $"lets pass: {source.Text}\n{string.Join('\n', problems.Sorted())}");
            // A line break at the end of a quantity, digits of other scripts, and numbers beyond all bounds are left to the library.
            if (!holds && problems.Count == 0)
                Assert.True(Values[value] is "|\n    65 mm\n" or "٣ mm" or "1e400", $"doubts without need: {source.Text}");
            Interlocked.Increment(ref problems.Count == 0 ? ref valid : ref broken);
        }, iter: 20_000);
        Assert.True(valid > 500 && broken > 500, $"{valid} valid and {broken} broken documents show too little");
    }

    [Theory]
    [InlineData("^-?(\\d+(\\.\\d+)?|\\d+ \\d+/\\d+) ?(mm|cm)$", "12.5 mm", true)]
    [InlineData("^-?(\\d+(\\.\\d+)?|\\d+ \\d+/\\d+) ?(mm|cm)$", "12. mm", false)]
    [InlineData("^-?\\d+(\\.\\d{1,2})? [A-Z]{3}$", "3.999 EUR", false)]
    [InlineData("^-?\\d+(\\.\\d{1,2})? [A-Z]{3}$", "-3.9 EUR", true)]
    [InlineData("^[a-z0-9]+(-[a-z0-9]+)*$", "a-b2-c", true)]
    [InlineData("^[a-z0-9]+(-[a-z0-9]+)*$", "a--b", false)]
    public void A_pattern_is_read_as_it_is_meant(string pattern, string text, bool expected) =>
        Assert.Equal(expected, TextPattern.Of(pattern)!.Matches(text));

    [Theory]
    [InlineData("abc")]
    [InlineData("^a|b$")]
    [InlineData("^(?:a)$")]
    [InlineData("^a+?$")]
    [InlineData("^.$")]
    [InlineData("^\\w$")]
    [InlineData("^[^a]$")]
    [InlineData("^a{0,2}$")]
    [InlineData("^(a$")]
    [InlineData("^a)$")]
    [InlineData("^a\\$")]
    public void What_a_pattern_may_not_hold_is_left_to_the_library(string pattern) => Assert.Null(TextPattern.Of(pattern));

    private static SchemaMatcher Shape(string kind) =>
        SchemaText.Files(kind) is var (own, shared) ? SchemaMatcher.Of(own, shared) : throw new ArgumentException(kind, nameof(kind));

    private static string Edited(string[] lines, double place, int edit, string value)
    {
        var at = Math.Min((int)(place * lines.Length), lines.Length - 1);
        var colon = lines[at].IndexOf(": ", StringComparison.Ordinal);
        if (edit == 0)
            lines = [.. lines[..at], .. lines[(at + 1)..]];
        else if (edit == 1 && colon > 0)
            lines[at] = lines[at][..colon] + "x" + lines[at][colon..];
        else if (colon > 0)
            lines[at] = lines[at][..(colon + 2)] + value;
        return string.Join('\n', lines);
    }
}
