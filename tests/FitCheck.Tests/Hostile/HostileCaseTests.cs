using System.Text.RegularExpressions;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// Inputs that once got through: each folder of tests/cases/hostile has the files, the `commands` that read them, and under `expected`
/// words of what each of these has to tell. None may end as a defect.
/// </summary>
public sealed partial class HostileCaseTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Cases =>
        [.. Directory.GetDirectories(RepositoryRoot.Of("tests", "cases", "hostile")).Select(d => Path.GetFileName(d)!)
            .Order(StringComparer.Ordinal)];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_is_told_with_its_place(string name)
    {
        var from = RepositoryRoot.Of("tests", "cases", "hostile", name);
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_folder.Of(Path.GetRelativePath(from, file)))!);
            File.Copy(file, _folder.Of(Path.GetRelativePath(from, file)));
        }
        var words = File.ReadAllLines(Path.Combine(from, "expected")).Where(l => l.Length > 0).ToList();
        Assert.NotEmpty(words);
        foreach (var command in File.ReadAllLines(Path.Combine(from, "commands")))
        {
            var (status, output, error) = Run.InTime(_folder.Path, command.Split(' '));
            Assert.True(status == 2, output + error);
            Assert.All(words, w => Assert.Contains(w, output + error, StringComparison.Ordinal));
            Assert.All(words, w => Assert.Matches(Place(), w));
        }
    }

    [GeneratedRegex(@"^\S+:[1-9]\d*:[1-9]\d*: error: ", RegexOptions.CultureInvariant)]
    private static partial Regex Place();
}
