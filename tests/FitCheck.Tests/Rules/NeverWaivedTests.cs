using System.Text.RegularExpressions;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>
/// Rules of destruction, fire and airbags: nobody waives them, and another directory of rules may only say them in other words or more
/// strictly.
/// </summary>
public sealed class NeverWaivedTests : IDisposable
{
    private const string Load = "load/below-rated-load";
    private const string Fuse = "supply/fuse-above-cable-limit";
    private const string Bare = "tweeter/full-range-feed";
    private const string Airbag = "seal/airbag-near";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // Common practice, no source: a burnt tweeter or output, a cable on fire, and whatever stands before an airbag are nobody's taste.
    [Fact]
    public void These_and_no_others_are_never_waived() => Assert.Equal(
        [
            Load, "load/bridging-not-allowed", "mount/screw-towards-airbag", "power/crossover-overpowered",
            "power/limit-above-rating", "power/resistor-overloaded", "power/too-much", Airbag,
            "seal/pressure-sensor-door", "signal/ground-referenced-input", "signal/input-of-another-kind",
            "signal/speaker-input-overloaded", "supply/fuse-above-block-limit", Fuse, "supply/fuse-above-holder-limit",
            "supply/fuse-far-from-battery",
            "supply/fuse-for-another-holder", "supply/fuse-missing", "supply/voltage-not-taken", Bare, "tweeter/too-much-power",
            "wiring/outputs-meet", "wiring/returns-shared",
        ],
        RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()).Rules.Where(r => !r.CanBeWaived)
            .Select(r => r.Id));

    // What speaks of destruction, fire or airbags and may be waived all the same, with the reason.
    private static readonly Dictionary<string, string> MayBeWaived = new(StringComparer.Ordinal)
    {
        ["tweeter/crossover-below-limit"] = "overdriven at high levels only: a corner a little below the sheet's is a matter of taste",
        ["tweeter/cup-hole-too-large"] = "speaks of glue",
        ["supply/ground-cable-too-thin"] = "gauge against gauge: behind a small fuse a thinner cable carries what flows",
        ["wiring/door-passage-unprotected"] = "its caution is for every cable in a door; a speaker cable carries no fire",
        ["wiring/dividing-network-missing"] = "a tweeter that is left bare is told by tweeter/full-range-feed, which is never waived",
        ["supply/alternator-overloaded"] = "a flat battery; its caution is for hearing",
        ["supply/aluminium-cable"] = "a clamp for aluminium, pressed and sealed, is good practice and written nowhere in a build",
        ["supply/distribution-missing"] = "its caution is for every new cable; each piece is judged with its fuse by other rules",
    };

    [Fact]
    public void What_speaks_of_destruction_fire_or_airbags_is_never_waived_or_excused()
    {
        var speaking = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()).Rules
            .Where(r => !r.Subject.IsOfCatalog()
                && Regex.IsMatch(string.Join('\n', File.ReadAllLines(RepositoryRoot.Of("rules", r.Id + ".yaml"))
                    .Where(l => !l.StartsWith('#') && !l.Contains("name:", StringComparison.Ordinal))),
                    @"destroy|burn|\bfire\b|airbag|melt|damag|overdriven|heats? up", RegexOptions.IgnoreCase))
            .ToList();
        Assert.Equal("", string.Join('\n', speaking.Where(r => r.CanBeWaived && !MayBeWaived.ContainsKey(r.Id)).Select(r => r.Id)));
        Assert.Equal("", string.Join('\n', MayBeWaived.Keys.Where(id => !speaking.Exists(r => r.Id == id && r.CanBeWaived))));
    }

    [Theory]
    [InlineData(Load, "fail: { below: 0.8 * lowest_load }", "3:17", "can loosen where it fails (below 0.85 * lowest_load)")]
    [InlineData(Load, "fail: { below: lowest_load - 2 ohm }", "3:", "can loosen where it fails")]
    [InlineData(Load, "fail: { below: 3 ohm }", "3:", "can loosen where it fails")] // 4 ohm radio: 3 ohm is less than 3.4 ohm
    [InlineData(Load, "fail: { below: \"min(lowest_load, 3 ohm)\" }", "3:", "can loosen where it fails")]
    [InlineData(Load, "fail: { above: lowest_load }", "3:", "can loosen where it fails")]
    [InlineData(Load, "fail: never", "3:7", "can loosen where it fails")]
    [InlineData(Load, "warn: never", "3:7", "can loosen where it warns (below lowest_load)")]
    [InlineData(Load, "warn: { below: 0.9 * lowest_load }", "3:", "can loosen where it warns")]
    [InlineData(Fuse, "fail: { above: 1.1 * cable_limit }", "3:", "can loosen where it fails (above cable_limit)")]
    [InlineData(Fuse, "fail: { above: \"max(cable_limit, 60 A)\" }", "3:", "can loosen where it fails")]
    [InlineData(Fuse, "warn: { above: cable_limit }\nfail: never\nmessage: { warn: w }", "4:", "can loosen where it fails")]
    [InlineData(Bare, "warn: { is: true }\nfail: never\nmessage: { warn: w }", "4:", "can loosen where it fails (is true)")]
    [InlineData(Bare, "fail: { is: false }", "3:", "can loosen where it fails")]
    [InlineData(Airbag, "warn: { is: false }", "3:", "can loosen where it warns (is true)")]
    [InlineData(Bare, "off: true", "3:6", "can switch it off")]
    public void A_change_that_loosens_is_refused_where_it_stands(string id, string change, string place, string expected)
    {
        var rules = Loaded(id, $"id: {id}\nreason: ours\n{change}\n", out var problems);
        var told = Assert.Single(problems);
        Assert.StartsWith($"{_folder.Of("shop").Replace('\\', '/')}/{id}.yaml:{place.TrimEnd(':').Split(':')[0]}:", told.ToString(),
            StringComparison.Ordinal);
        Assert.StartsWith($"`{id}` is a rule that is never waived (`waive: never`), so no other directory of rules {expected}",
            told.Message, StringComparison.Ordinal);
        Assert.Equal(Base(id).Find(id)!.Fail?.ToString(), rules.Find(id)!.Fail?.ToString());
        Assert.Empty(rules.Changes);
    }

    [Theory]
    [InlineData(Load, "fail: { below: 0.9 * lowest_load }")]
    [InlineData(Load, "fail: { below: lowest_load }\nwarn: never")] // what warned fails now
    [InlineData(Load, "fail: { below: \"max(0.85 * lowest_load, 3 ohm)\" }")]
    [InlineData(Load, "fail: { below: 0.85 * lowest_load + 0.1 ohm }")]
    [InlineData(Load, "warn: { below: 1.2 * lowest_load }")]
    [InlineData(Fuse, "fail: { above: 0.8 * cable_limit }")]
    [InlineData(Fuse, "fail: { above: \"min(cable_limit, 60 A)\" }")]
    [InlineData(Fuse, "fail: { above: cable_limit / 1.25 }")]
    [InlineData(Airbag, "fail: { is: true }\nmessage: { fail: An airbag is near. }")]
    [InlineData(Airbag, "message: { warn: Mind the airbag. }\nadvice: Ask the maker.")]
    [InlineData(Bare, "waive: never")]
    public void What_is_stricter_or_only_said_otherwise_is_taken(string id, string change)
    {
        var rules = Loaded(id, $"id: {id}\nreason: ours\n{change}\n", out var problems);
        Assert.Empty(problems);
        Assert.False(rules.Find(id)!.CanBeWaived);
        Assert.Single(rules.Changes);
    }

    [Theory]
    [InlineData("when: is_tweeter and is_fed", "when: is_tweeter and is_fed and in_cup", "6:7",
        "can change when it applies (`when: is_tweeter and is_fed`)")]
    [InlineData("when: is_tweeter and is_fed\n", "", "2:1", "can change when it applies")]
    [InlineData("fact: tweeter_full_range", "fact: in_cup", "7:7", "can have it judge something else than `tweeter_full_range`")]
    [InlineData("waive: never\n", "", "2:1", "can let it be waived; keep `waive: never`")]
    [InlineData("about: [driver]", "about: [cup]", "5:8", "can point it at something else")]
    [InlineData("fail: { is: true }", "fail: { is: false }", "9:7", "can loosen where it fails (is true)")]
    public void A_whole_file_in_its_place_may_not_either(string good, string bad, string place, string expected)
    {
        var text = Text(Bare);
        Assert.Contains(good, text, StringComparison.Ordinal);
        Loaded(Bare, text.Replace(good, bad, StringComparison.Ordinal), out var problems);
        Assert.Contains(problems,
            p => p.ToString().Contains($"{Bare}.yaml:{place}: error: `{Bare}` is a rule that is never waived", StringComparison.Ordinal)
                && p.Message.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void A_whole_file_keeps_the_caution_and_may_say_all_in_other_words()
    {
        var text = Text(Airbag);
        var caution = text.Split('\n').Single(l => l.StartsWith("caution:", StringComparison.Ordinal));
        Loaded(Airbag, text.Replace(caution + "\n", "", StringComparison.Ordinal), out var problems);
        Assert.Contains("can take away its caution", Assert.Single(problems).Message, StringComparison.Ordinal);
        Loaded(Airbag,
            text.Replace("An airbag is near:", "There is an airbag:", StringComparison.Ordinal)
                .Replace(caution, "caution: \"Keep clear of airbags.\"", StringComparison.Ordinal), out problems);
        Assert.Empty(problems);
    }

    // The second of two shops is held to what the first has made stricter.
    [Fact]
    public void A_third_directory_is_held_to_the_second()
    {
        _folder.Write($"one/{Load}.yaml", $"id: {Load}\nreason: ours\nfail: {{ below: 0.95 * lowest_load }}\n");
        _folder.Write($"two/{Load}.yaml", $"id: {Load}\nreason: ours\nfail: {{ below: 0.9 * lowest_load }}\n");
        var problems = new ProblemList();
        RuleSet.Load([RepositoryRoot.Of("rules"), _folder.Of("one"), _folder.Of("two")], FactRegistry.Declarations, problems);
        Assert.Contains("can loosen where it fails (below 0.95 * lowest_load)", Assert.Single(problems.Sorted()).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_shop_may_say_it_of_another_rule()
    {
        var rules = Loaded("mount/glass-too-near", "id: mount/glass-too-near\nreason: Broken windows.\nwaive: never\n", out var problems);
        Assert.Empty(problems);
        Assert.False(rules.Find("mount/glass-too-near")!.CanBeWaived);
        Assert.Contains("can't be waived any more", Assert.Single(rules.Changes).What, StringComparison.Ordinal);
        Loaded("mount/glass-too-near", "id: mount/glass-too-near\nreason: r\nwaive: always\n", out problems);
        Assert.EndsWith("3:8: error: `waive` of a rule is one of never, not `always`", Assert.Single(problems).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Schema_and_explanation_know_it()
    {
        Assert.Empty(Violations("rule", Text(Bare)));
        Assert.NotEmpty(Violations("rule", Text(Bare).Replace("waive: never", "waive: always", StringComparison.Ordinal)));
        Assert.Empty(Violations("rule-change", "id: mount/too-deep\nreason: r\nwaive: never\n"));
        Assert.Matches("\n  waived +never: ", Explain.Text(Base(Bare).Find(Bare)!, FactRegistry.Declarations));
        Assert.DoesNotContain("waived", Explain.Text(Base("mount/too-deep").Find("mount/too-deep")!, FactRegistry.Declarations),
            StringComparison.Ordinal);
    }

    private static string Text(string id) => File.ReadAllText(RepositoryRoot.Of("rules", id + ".yaml"));

    private static IReadOnlyList<Problem> Violations(string kind, string yaml)
    {
        var problems = new ProblemList();
        new SchemaCheck().Check(kind, YamlReader.Read(new SourceText("r.yaml", yaml), problems)!, problems);
        return problems.Sorted();
    }

    private static RuleSet Base(string id)
    {
        using var folder = new TemporaryFolder();
        folder.Write($"{id}.yaml", Text(id));
        return RuleSet.Load([folder.Path], FactRegistry.Declarations, new ProblemList());
    }

    private RuleSet Loaded(string id, string shop, out IReadOnlyList<Problem> problems)
    {
        _folder.Write($"shop/{id}.yaml", shop);
        var list = new ProblemList();
        var rules = RuleSet.Load([RepositoryRoot.Of("rules"), _folder.Of("shop")], FactRegistry.Declarations, list);
        problems = list.Sorted();
        return rules;
    }
}
