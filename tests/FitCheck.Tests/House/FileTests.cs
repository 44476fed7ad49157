using Xunit;

namespace FitCheck.Tests.House;

public class FileTests
{
    private const int LongestFile = 400;

    private const int LongestLine = 140;

    // A name that says nothing attracts what belongs elsewhere.
    private static readonly string[] EmptyWords = ["Helper", "Manager", "Utils"];

    [Fact]
    public void No_source_is_longer_than_a_person_reads_in_one_go()
    {
        var offenders =
            from file in Sources("src").Concat(Sources("tests"))
            let lines = File.ReadLines(RepositoryRoot.Of(file)).Count()
            where lines > LongestFile
            select $"{file}: {lines} lines";

        Assert.Empty(offenders);
    }

    [Fact]
    public void No_line_is_longer_than_a_screen_is_wide()
    {
        var offenders =
            from file in Sources("src").Concat(Sources("tests"))
            from line in File.ReadLines(RepositoryRoot.Of(file)).Select((text, i) => (Text: text, Number: i + 1))
            where line.Text.Length > LongestLine
            select $"{file}:{line.Number}: {line.Text.Length} columns";

        Assert.Empty(offenders);
    }

    [Fact]
    public void Names_say_what_a_thing_is()
    {
        var offenders = Sources("src").Where(file =>
            EmptyWords.Any(word => file.Contains(word, StringComparison.OrdinalIgnoreCase))
            || file.Split('/').Any(part => Path.GetFileNameWithoutExtension(part).Equals("Common", StringComparison.OrdinalIgnoreCase)));

        Assert.Empty(offenders);
    }

    // As paths relative to the root with `/`, without what the build leaves there.
    private static IEnumerable<string> Sources(string folder) =>
        Directory.EnumerateFiles(RepositoryRoot.Of(folder), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(RepositoryRoot.Path, file).Replace('\\', '/'))
            .Where(file => !file.Contains("/bin/") && !file.Contains("/obj/"))
            .Order(StringComparer.Ordinal);
}
