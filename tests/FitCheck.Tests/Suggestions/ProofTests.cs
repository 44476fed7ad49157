using System.Text.RegularExpressions;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// What is said to be proved is tried without the search: every single choice that the proof names, and pairs of them by lot.
/// </summary>
public sealed partial class ProofTests
{
    private const int Pairs = 100;

    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    public static TheoryData<string> Failing() => ReferenceSuggestionTests.Failing();

    [Theory]
    [MemberData(nameof(Failing))]
    public void No_other_single_choice_and_no_pair_by_lot_beats_what_is_proved_best(string name)
    {
        var file = RepositoryRoot.Of("catalog", "builds", name + ".yaml");
        var evaluator = new ProposalEvaluator(file, File.ReadAllText(file), Catalog, Rules);
        var slots = Slots.Of(evaluator, Catalog, currentOnly: false, keep: []);
        var finder = new Finder(evaluator, slots, new Goal(), TimeSpan.FromMinutes(10));
        var best = finder.Best(1) is [var first, ..] ? first : null;
        if (!finder.Proof.Complete)
        {
            // Then nothing is claimed but that it adds no warning.
            Assert.True(finder.AddsNothing);
            return;
        }
        var order = new AnswerOrder(finder.Reached);
        Change[] singles = [.. slots.SelectMany(s => Enumerable.Range(0, s.Options.Count).Select(c => new Change(s, c)))];
        var dice = new Random(name.Length);
        IEnumerable<Change[]> pairs = Enumerable.Range(0, Pairs)
            .Select(_ => new[] { singles[dice.Next(singles.Length)], singles[dice.Next(singles.Length)] })
            .Where(p => p[0].Slot != p[1].Slot);
        var alone = Passing(singles.Select(s => new[] { s }));
        // Beside a change that is enough the other one is needless, and such a pair is no answer even where it costs less.
        var enough = alone.SelectMany(a => a.Changes).ToHashSet();
        // Where it stays open whether an answer without a new warning is left, the best of those with one is claimed.
        var better = alone.Concat(Passing(pairs.Where(p => !p.Any(enough.Contains))))
            .Where(a => best is null || finder.AddsNothing is not null || finder.Reached.IsAddedTo(a.Assessment))
            .Where(a => best is null || order.Compare(a, best) < 0)
            .Select(a => a.Words);

        Assert.Equal("", string.Join('\n', better));

        List<Answer> Passing(IEnumerable<Change[]> tried) =>
            [.. tried.AsParallel().AsOrdered().Select(changes => (Changes: changes, Assessment: evaluator.Anew(changes)))
            .Where(t => t.Assessment.IsPossible && !t.Assessment.Issues.Any(finder.Reached.IsBad))
            .Select(t => new Answer(t.Changes, t.Assessment))];
    }

    [Fact]
    public void Where_nothing_passes_no_part_of_the_same_sort_makes_it_pass()
    {
        using var folder = new TemporaryFolder();
        var hopeless = new List<string> { File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "sedge-shallow-box.yaml")) };
        foreach (var seed in HopelessQuotes)
            hopeless.Add(RandomQuotes.Build(seed, RandomQuotes.VehicleOf(seed, Catalog), Catalog, Folders, folder)!);
        foreach (var text in hopeless)
        {
            var suggestion = new Once(Folders, ValidationCache.In(folder.Path)).Suggest(folder.Write("build.yaml", text),
                new SuggestOptions { Time = TimeSpan.FromMinutes(5) }).Result!;
            Assert.True(suggestion.Proof.Complete && !suggestion.Passes, "the proof is what is tried here");
            Assert.DoesNotContain(suggestion.Coverage.Tried, t => t.Choices.Length == 0);

            Assert.Equal("", NoSwapPasses(text));
            BeyondTests.NothingAddedPasses(text);
        }
    }

    /// <summary>
    /// What would pass all the same, of parts of the same sort in the text, alone and in pairs by lot; empty for nothing.
    /// </summary>
    internal static string NoSwapPasses(string text)
    {
        // For every part that it names, both sides alike: what the catalog has of the same sort.
        var named = PartId().Matches(text).Select(m => Catalog.Find(m.Value)).OfType<Part>().Distinct().ToList();
        var swaps = named.SelectMany(p => Alike(p).Select(o => (p.Id, Other: o.Id))).ToList();
        Assert.NotEmpty(swaps);
        var dice = new Random(text.Length);
        var tried = swaps.Select(s => new[] { s })
            .Concat(Enumerable.Range(0, Pairs).Select(_ => new[] { swaps[dice.Next(swaps.Count)], swaps[dice.Next(swaps.Count)] }));
        return string.Join('\n', tried.AsParallel()
            .Where(t => Passes(t.Aggregate(text, (x, s) => Regex.Replace(x, $@"(?<![\w-]){s.Id}(?![\w-])", s.Other))))
            .Select(t => string.Join(' ', t)));
    }

    // Quotes of which the search says that nothing makes them pass.
    private static readonly int[] HopelessQuotes = [41];

    // Thinner speaker cable is no answer to a load that is too low, and says so.
    private static IEnumerable<Part> Alike(Part part) => Catalog.IdsOf(Catalog.KindOf(part.Id)!).Select(id => (Part)Catalog.Find(id)!)
        .Where(o => o.Id != part.Id && o.Availability.Value != "discontinued" && (part, o) switch
        {
            (Driver a, Driver b) => a.Type == b.Type,
            (Sundry a, Sundry b) => a.Type == b.Type,
            (WiringPart a, WiringPart b) => a.Type == b.Type && a.Type != "speaker-cable",
            _ => true,
        });

    // A list that was not written anew is no reason.
    private static bool Passes(string text)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("build.yaml", text), problems);
        var build = root is null ? null : Builds.BuildReader.Read(root, Catalog, problems);
        return build is not null && !problems.HasErrors
            && BuildEvaluation.Judged(build,
            Rules).Findings.All(
                f => f.Status < Status.Fail || f.Waived is not null
                    || f.Rule.StartsWith("list/missing-from-quote", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"[a-z0-9]+(-[a-z0-9]+)+")]
    private static partial Regex PartId();
}
