using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>
/// Reads the commands back as the site's documentation says: `::command property=value,…::message`, with %, CR and LF encoded, in
/// properties `:` and `,` too.
/// </summary>
public partial class GitHubTests
{
    public static TheoryData<string> Hostile => HostileTexts.All;

    [Fact]
    public void Statuses_are_commands_worst_first()
    {
        var commands = Read(ReportSnapshotTests.Written("github", SampleResult.Full));

        Assert.Equal(["error", "error", "error", "notice", "notice", "warning", "warning", "warning", "notice", "notice", "warning"],
            commands.Select(c => c.Command));
        Assert.Equal((SampleResult.File, "13", "13", "The magnet meets the glass (fail, mount/magnet-meets-glass)"),
            (commands[0].Properties["file"], commands[0].Properties["line"], commands[0].Properties["col"],
                commands[0].Properties["title"]));
        Assert.StartsWith("Left front door: The magnet reaches 61.2 mm", commands[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Waived_findings_and_passes_are_left_out() =>
        Assert.DoesNotContain(Read(ReportSnapshotTests.Written("github", SampleResult.Full)),
            c => c.Message.Contains("gap of 9 mm", StringComparison.Ordinal)
                || c.Message.Contains("clears the hole", StringComparison.Ordinal));

    [Fact]
    public void A_problem_with_a_whole_file_has_no_line()
    {
        var commands = Read(ReportSnapshotTests.Written("github", SampleLint.Full));

        Assert.Equal(["error", "error", "error", "warning"], commands.Select(c => c.Command));
        Assert.False(commands[0].Properties.ContainsKey("line"));
        Assert.Equal("Heron 165: the voice coil measures 70 % of the rated impedance; 0.75 to 0.92 is usual.", commands[3].Message);
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_is_only_text(string text)
    {
        var commands = Read(ReportSnapshotTests.Written("github", EscapingTests.Everywhere(text)));
        var problems = Read(ReportSnapshotTests.Written("github", SampleLint.Everywhere(text)));

        Assert.All(commands.Concat(problems), c =>
        {
            Assert.Equal(["col", "file", "line", "title"], c.Properties.Keys.Order(StringComparer.Ordinal));
            Assert.DoesNotContain(c.Message, l => char.IsControl(l) && l is not ('\n' or '\t'));
            if (!text.Any(c => char.IsControl(c) || c == '\\'))
                Assert.Equal(text, c.Properties["file"]);
        });
        Assert.Equal(2, problems.Count);
        if (!text.Any(c => char.IsControl(c) || char.IsSurrogate(c) || c >= '\uFFFE'))
            Assert.Equal(text, problems[0].Message);
    }

    private static List<(string Command, Dictionary<string, string> Properties, string Message)> Read(string text)
    {
        Assert.EndsWith("\n", text, StringComparison.Ordinal);
        return [.. text.TrimEnd('\n').Split('\n').Select(line =>
        {
            var match = Line().Match(line);
            Assert.True(match.Success, line);
            var properties = match.Groups["properties"].Value.Split(',').Select(p => p.Split('=', 2))
                .ToDictionary(p => p[0], p => Decoded(p[1]), StringComparer.Ordinal);
            return (match.Groups["command"].Value, properties, Decoded(match.Groups["message"].Value));
        })];
    }

    private static string Decoded(string text) => text
        .Replace("%0D", "\r", StringComparison.Ordinal).Replace("%0A", "\n", StringComparison.Ordinal)
        .Replace("%3A", ":", StringComparison.Ordinal)
        .Replace("%2C", ",", StringComparison.Ordinal).Replace("%25", "%", StringComparison.Ordinal);

    [GeneratedRegex("^::(?<command>error|warning|notice) (?<properties>[^:]*)::(?<message>.*)$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Line();
}
