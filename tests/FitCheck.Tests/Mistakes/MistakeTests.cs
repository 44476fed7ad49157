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
        var there = rows.Where(r => r.Sound.Append(r.Rule).OfType<string>().All(Rules.Value.Contains)).ToList();
        foreach (var row in rows.Except(there))
            output.WriteLine($"{row.Id}: not there yet: {row.Rule ?? string.Join(", ", row.Sound)}");

        var misses = there.AsParallel().AsOrdered().Select(r => (r.Id, Miss: MistakeTrial.Miss(r))).Where(m => m.Miss is not null)
            .Select(m => $"{m.Id} {m.Miss}").ToList();
        output.WriteLine($"{file}: {there.Count - misses.Count} of {rows.Count} told right, {rows.Count - there.Count} not there yet");

        Assert.True(misses.Count == 0, string.Join('\n', misses));
    }
}
