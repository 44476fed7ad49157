using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Mistakes;

/// <summary>
/// Builds and entries with one mistake each, and what the trade says of them: tests/mistakes. The rows were written before the program was
/// run on them; a row is mended only where it was wrong about the trade. Sound variations are there too: a rule that shouts at good
/// practice is not read any more.
/// </summary>
public sealed class MistakeTests(ITestOutputHelper output)
{
    private static readonly Lazy<IReadOnlySet<string>> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList())
            .Rules.Select(r => r.Id).ToHashSet(StringComparer.Ordinal));

    public static TheoryData<string> Files => [.. MistakeRow.Files.Select(f => Path.GetFileNameWithoutExtension(f))];

    [Theory, MemberData(nameof(Files))]
    public void Every_row_is_told_as_the_trade_does(string file)
    {
        var rows = MistakeRow.Read(MistakeRow.Files.Single(f => Path.GetFileNameWithoutExtension(f) == file));
        Assert.Equal([], rows.SelectMany(r => r.Sound.Append(r.Rule)).OfType<string>().Where(r => !Rules.Value.Contains(r)));

        var misses = rows.AsParallel().AsOrdered().Select(r => (r.Id, Miss: MistakeTrial.Miss(r))).Where(m => m.Miss is not null)
            .Select(m => $"{m.Id} {m.Miss}").ToList();
        output.WriteLine($"{file}: {rows.Count - misses.Count} of {rows.Count} told right");

        Assert.True(misses.Count == 0, string.Join('\n', misses));
    }

    [Fact]
    public void Every_rule_is_tried_on_a_mistake_and_on_good_practice()
    {
        var rows = MistakeRow.All();
        var told = rows.Select(r => r.Rule).ToHashSet(StringComparer.Ordinal);
        var sound = rows.SelectMany(r => r.Sound).ToHashSet(StringComparer.Ordinal);

        Assert.Equal([], rows.GroupBy(r => r.Id, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        // Two files of one id are no edit of one entry; tests/cases/lint has them.
        Assert.Equal(["data/id-taken-twice"], Rules.Value.Where(r => !told.Contains(r)));
        Assert.Equal([], Rules.Value.Where(r => !sound.Contains(r)).Order(StringComparer.Ordinal));
    }
}
