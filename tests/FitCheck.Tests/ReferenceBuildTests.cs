using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Tests.Mistakes;
using Xunit;

namespace FitCheck.Tests;

/// <summary>
/// The builds of the catalog against what the trade says of each: `tests/cases/builds/NAME.expected` lists every finding that is no pass,
/// with its reason worked by hand. A difference is a slip of the expectation, of the program, of a rule or of the catalog; it is never
/// settled by copying the output.
/// </summary>
public sealed class ReferenceBuildTests
{
    private static readonly string BuildFolder = RepositoryRoot.Of("catalog", "builds");
    private static readonly string ExpectedFolder = RepositoryRoot.Of("tests", "cases", "builds");
    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);
    private static readonly Lazy<IReadOnlyDictionary<string, BuildResult>> Results = new(CheckAll);

    // Why no build shows a rule. Those under data/ watch over the whole catalog, which holds no such entry; `lint` runs them all.
    private static readonly Dictionary<string, string> NotShown = new(StringComparer.Ordinal)
    {
        ["data/cutout-implausible-for-size"] = "no such entry",
        ["data/depth-implausible-for-size"] = "no such entry",
        ["data/flange-implausible-for-size"] = "no such entry",
        ["data/force-factor-disagrees"] = "no such entry",
        ["data/hole-circle-implausible-for-size"] = "no such entry",
        ["data/tweeter-body-implausible"] = "no such entry",
        ["data/cutout-not-below-flange"] = "no such entry",
        ["data/depth-below-magnet"] = "no such entry",
        ["data/peak-below-continuous"] = "no such entry",
        ["data/q-factors-disagree"] = "no such entry",
        ["data/resonance-disagrees"] = "no such entry",
        ["data/sensitivity-implausible"] = "no such entry",
        ["data/volume-disagrees"] = "no such entry",
        ["supply/ground-cable-too-short"] = "the amplifiers of the builds are grounded within half a metre",
        ["supply/aluminium-cable"] = "no cable of the catalog is of plain aluminium; tests/mistakes shows it",
        ["supply/block-ways-too-few"] = "no build has three amplifiers; tests/mistakes shows it",
        ["supply/fuse-above-block-limit"] = "the block takes 100 A, and so do the main fuses; tests/mistakes shows it",
        ["supply/fuse-above-holder-limit"] = "no fuse of the catalog is larger than its pattern's holder; tests/mistakes shows it",
        ["supply/voltage-not-taken"] = "vehicles and devices of the catalog are all made for 12 V; tests/mistakes shows it",
        ["wiring/grommets-too-few"] = "a pack of four serves every door; tests/mistakes shows it",
        ["wiring/speaker-cable-too-short"] = "every new wire of the builds is shorter than a roll",
        ["power/rating-above-supply-ceiling"] = "no output of the catalog claims more than the battery gives",
        ["tweeter/shallow-crossover-near-resonance"] = "the only tweeter without a lowest crossover comes with a steep one",
    };

    public static TheoryData<string> Names() => [.. NamesIn(BuildFolder, "*.yaml")];

    [Fact]
    public void Every_build_has_its_expectation_and_every_expectation_its_build() =>
        Assert.Equal(NamesIn(BuildFolder, "*.yaml"), NamesIn(ExpectedFolder, "*.expected"), StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_build_has_the_findings_that_the_trade_expects(string name)
    {
        var build = Results.Value[name];
        var found = build.Findings.Where(f => f.Status != Status.Pass).ToDictionary(Line, f => f.Message, StringComparer.Ordinal);
        var expected = Expected(name);
        var differences = expected.Except(found.Keys, StringComparer.Ordinal).Select(line => $"missing:    {line}")
            .Concat(found.Keys.Except(expected, StringComparer.Ordinal).Select(line => $"unexpected: {line}  # {found[line]}"))
            .Concat(build.Remarks.Select(r => $"remark:     {r}"));
        Assert.Equal("", string.Join('\n', differences));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void An_expectation_gives_a_reason_for_each_finding_or_for_the_first_of_a_pair(string name)
    {
        var reasons = Lines(name).Select(l => (Finding: l.Split('#')[0].Trim(), HasReason: l.Contains('#', StringComparison.Ordinal)))
            .Where(l => l.Finding.Length > 0);
        var silent = reasons.GroupBy(l => string.Join(' ', l.Finding.Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(2)),
            StringComparer.Ordinal)
            .Where(g => !g.Any(l => l.HasReason)).Select(g => g.Key);
        Assert.Equal("", string.Join('\n', silent));
    }

    [Fact]
    public void Every_rule_speaks_in_some_build_or_row_of_mistakes_or_is_excused()
    {
        var problems = new ProblemList();
        var rules = RuleSet.Load(Folders.Rules, FactRegistry.Declarations, problems).Rules.Where(r => !r.Subject.IsOfCatalog())
            .Select(r => r.Id).ToList();
        var speaking = Results.Value.Values.SelectMany(b => b.Findings).Where(f => f.Status != Status.Pass).Select(f => f.Rule)
            .ToHashSet(StringComparer.Ordinal);
        var tried = MistakeRow.All().Select(r => r.Rule).ToHashSet(StringComparer.Ordinal);
        Assert.Equal("", string.Join('\n', rules.Where(r => !speaking.Contains(r) && !NotShown.ContainsKey(r) && !tried.Contains(r))));
        Assert.Equal("", string.Join('\n', NotShown.Keys.Where(r => speaking.Contains(r) || !rules.Contains(r, StringComparer.Ordinal))));
    }

    private static Dictionary<string, BuildResult> CheckAll()
    {
        var files = Directory.GetFiles(BuildFolder, "*.yaml").Order(StringComparer.Ordinal).ToList();
        var outcome = new Once(Folders, ValidationCache.Nothing).Check(files);
        Assert.Equal("", string.Join('\n', outcome.Problems));
        return outcome.Result!.Builds.ToDictionary(b => Path.GetFileNameWithoutExtension(b.File), StringComparer.Ordinal);
    }

    private static HashSet<string> Expected(string name)
    {
        var lines = Lines(name).Select(l => string.Join(' ', l.Split('#')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries)))
            .Where(l => l.Length > 0).ToList();
        Assert.Equal([], lines.GroupBy(l => l, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        return lines.ToHashSet(StringComparer.Ordinal);
    }

    private static string[] Lines(string name) => File.ReadAllLines(Path.Combine(ExpectedFolder, name + ".expected"));

    private static string Line(Finding f) => $"{f.Status.Word()} {f.Rule} {f.Position}";

    private static List<string> NamesIn(string folder, string pattern) =>
        [.. Directory.GetFiles(folder, pattern).Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];
}
