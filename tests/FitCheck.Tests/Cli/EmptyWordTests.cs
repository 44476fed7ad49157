using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// A word with nothing in it, as the shell makes it of a variable that nobody set: no name of anything, and told with what it was for.
/// </summary>
public sealed class EmptyWordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public EmptyWordTests() => _folder.Write("b.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-quote.yaml")));

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("check ''", "an empty BUILD was given")]
    [InlineData("check b.yaml ''", "an empty BUILD was given")]
    [InlineData("check b.yaml --output ''", "--output was given an empty FILE")]
    [InlineData("check b.yaml -o ''", "--output was given an empty FILE")]
    [InlineData("check b.yaml --sheet ''", "--sheet was given an empty FILE")]
    [InlineData("check b.yaml --catalog ''", "--catalog was given an empty DIR")]
    [InlineData("check b.yaml --catalog default --catalog ''", "--catalog was given an empty DIR")]
    [InlineData("check b.yaml --rules ''", "--rules was given an empty DIR")]
    [InlineData("lint ''", "an empty PATH was given")]
    [InlineData("lint --output ''", "--output was given an empty FILE")]
    [InlineData("lint --catalog ''", "--catalog was given an empty DIR")]
    [InlineData("suggest ''", "an empty BUILD was given")]
    [InlineData("suggest b.yaml --output ''", "--output was given an empty FILE")]
    [InlineData("suggest b.yaml --write ''", "--write was given an empty FILE")]
    [InlineData("suggest b.yaml --keep ''", "--keep was given an empty ID")]
    [InlineData("list ''", "an empty BUILD was given")]
    [InlineData("list b.yaml --tax ''", "--tax was given an empty RATE")]
    [InlineData("chart --vehicle ''", "--vehicle was given an empty ID")]
    [InlineData("chart --output ''", "--output was given an empty FILE")]
    [InlineData("impact --from ''", "--from was given an empty OLD")]
    [InlineData("impact --from . --to ''", "--to was given an empty NEW")]
    [InlineData("impact --from . --accept ''", "--accept was given an empty BUILD|all")]
    [InlineData("explain ''", "an empty RULE was given")]
    [InlineData("new build -o ''", "--output was given an empty FILE")]
    [InlineData("new build --from '' --vehicle tansy-hatch", "--from was given an empty LIST")]
    [InlineData("new build --from q.csv --vehicle ''", "--vehicle was given an empty ID")]
    [InlineData("new part driver -o ''", "--output was given an empty FILE")]
    public void Is_wrong_usage(string command, string told)
    {
        var (status, output, error) = Run.Of(_folder.Path, [.. command.Split(' ').Select(w => w == "''" ? "" : w)]);

        Assert.Equal((3, ""), (status, output));
        Assert.StartsWith($"fitcheck: {told}; is a variable of the shell not set?\n", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check", "b.yaml", "--output=")]
    [InlineData("check", "b.yaml", "--catalog=")]
    public void So_is_an_option_with_nothing_after_its_sign(params string[] arguments)
    {
        var (status, output, error) = Run.Of(_folder.Path, arguments);

        Assert.Equal((3, ""), (status, output));
        Assert.Contains(arguments[^1].TrimEnd('='), error.Split('\n')[0], StringComparison.Ordinal);
    }
}
