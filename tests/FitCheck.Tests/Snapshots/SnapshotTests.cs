using Xunit;
using Xunit.Sdk;

namespace FitCheck.Tests.Snapshots;

public sealed class SnapshotTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fitcheck-snapshot-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_text_that_matches_passes_and_removes_what_was_received_before()
    {
        Write("page.verified.html", "one\ntwo\n");
        Write("page.received.html", "old");

        Match("one\ntwo\n", "page", "html");

        Assert.False(File.Exists(InFolder("page.received.html")));
    }

    [Fact]
    public void A_missing_snapshot_fails_and_leaves_what_was_received()
    {
        var failure = Assert.Throws<FailException>(() => Match("one\n", "page"));

        Assert.Contains("There is no", failure.Message);
        Assert.Equal("one\n", File.ReadAllText(InFolder("page.received.txt")));
        Assert.False(File.Exists(InFolder("page.verified.txt")));
    }

    [Fact]
    public void A_difference_is_shown_line_by_line()
    {
        Write("page.verified.txt", "same\nold\nolder\nend");

        var failure = Assert.Throws<FailException>(() => Match("same\nnew\nend", "page"));

        Assert.EndsWith("    2 - old\n    3 - older\n    2 + new", failure.Message);
        Assert.Equal("same\nnew\nend", File.ReadAllText(InFolder("page.received.txt")));
        Assert.Equal("same\nold\nolder\nend", File.ReadAllText(InFolder("page.verified.txt")));
    }

    [Theory]
    [InlineData("same\n", "same", "    2 - ")]
    [InlineData("same\r\nend", "same\nend", "    1 - same␍\n    1 + same")]
    [InlineData("a\na", "a\na\na", "    3 + a")]
    public void Line_ends_and_repeated_lines_count(string verified, string actual, string diff)
    {
        Write("page.verified.txt", verified);

        Assert.EndsWith(diff, Assert.Throws<FailException>(() => Match(actual, "page")).Message);
    }

    [Fact]
    public void A_long_difference_is_cut()
    {
        Write("page.verified.txt", "");

        var failure = Assert.Throws<FailException>(() => Match(string.Join('\n', Enumerable.Range(0, 100)), "page"));

        Assert.EndsWith("and 61 more lines", failure.Message);
    }

    private void Match(string actual, string name, string extension = "txt") =>
        Snapshot.Match(actual, name, extension, testFile: InFolder("SomeTests.cs"));

    private void Write(string file, string text) => File.WriteAllText(InFolder(file), text);

    private string InFolder(string file) => Path.Combine(_folder.FullName, file);
}
