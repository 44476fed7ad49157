using FitCheck.Reports;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// Characters that nobody sees, by Unicode Standard Annex 9 (those that turn the direction) and Default_Ignorable_Code_Point in the Unicode
/// Character Database. `lint` tells where they stand; whatever is told shows their numbers.
/// </summary>
public sealed class HiddenCharacterTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>The directional ones all, of the others one a block.</summary>
    private static int[] Letters =>
    [
        0x061C, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069,
        0x00AD, 0x034F, 0x115F, 0x17B4, 0x180E, 0x200B, 0x200C, 0x200D, 0x2060, 0x2064, 0x206F, 0x3164, 0xFE0F, 0xFFA0, 0xFFF9, 0x1D173,
        0xE0001, 0xE0041, 0xE007F, 0xE0100,
    ];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Lint_tells_the_place_of_each()
    {
        foreach (var letter in Letters)
            _folder.Write($"b/{letter:X4}.yaml", "# é" + char.ConvertFromUtf32(letter) + "\n" + Text("catalog/builds/tansy-quote.yaml"));
        var (status, output, error) = Run.InTime(_folder.Path, "lint", "b");
        Assert.Equal(0, status);
        foreach (var letter in Letters)
        {
            Assert.Contains($"b/{letter:X4}.yaml:1:4: warning: U+{letter:X4} stands here, a character that nobody sees; leave it out",
                output + error, StringComparison.Ordinal);
            Assert.DoesNotContain(char.ConvertFromUtf32(letter), output + error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Lint_tells_them_in_entries_and_rules_too_and_again_when_nothing_has_changed()
    {
        _folder.Write("c/cups/cups.yaml", "# é\n- " + Text("catalog/cups/cup-45-tansy.yaml").Replace("\n", "\n  ", StringComparison.Ordinal)
            .TrimEnd() + "\n  # a\u202Eb\n");
        _folder.Write("r/tweeter/full-range-feed.yaml", Text("rules/tweeter/full-range-feed.yaml") + "# \u200B\u200B\n");
        _folder.Write("r/practice.yaml", "# \u2066\n" + Text("rules/practice.yaml"));
        var inCup = 2 + Text("catalog/cups/cup-45-tansy.yaml").TrimEnd().Split('\n').Length;
        var inRule = Text("rules/tweeter/full-range-feed.yaml").Split('\n').Length;
        for (var times = 0; times < 2; times++)
        {
            var (_, output, error) = Run.InTime(_folder.Path, "lint", "--catalog", "c", "--rules", "r");
            Assert.Contains($"c/cups/cups.yaml:{inCup}:6: warning: U+202E stands here", output + error, StringComparison.Ordinal);
            Assert.Contains($"r/tweeter/full-range-feed.yaml:{inRule}:3: warning: U+200B stands here, a character that nobody sees; leave "
                + "it out (1 more in this text)", output + error, StringComparison.Ordinal);
            Assert.Contains("r/practice.yaml:1:3: warning: U+2066 stands here", output + error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_format_of_every_command_shows_the_number()
    {
        const string Turned = "a\u202Eb\u200Bc\U000E0041";
        _folder.Write("b.yaml",
            Text("catalog/builds/tansy-bare-tweeter.yaml").Replace("\nname: ", $"\nname: {Turned} ", StringComparison.Ordinal));
        string[][] commands =
        [
            .. ReportList.Formats.Select(f => (string[])["check", "b.yaml", "--format", f]),
            .. ((string[])["text", "csv", "html", "markdown", "json"]).Select(f => (string[])["list", "b.yaml", "--format", f]),
            .. ((string[])["text", "json", "markdown"]).Select(f => (string[])["suggest", "b.yaml", "--format", f]),
            ["measure", "b.yaml"], ["check", Turned], ["explain", Turned], ["find", Turned], [Turned],
        ];
        foreach (var command in commands)
        {
            var (_, output, error) = Run.InTime(_folder.Path, command);
            Assert.All((int[])[0x202E, 0x200B, 0xE0041],
                l => Assert.DoesNotContain(char.ConvertFromUtf32(l), output + error, StringComparison.Ordinal));
        }
        Assert.StartsWith("a{U+202E}b{U+200B}c{U+E0041} ", Run.InTime(_folder.Path, "check", "b.yaml").Out, StringComparison.Ordinal);
        Assert.Contains(@"""a\u202eb\u200bc\uDB40\uDC41 ", Run.InTime(_folder.Path, "check", "b.yaml", "--format", "json").Out,
            StringComparison.OrdinalIgnoreCase);

        Run.InTime(_folder.Path, "check", "b.yaml", "--format", "html", "--output", "r.html", "--sheet", "s.html");
        Assert.All((string[])["r.html", "s.html"],
            f => Assert.DoesNotContain("\u202E", File.ReadAllText(_folder.Of(f)), StringComparison.Ordinal));
    }

    // A letter that is seen, of whatever script, is left alone; so is a byte-order mark, which editors write.
    [Fact]
    public void What_is_seen_is_not_told()
    {
        _folder.Write("b/mine.yaml", "\uFEFF# é ß Ω ж 漢 😀 ± ° \u00A0\n" + Text("catalog/builds/tansy-quote.yaml"));
        var (status, output, error) = Run.InTime(_folder.Path, "lint", "b");
        Assert.True(status == 0, output + error);
        Assert.DoesNotContain("U+", output + error, StringComparison.Ordinal);
    }

    private static string Text(string file) => File.ReadAllText(RepositoryRoot.Of(file.Split('/')));
}
