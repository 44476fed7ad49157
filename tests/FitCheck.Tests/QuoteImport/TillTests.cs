using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using Xunit;

namespace FitCheck.Tests.QuoteImport;

/// <summary>
/// Invented exports of tills and office programs in many languages, written down before the reader was: each line is a part, none, or one
/// that somebody has to be asked about. Headings and words of the languages are from memory.
/// </summary>
public sealed class TillTests
{
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());

    public static TheoryData<string> Files() => [.. Directory.GetFiles(RepositoryRoot.Of("tests", "cases", "tills"))
        .Where(f => !f.EndsWith(".expected", StringComparison.Ordinal)).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Files))]
    public void Each_line_is_read_as_what_it_is(string name)
    {
        var path = RepositoryRoot.Of("tests", "cases", "tills", name);
        var problems = new ProblemList();
        var file = QuoteFile.Read(name, File.ReadAllBytes(path), problems)!;
        var items = new QuoteReader(new NearParts(Catalog), LineChoices.Read([], [], Catalog, problems), problems).Read(file);

        var asked = problems.All.Where(p => p.Message.Contains("`--skip ", StringComparison.Ordinal)).Select(p => p.At.Line).ToHashSet();
        var wrong = File.ReadLines(Path.ChangeExtension(path, ".expected")).Select(l => l.Split(' '))
            .Select(l => (Said: string.Join(' ', l), Is: Is(int.Parse(l[0], CultureInfo.InvariantCulture))))
            .Where(l => l.Said != l.Is).Select(l => $"{l.Said}: {l.Is}");
        Assert.Equal("", string.Join('\n', wrong.Concat(problems.All.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()))));

        string Is(int line) => items.FirstOrDefault(i => i.At.Line == line) is { } item ? $"{line} {item.Part.Id} {item.Packs}"
            : asked.Contains(line) ? $"{line} ask" : $"{line} none";
    }
}
