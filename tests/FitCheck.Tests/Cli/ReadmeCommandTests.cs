using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>The three ways of the README, command by command, as somebody tries them who has just cloned it.</summary>
public sealed partial class ReadmeCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("A quote from the till", "quote.yaml", "quote-list.csv", "numbered.yaml", "shop.csv")]
    [InlineData("In the garage", "card.html", "new-car.html", "sheet.html")]
    [InlineData("In continuous integration", "lint.sarif", "check.xml", "check.md")]
    [InlineData("A shop's own parts and limits", "drivers.csv", "drivers.yaml")]
    [InlineData("Your own build", "report.html")]
    [InlineData("The commands", "better.yaml")]
    public void The_commands_of_a_section_do_what_it_says(string section, params string[] leaves)
    {
        Given();
        var commands = Commands(section);
        Assert.NotEmpty(commands);
        foreach (var command in commands)
        {
            var (status, output, error) = Shell.Of(_folder.Path, command);
            // A build may fail or wait for a reading; nothing is refused.
            Assert.True(status is 0 or 1, $"{command}\n{status}\n{output}\n{error}");
        }
        Assert.All(leaves, l => Assert.True(new FileInfo(_folder.Of(l)) is { Exists: true, Length: > 0 }, l));
    }

    // What the text supposes to be there: a till's export, a build of one's own and one to compare it with, the checkout.
    private void Given()
    {
        _folder.Write("quote.csv", "Article;Name;Qty;Price\n4711;Orrin C165 coaxial;1;79,00\n;Tansy front spacer 18 mm;1;24,50\n");
        _folder.Write("shop.csv", "article,id\n0815,orrin-set-165\n");
        var build = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-wrong-harness.yaml"));
        _folder.Write("mine.yaml", build);
        _folder.Write("cheaper.yaml", build);
        foreach (var folder in new[] { "catalog", "rules" })
        {
            foreach (var file in Directory.GetFiles(RepositoryRoot.Of(folder), "*", SearchOption.AllDirectories))
            {
                var to = _folder.Of(Path.Combine(folder, Path.GetRelativePath(RepositoryRoot.Of(folder), file)));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }
        }
    }

    private static List<string> Commands(string section)
    {
        var text = Sections().Split(File.ReadAllText(RepositoryRoot.Of("README.md")))
            .Single(s => s.StartsWith(section + "\n", StringComparison.Ordinal));
        return [.. Blocks().Matches(text).SelectMany(m => m.Groups["lines"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries))];
    }

    [GeneratedRegex("^## ", RegexOptions.Multiline)]
    private static partial Regex Sections();

    [GeneratedRegex(@"```sh\n(?<lines>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Blocks();
}
