using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Verdicts;
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

    // What a mistake on purpose says of itself under `expect` is what the trade expects of it, worked out by hand; so `check --as-expected`
    // needs none of these files.
    [Theory]
    [MemberData(nameof(Names))]
    public void A_mistake_on_purpose_says_itself_what_it_gives(string name)
    {
        var wanted = Expected(name).Where(l => l.StartsWith("fail ", StringComparison.Ordinal)).Select(l => l.Split(' ')).ToList();
        var said = Results.Value[name].Expected;
        var block = string.Join('\n', wanted.GroupBy(w => w[1], StringComparer.Ordinal)
            .Select(g => $"    - {{rule: {g.Key}, at: [{string.Join(", ", g.Select(w => w[2]))}]}}"));
        Assert.True(wanted.Count > 0 == said is { Verdict.Value: "fail" },
            $"{name}.yaml should end with\nexpect:\n  verdict: fail\n  findings:\n{block}");
        if (wanted.Count > 0)
            Assert.True(wanted.Select(w => $"{w[1]} {w[2]}").ToHashSet(StringComparer.Ordinal)
                .SetEquals(said!.Findings!.Select(f => $"{f.Rule} {f.Place}")), $"{name}.yaml should expect\n{block}");
    }

    [Fact]
    public void Every_build_that_says_what_it_is_meant_to_give_gives_it()
    {
        var rules = RuleSet.Load(Folders.Rules, FactRegistry.Declarations, new ProblemList()).Rules.Select(r => r.Id).ToList();
        Assert.Equal("", string.Join('\n', Results.Value.Values.SelectMany(b => Expectations.Unmet(b, rules))));
    }

    // The first line of a report hangs on these: a middle value beyond a limit of failing, taken from the rule's own thresholds, never goes
    // together, in no build and whatever the tolerances.
    [Fact]
    public void Nothing_that_is_nominally_beyond_a_limit_of_failing_goes_together()
    {
        var rules = RuleSet.Load(Folders.Rules, FactRegistry.Declarations, new ProblemList());
        var (wrong, beyond) = (new List<string>(), 0);
        foreach (var build in Results.Value.Values)
        {
            foreach (var table in build.Facts)
            {
                foreach (var rule in rules.Rules.Where(r => r.Subject == table.Subject && !r.Subject.IsOfEntries() && r.Fail is not null))
                {
                    if (Judgement.Of(rule, new FactInputs(rule.Scope, table.Values)) is not { Fact.Number: { } value } judged)
                        continue;
                    foreach (var limit in judged.Limits.Where(l => l.Status == Status.Fail && l.Value.Number is not null))
                    {
                        var by = (limit.Side == LimitSide.Below ? -1 : 1) * (value.Value - limit.Value.Number!.Value.Value);
                        if (by <= 1e-6 * Math.Abs(limit.Value.Number.Value.Value) + 1e-9)
                            continue;
                        beyond++;
                        if (judged.Status is not (Status.Fail or Status.Measure))
                            wrong.Add($"{build.Name}: {judged.Status.Word()} {rule.Id} {table.Key}");
                    }
                }
            }
        }
        Assert.Equal("", string.Join('\n', wrong));
        Assert.True(beyond > 20, "the mistakes on purpose are beyond many limits");
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
