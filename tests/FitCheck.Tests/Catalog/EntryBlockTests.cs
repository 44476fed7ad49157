using System.Text;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests.Catalog;

/// <summary>A file read block after block has the entries that it has when it is read at once.</summary>
public sealed class EntryBlockTests : IDisposable
{
    private static readonly string[] Lines =
    [
        "- id: a", "-", "- ", "  id: b", "# a remark", "", "---", "  - nested", "-no item", " - id: further in", "  notes: |", "\tä tab",
        "a: 1", "  text of some length, so that a block ends within a line\r", "- id: ü",
    ];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Blocks_of_any_size_have_the_entries_of_the_whole()
    {
        var random = new Random(20_261_129);
        for (var round = 0; round < 300; round++)
        {
            var lines = Enumerable.Range(0, random.Next(40)).Select(_ => Lines[random.Next(Lines.Length)]).ToList();
            var text = (round % 4 == 0 ? "\uFEFF" : "") + (round % 3 == 0 ? "# head\n---\n" : "") + (round % 2 == 0 ? "- id: first\n" : "")
                + string.Join('\n', lines) + (round % 5 == 0 ? "" : "\n");
            var path = _folder.Write("list.yaml", "");
            File.WriteAllBytes(path, Encoding.UTF8.GetBytes(text));

            foreach (var size in (int[])[16, 64, 256, 4096])
                Assert.Equal(Told(EntryText.Of("driver", "list.yaml", File.ReadAllBytes(path))), InBlocks(path, size));
        }
    }

    [Fact]
    public void An_entry_without_end_is_told_and_not_read_to_its_end()
    {
        var path = _folder.Write("list.yaml",
            "- id: a\n- id: b\n  notes: |\n" + string.Concat(Enumerable.Repeat("    more and more of it\n", 500_000)));
        var problems = new ProblemList();

        foreach (var block in EntryBlock.Of(path, "list.yaml", problems))
            block.Dispose();

        Assert.StartsWith("list.yaml:2:1: error: from here on an entry has more than", Assert.Single(problems.All).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_can_not_be_read_is_told()
    {
        var problems = new ProblemList();

        Assert.Empty(EntryBlock.Of(_folder.Of("absent.yaml"), "absent.yaml", problems));

        Assert.Equal("absent.yaml: error: the file can't be read", Assert.Single(problems.All).ToString());
    }

    private static List<string> InBlocks(string path, int size)
    {
        var told = new List<string>();
        foreach (var block in EntryBlock.Of(path, "list.yaml", new ProblemList(), size))
        {
            told.AddRange(Told(block.Entries("driver", "list.yaml")));
            block.Dispose();
        }
        return told;
    }

    private static List<string> Told(IEnumerable<EntryText> entries) =>
        [.. entries.Select(e => $"{e.Line} {e.InList} {Encoding.UTF8.GetString(e.Text)}")];
}
