using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Asking;

public sealed class BuildDialogueTests : IDisposable
{
    private static readonly Folders Repository = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_set_brings_the_tweeter_and_handed_spacers_are_asked_for_side_by_side()
    {
        var answers = new ListedAnswers(
            ("Which vehicle", "tansy-hatch"), ("Which places", "front-door-left front-tweeter-left"), ("Which work", "drill"),
            ("Which driver or set", "orrin-set-165"),
            ("Which spacer: Front door, left", "spacer-165-tansy-tilt-8-left"),
            ("Which spacer: Front door, right", "spacer-165-tansy-tilt-8-right"),
            ("Which cup", "cup-45-tansy"), ("Which harness", "usual"), ("What may it cost", "400.00 EUR"));

        var build = Asked(answers);

        // the set's members in the catalog
        Assert.Equal(["orrin-w165-4", "orrin-w165-4", "orrin-t25", "orrin-t25"], build.Placed.Select(p => p.Driver!.Part.Id));
        Assert.Equal(["spacer-165-tansy-tilt-8-left", "spacer-165-tansy-tilt-8-right"],
            build.Placed.Select(p => p.Adapter?.Part.Id).OfType<string>());
        Assert.Equal("400.00 EUR", build.Budget!.Value.ToString());
        Assert.Equal(["drill"], build.Accepts);
        Assert.Single(answers.Asked, a => a.Question.StartsWith("Which driver", StringComparison.Ordinal));
    }

    [Fact]
    public void What_stays_on_the_same_wires_is_asked_for()
    {
        var answers = new ListedAnswers(("Which vehicle", "tansy-hatch"), ("Which places", "front-door-left"), ("Which work", ""),
            ("Which driver", "usual"), ("Which", "usual"), ("What becomes of", "keep"), ("What may it cost", "usual"));

        var build = Asked(answers);

        Assert.Equal(2, build.Placed.Count(p => p.KeepsFactoryDriver)); // the mirror sails hang on the front outputs
        Assert.Null(build.Budget);
    }

    [Fact]
    public void The_first_offer_is_the_best_by_the_rules_and_of_the_right_role()
    {
        var answers = new ListedAnswers(("Which vehicle", "tansy-hatch"), ("Which places", "rear-door-left"), ("Which work", ""),
            ("Which", "usual"), ("What may it cost", "usual"));

        var build = Asked(answers);

        Assert.All(build.Placed, p => Assert.NotEqual("tweeter", p.Driver!.Part.Type));
        var mounting = BuildEvaluation.Judged(build,
            FitCheck.Rules.RuleSet.Load(Repository.Rules, FitCheck.Facts.FactRegistry.Declarations, new ProblemList())).Findings.Where(
                f => f.Rule.StartsWith("mount/", StringComparison.Ordinal));
        Assert.Equal(Status.Pass, StatusWords.Worst(mounting.Select(f => f.Status)));
    }

    [Theory]
    [InlineData("", true)]
    [InlineData("180.00 EUR", true)]
    [InlineData("180 EUR", true)]
    [InlineData("180", false)]
    [InlineData("-5 EUR", false)]
    [InlineData("180,00 EUR", false)]
    public void A_budget_is_an_amount_with_its_currency(string text, bool good) =>
        Assert.Equal(good, BuildDialogue.WrongBudget(text) is null);

    [Fact]
    public void An_existing_file_is_kept_and_nobody_is_asked()
    {
        _folder.Write("mine.yaml", "yesterday's");
        var answers = new ListedAnswers();

        Assert.Equal(2, NewBuild.Run(answers, _folder.Of("mine.yaml"), null, Repository));
        Assert.Empty(answers.Asked);
        Assert.Equal("yesterday's", File.ReadAllText(_folder.Of("mine.yaml")));
    }

    [Fact]
    public void A_vehicle_that_is_named_wrongly_is_told_with_its_neighbour()
    {
        var problems = new ProblemList();
        var dialogue = new BuildDialogue(PartsCatalog.Open(Repository.Catalog, problems), _ => null, new ListedAnswers());

        Assert.Null(dialogue.Ask("tansy-hatsch"));
        Assert.Equal("no vehicle `tansy-hatsch` in the catalog; did you mean `tansy-hatch`?", dialogue.NothingToChoose);
    }

    [Fact]
    public void Every_vehicle_s_usual_answers_make_a_build_that_validates()
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open(Repository.Catalog, problems);
        var files = new List<string>();
        foreach (var id in catalog.IdsOf("vehicle"))
        {
            var all = string.Join(' ', PlaceGroup.Of((Vehicle)catalog.Find(id)!).Select(g => g.Positions[0].Id));
            files.Add(Written(
                new ListedAnswers(("Which vehicle", id), ("Which places", all), ("Which work", "cut-wires drill enlarge-holes trim-parts"),
                    ("Which", "usual"), ("What", "usual")), id));
        }

        var outcome = new Once(Repository, ValidationCache.Nothing).Check(files);

        Assert.Equal([], outcome.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()));
        Assert.Equal(files.Count, outcome.Result!.Builds.Count);
    }

    private FitCheck.Builds.Build Asked(ListedAnswers answers)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("b.yaml", File.ReadAllText(Written(answers, "b"))), problems)!;
        var build = FitCheck.Builds.BuildReader.Read(root, PartsCatalog.Open(Repository.Catalog, problems), problems);
        Assert.Equal([], problems.Sorted().Select(p => p.ToString()));
        return build!;
    }

    private string Written(ListedAnswers answers, string name)
    {
        var file = _folder.Of(name + ".yaml");
        var problems = new ProblemList();
        var draft = new BuildDialogue(PartsCatalog.Open(Repository.Catalog, problems),
            s => new Once(Repository, ValidationCache.Nothing).Chart(s).Result, answers).Ask();
        File.WriteAllText(file, DraftYaml.Of(draft!));
        return file;
    }
}
