using System.Globalization;
using CsCheck;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Yaml;

/// <summary>
/// The quick reader never differs from the YAML library: what it takes, the library reads to the same nodes in the same places, without a
/// problem.
/// </summary>
public sealed class PlainYamlTests
{
    private const string Marks = "-:#,[]{}'\"|>&*!%@`?=~ \n\t\\aZ0.(é\u2028";

    private static readonly string[] Texts =
    [
        .. new[] { "catalog", "rules",
            "tests" }.SelectMany(f => Directory.GetFiles(RepositoryRoot.Of(f), "*.yaml", SearchOption.AllDirectories))
            .Where(f => !f.Contains("/bin/", StringComparison.Ordinal) && !f.Contains("\\bin\\", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(File.ReadAllText),
    ];

    [Fact]
    public void Files_of_the_catalog_and_rules_need_no_library()
    {
        var plain = Directory.GetFiles(RepositoryRoot.Of("rules"), "*.yaml", SearchOption.AllDirectories)
            .Concat(Directory.GetFiles(RepositoryRoot.Of("catalog"), "*.yaml", SearchOption.AllDirectories)).ToList();
        Assert.DoesNotContain(plain, f => FastYamlReader.Read(new SourceText("f", File.ReadAllText(f))) is null);
    }

    [Fact]
    public void Every_file_reads_alike() => Assert.All(Texts, Alike);

    [Fact]
    public void A_damaged_file_reads_alike_or_is_left_to_the_library() =>
        Gen.Select(Gen.Int[0, Texts.Length - 1], Gen.Select(Gen.Double[0, 1], Gen.Int[0, 2], Gen.Int[0, Marks.Length - 1]).Array[1, 3])
            .Sample((text, edits) =>
            Alike(edits.Aggregate(Texts[text], (t, e) => Edited(t, (int)(e.Item1 * t.Length), e.Item2, Marks[e.Item3]))), iter: 20_000);

    [Theory]
    [InlineData("a: >-\n  one\n  two\n\n  three\nb: 1\n")]
    [InlineData("a: |\n  one\n    two\n\n\n")]
    [InlineData("a:\n- b: 1\n  c: 2\n- d: 3\ne: {f: [1, -2 mm, \"x: y\"], g: {}}\n")]
    [InlineData("a: [b,\n  c]  # comment\n")]
    [InlineData("# comment\n\na: 'single'\n\n  # deeper comment\nb:\n    - x\n    - y z\n")]
    public void What_files_are_written_in_is_read(string text)
    {
        Assert.NotNull(FastYamlReader.Read(new SourceText("f", text)));
        Alike(text);
    }

    private static void Alike(string text)
    {
        var source = new SourceText("f", text);
        if (FastYamlReader.Read(source) is not { } plain)
            return;
        var problems = new ProblemList();
        var byLibrary = YamlReader.ReadByLibrary(source, problems);
        Assert.True(byLibrary is not null && problems.Count == 0, $"the library refuses {text}");
        Assert.Equal(Shape(byLibrary!), Shape(plain));
    }

    private static string Edited(string text, int at, int edit, char mark) => edit switch
    {
        0 => text.Insert(at, mark.ToString()),
        1 => at < text.Length ? text.Remove(at, 1) : text,
        _ => at < text.Length ? text.Remove(at, 1).Insert(at, mark.ToString()) : text,
    };

    private static string Shape(YamlNode node) =>
        string.Create(CultureInfo.InvariantCulture, $"{node.At.Line}:{node.At.Column} ") + node switch
        {
            YamlScalar s => $"{(s.Quoted ? "text" : "plain")} <{s.Text}>",
            YamlMap m => $"map {{{string.Join(", ", m.Entries.Select(e => $"{e.Key} {e.KeyAt}: {Shape(e.Value)}"))}}}",
            YamlList l => $"list [{string.Join(", ", l.Items.Select(Shape))}]",
            _ => "?",
        };
}
