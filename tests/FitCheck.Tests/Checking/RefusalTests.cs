using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>What nobody can have meant is refused by the name of the argument; an empty list of builds is no pass.</summary>
public sealed class RefusalTests
{
    private static readonly Checker Checker = OpenCheckers.OfRepository;
    private static readonly BuildSource Build = BuildSource.File(OpenCheckers.Builds[0]);

    [Fact]
    public void An_empty_list_of_builds_is_refused_by_name()
    {
        Refused("builds", () => Checker.Check([]));
        Refused("builds", () => Checker.Check(null!));
        Refused("builds", () => Checker.Check([Build, null!]));
        Refused("builds", () => Checker.List([]));
        Refused("builds", () => Checker.List(null!));
        Refused("builds", () => Checker.List([null!]));
    }

    [Fact]
    public void A_source_without_a_name_is_refused()
    {
        Refused("path", () => BuildSource.File(""));
        Refused("path", () => BuildSource.File(null!));
        Refused("name", () => BuildSource.Text("", "kind: build"));
        Refused("name", () => BuildSource.Text(null!, "kind: build"));
        Refused("yaml", () => BuildSource.Text("draft.yaml", null!));
        Refused("paths", () => BuildSource.Files());
        Refused("paths", () => BuildSource.Files("a.yaml", ""));
    }

    [Fact]
    public void Folders_that_are_none_are_refused_by_name()
    {
        Refused("options", () => Checker.Open(null!));
        Refused("Catalogs", () => Checker.Open(new CheckerOptions { Catalogs = [] }));
        Refused("Catalogs", () => Checker.Open(new CheckerOptions { Catalogs = null! }));
        Refused("Catalogs", () => Checker.Open(new CheckerOptions { Catalogs = ["catalog", ""] }));
        Refused("Rules", () => Checker.Open(new CheckerOptions { Rules = [] }));
        Refused("Rules", () => Checker.Open(new CheckerOptions { Rules = [null!] }));
        Refused("Cache", () => Checker.Open(new CheckerOptions { Cache = null! }));
    }

    [Fact]
    public void Each_further_argument_is_refused_by_name()
    {
        Refused("build", () => Checker.Suggest(null!));
        Refused("Keep", () => Checker.Suggest(Build, new SuggestOptions { Keep = [""] }));
        Refused("Keep", () => Checker.Suggest(Build, new SuggestOptions { Keep = null! }));
        Refused("Time", () => Checker.Suggest(Build, new SuggestOptions { Time = TimeSpan.Zero }));
        Refused("Tax", () => Checker.List([Build], new ListOptions { Tax = null! }));
        Refused("Slice", () => Checker.Chart(new ChartOptions { Slice = null! }));
        Refused("Vehicles", () => Checker.Chart(new ChartOptions { Slice = new ChartSlice { Vehicles = [""] } }));
        Refused("Statuses", () => Checker.Chart(new ChartOptions { Slice = new ChartSlice { Statuses = null! } }));
        Refused("list", () => Checker.Import(null!, "tansy-hatch"));
        Refused("vehicle", () => Checker.Import(Build, ""));
        Refused("At", () => Checker.Import(Build, "tansy-hatch", new ImportOptions { At = [null!] }));
        Refused("As", () => Checker.Import(Build, "tansy-hatch", new ImportOptions { As = [null!] }));
        Refused("paths", () => Checker.Changed([]));
        Refused("paths", () => Checker.Changed([""]));
    }

    [Fact]
    public void Folders_that_are_not_there_are_told_and_throw_nothing()
    {
        var opened = Checker.Open(new CheckerOptions { Catalogs = ["no/such/catalog"], Rules = ["no/such/rules", "a\0b"] });

        Assert.Null(opened.Checker);
        Assert.Equal(["a\0b", "no/such/catalog", "no/such/rules"], opened.Problems.Select(p => p.At.File));
    }

    [Fact]
    public void Words_that_name_nothing_are_told_and_throw_nothing()
    {
        Assert.Contains("nothing is called `orrin-c166`",
            Checker.Suggest(Build, new SuggestOptions { Keep = ["orrin-c166"] }).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("no vehicle `tansy-hatcj`",
            Checker.Chart(new ChartOptions { Slice = new ChartSlice { Vehicles = ["tansy-hatcj"] } }).Problems[0].Message,
            StringComparison.Ordinal);
        Assert.Contains("no vehicle `tansy-hatcj`",
            Checker.Import(BuildSource.Text("q.csv", "orrin-c165,1"), "tansy-hatcj").Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_with_builds_is_told_beside_what_is_wrong_with_the_catalog()
    {
        using var folder = new TemporaryFolder();
        folder.Write("drivers/bad.yaml", "kind: driver\nid: bad\n");
        var opened =
            Checker.Open(
                new CheckerOptions { Catalogs = [RepositoryRoot.Of("catalog"), folder.Path], Rules = [RepositoryRoot.Of("rules")] });

        Assert.Null(opened.Checker);
        var all = opened.ProblemsWith([BuildSource.Text("wrong.yaml", "kind: build")]);
        Assert.Superset(opened.Problems.ToHashSet(), all.ToHashSet());
        Assert.Contains(all, p => p.At.File == "wrong.yaml");
        Refused("builds", () => opened.ProblemsWith([]));
    }

    private static void Refused(string name, Func<object> call) => Assert.Equal(name, Assert.ThrowsAny<ArgumentException>(call).ParamName);
}
