using FitCheck.Charts;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>
/// What is said of a text is what is said of the file with the same text, by the checker that stays open and by the one that is opened for
/// it.
/// </summary>
public sealed class TextAndFileTests
{
    private static readonly Checker Checker = OpenCheckers.OfRepository;

    [Fact]
    public void A_text_is_checked_as_a_file_is()
    {
        foreach (var file in OpenCheckers.Builds)
            Assert.Equal(OpenCheckers.Json(Checker.Check([BuildSource.File(file)])), OpenCheckers.Json(Checker.Check([AsText(file)])));
    }

    [Fact]
    public void The_checker_that_stays_open_says_what_the_one_for_a_single_check_says()
    {
        var once = new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Check(OpenCheckers.Builds);

        Assert.Equal(OpenCheckers.Json(once), OpenCheckers.Json(Checker.Check(BuildSource.Files(OpenCheckers.Builds))));
    }

    [Fact]
    public void A_text_is_listed_and_changed_as_a_file_is()
    {
        var file = OpenCheckers.Build("tansy-wrong-harness");

        Assert.Equal(OpenCheckers.Json(Checker.List([BuildSource.File(file)])), OpenCheckers.Json(Checker.List([AsText(file)])));
        Assert.Equal(OpenCheckers.Json(Checker.Suggest(BuildSource.File(file))), OpenCheckers.Json(Checker.Suggest(AsText(file))));
    }

    [Fact]
    public void A_list_is_imported_from_a_text_as_from_a_file()
    {
        using var folder = new TemporaryFolder();
        const string list = "orrin-c165,1\nspacer-165-tansy-18,1\nharness-duo-a-48-28,1\n";
        var file = folder.Write("quote.csv", list).Replace('\\', '/');
        var options = new ImportOptions { At = ["orrin-c165=front-door-left,front-door-right"] };

        var (fromFile, fromText) =
            (Checker.Import(BuildSource.File(file), "tansy-hatch", options),
                Checker.Import(BuildSource.Text(file, list), "tansy-hatch", options));

        Assert.NotNull(fromFile.Build);
        Assert.Equal(fromFile.Build, fromText.Build);
        Assert.Equal(fromFile.Problems, fromText.Problems);
        Assert.NotNull(Checker.Check([BuildSource.Text("imported.yaml", fromText.Build!)]).Result);
    }

    [Fact]
    public void A_mistake_in_a_text_has_the_place_and_the_words_that_it_has_in_a_file()
    {
        using var folder = new TemporaryFolder();
        const string text = "kind: build\nname: A\nvehicle: tansy-hatch\nfit:\n  - {at: [front-door-left], drivr: orrin-c165}\n";
        var file = folder.Write("b.yaml", text).Replace('\\', '/');

        var (fromFile, fromText) = (Checker.Check([BuildSource.File(file)]), Checker.Check([BuildSource.Text(file, text)]));

        Assert.Null(fromText.Result);
        Assert.Equal(fromFile.Problems, fromText.Problems);
        var problem = Assert.Single(fromText.Problems);
        Assert.Equal((5, 29), (problem.At.Line, problem.At.Column));
        Assert.Contains("did you mean `driver`?", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0")]
    [InlineData("kind: \ud800")]
    [InlineData("- a list")]
    [InlineData("kind: build\nname: [")]
    [InlineData("kind: driver\nid: x")]
    public void A_text_that_is_no_build_is_told_and_throws_nothing(string text)
    {
        var outcome = Checker.Check([BuildSource.Text("draft.yaml", text)]);

        Assert.Null(outcome.Result);
        Assert.All(outcome.Problems, p => Assert.Equal("draft.yaml", p.At.File));
        Assert.NotEmpty(outcome.Problems);
    }

    [Fact]
    public void A_file_that_is_not_there_is_told_and_throws_nothing()
    {
        Assert.Contains("no such file", Assert.Single(Checker.Check([BuildSource.File("no/such/build.yaml")]).Problems).Message,
            StringComparison.Ordinal);
        Assert.Contains("NUL", Assert.Single(Checker.Check([BuildSource.File("a\0b.yaml")]).Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_wrong_build_of_several_is_told_and_none_is_checked()
    {
        var outcome = Checker.Check([BuildSource.File(OpenCheckers.Builds[0]), BuildSource.Text("wrong.yaml", "kind: build")]);

        Assert.Null(outcome.Result);
        Assert.All(outcome.Problems, p => Assert.Equal("wrong.yaml", p.At.File));
    }

    [Fact]
    public void A_chart_of_a_checker_is_the_chart_of_one_run()
    {
        var slice = new ChartSlice { Vehicles = ["tansy-hatch"], Statuses = [Status.Pass, Status.Warn] };
        var once = new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Chart(slice);

        Assert.Equal(OpenCheckers.Json(once), OpenCheckers.Json(Checker.Chart(new ChartOptions { Slice = slice })));
    }

    private static BuildSource AsText(string file) => BuildSource.Text(file.Replace('\\', '/'), File.ReadAllText(file));
}
