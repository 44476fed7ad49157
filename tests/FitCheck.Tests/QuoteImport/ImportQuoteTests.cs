using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.QuoteImport;

public sealed class ImportQuoteTests
{
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    [Fact]
    public void A_list_whose_spacer_is_made_for_one_place_becomes_a_build_there()
    {
        var (build, told) =
            Imported("Artikel;Menge\nOrrin C165 "
                + "COAXIAL;1\nspacer-165-tansy-18;1x\nharness-duo-a-48-28;1,0\nfoam-tape-3x12;1\nheat-shrink-6-2;2\n");

        Assert.Empty(told);
        Assert.Equal(["front-door-left", "front-door-right"], build.Placed.Select(p => p.Position.Id));
        Assert.All(build.Placed, p => Assert.Equal(("orrin-c165", "spacer-165-tansy-18", "harness-duo-a-48-28", "foam-tape-3x12"),
            (p.Driver?.Part.Id, p.Adapter?.Part.Id, p.Harness?.Part.Id, p.Sundries.Single().Part.Id)));
        Assert.Equal(("heat-shrink-6-2", 2), (build.Extras.Single().Part.Id, build.Extras.Single().Packs));
        Assert.Equal(5, build.Quote!.Count);
    }

    [Fact]
    public void What_could_go_to_two_places_is_told_with_the_option_that_decides_it()
    {
        var (build, told) = Imported("orrin-c165,1\n");

        Assert.All(build.Placed, p => Assert.True(p is { Driver: null, KeepsFactoryDriver: true }));
        Assert.Contains("quote.csv:1:1: warning: Orrin C165 coaxial could go to several places", Assert.Single(told),
            StringComparison.Ordinal);
        Assert.Contains("`--at orrin-c165=front-door-left,front-door-right` or `--at orrin-c165=rear-door-left,rear-door-right`", told[0],
            StringComparison.Ordinal);
        Assert.Equal(["rear-door-left", "rear-door-right"],
            Imported("orrin-c165,1\n", "orrin-c165=rear-door-left,rear-door-right").Build.Placed.Select(p => p.Position.Id));
    }

    [Fact]
    public void Two_packs_are_never_spread_in_silence()
    {
        var (build, told) = Imported("orrin-c165,2\n");

        Assert.DoesNotContain(build.Placed, p => p.Driver is not null);
        Assert.EndsWith(
            "or for all of them `--at orrin-c165=front-door-left,front-door-right,rear-door-left,rear-door-right`", Assert.Single(told),
            StringComparison.Ordinal);
        Assert.Equal(4, Imported("orrin-c165,2\n", "orrin-c165=front-door-left,front-door-right,rear-door-left,rear-door-right").Build
            .Placed.Count(p => p.Driver?.Part.Id == "orrin-c165"));
    }

    [Fact]
    public void A_line_that_may_be_several_parts_is_left_out_and_the_build_says_so_until_somebody_decides()
    {
        const string list = "Name;Qty\nKomponentensystem Orrin C165;1\nspacer-165-tansy-18;1\nFitting;1\n";
        var outcome = Outcome(list, "tansy-hatch", []);

        Assert.Contains("notes: \"Not in this build is what the list has in line 2: Komponentensystem Orrin C165, 1.\"", outcome.Build!,
            StringComparison.Ordinal);
        Assert.Contains(outcome.Problems, p => p.Message.Contains("`--as 2=orrin-set-165`", StringComparison.Ordinal));
        Assert.Contains("set: orrin-set-165", Outcome(list, new ImportOptions { As = ["2=orrin-set-165"] }).Build!,
            StringComparison.Ordinal);
        Assert.Contains("line 2: Komponentensystem Orrin C165 (skipped)", Outcome(list, new ImportOptions { Skip = [2] }).Build!,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("two=orrin-c165", "expected `LINE=ID`, such as `7=orrin-c165`, found `two=orrin-c165`")]
    [InlineData("2=orrin-c156", "no part `orrin-c156` in the catalog; did you mean `orrin-c165`?")]
    [InlineData("9=orrin-c165", "the list has nothing in line 9")]
    public void A_wrong_choice_for_a_line_is_told(string choice, string told) =>
        Assert.Contains(Outcome("Name;Qty\norrin-c165;1\n", new ImportOptions { As = [choice] }).Problems, p => p.Message == told);

    [Fact]
    public void A_set_takes_the_front_and_coaxials_go_to_the_rear()
    {
        var (build, told) = Imported("orrin-set-165,1\norrin-c165,1\ncup-45-tansy,1\n");

        Assert.Empty(told);
        Assert.Equal(["front-door-left", "front-door-right", "front-tweeter-left", "front-tweeter-right"],
            build.Placed.Where(p => p.Set is not null).Select(p => p.Position.Id));
        Assert.Equal(["rear-door-left", "rear-door-right"],
            build.Placed.Where(p => p.Driver?.Part.Id == "orrin-c165").Select(p => p.Position.Id));
        Assert.All(build.Placed.Where(p => p.Position.Role == "tweeter"), p => Assert.Equal("cup-45-tansy", p.Cup?.Part.Id));
    }

    [Fact]
    public void Amplifiers_feed_the_front_first_through_the_converter()
    {
        var (build, _) = Imported("orrin-set-165,1\norrin-c165,1\nbrannoch-lc4,1\nkestow-d2-90,1\npower-kit-8awg,1\n");

        Assert.Equal(["radio", "lines from radio", "amp from lines"],
            build.Devices.Select(d => d.From is null ? d.Id : $"{d.Id} from {d.From}"));
        Assert.Equal(["front-left amp.1", "front-right amp.2", "rear-left radio.rear-left", "rear-right radio.rear-right"],
            build.Channels.Select(c => $"{c.Id} {c.Device.Id}.{string.Join('+', c.Outputs)}"));
        Assert.Equal("power-kit-8awg", build.Extras.Single().Part.Id);
    }

    [Fact]
    public void Handed_spacers_go_to_their_side()
    {
        var (build, told) = Imported("part,packs\norrin-c165,1\nspacer-165-tansy-tilt-8-right,1\nspacer-165-tansy-tilt-8-left,1\n");

        Assert.Empty(told);
        Assert.All(build.Placed, p => Assert.EndsWith(p.Position.Side, p.Adapter!.Part.Id, StringComparison.Ordinal));
    }

    [Fact]
    public void All_mistakes_are_told_at_once_with_what_is_near()
    {
        var outcome = Outcome("part,packs\norrin-c156,1\n\"Ring for 165 mm, 20 mm\",zero\nspacer-165-tansy-18,0\n,3\n", "tansyhatch", []);

        Assert.Null(outcome.Build);
        Assert.Equal(
        [
            "--vehicle: error: no vehicle `tansyhatch` in the catalog; did you mean `tansy-hatch`?",
            "quote.csv:2:1: warning: no part of the catalog is `orrin-c156` for certain; it is left out of the build. Say which it is: "
                + "`--as 2=orrin-c165`",
            "quote.csv:3:26: error: expected how many packs, a whole number from 1 to 999, found `zero`",
            "quote.csv:4:21: error: expected how many packs, a whole number from 1 to 999, found `0`",
            "quote.csv:5:1: error: no id or name of a part in this line",
        ], outcome.Problems.Select(p => p.ToString().Split(" (")[0]));
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("orrin-c165=nowhere")]
    [InlineData("orrin-t25=front-tweeter-left")]
    [InlineData("brannoch-lc4=front-door-left")]
    public void A_wrong_option_is_told(string at) =>
        Assert.All(Outcome("orrin-c165,1\nbrannoch-lc4,1\n", "tansy-hatch", [at]).Problems,
            p => Assert.StartsWith("--at: error: ", p.ToString(), StringComparison.Ordinal));

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("\"never closed")]
    public void A_file_without_a_list_is_told(string text) =>
        Assert.Contains(Outcome(text, "tansy-hatch", []).Problems, p => p.Severity == Severity.Error);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Whatever_is_on_a_list_the_build_validates_and_carries_it(int seed)
    {
        var random = new Random(seed);
        var parts = Catalog.Ids.Where(i => Catalog.KindOf(i) != "vehicle").ToArray();
        var vehicles = Catalog.IdsOf("vehicle").ToArray();
        var list = Enumerable.Range(0, 14).Select(_ => (Part: parts[random.Next(parts.Length)], Packs: random.Next(1, 4)))
            .DistinctBy(l => l.Part).ToList();

        var (build, _) = ImportedTo(vehicles[seed % vehicles.Length], string.Concat(list.Select(l => $"{l.Part}\t{l.Packs}\n")));

        Assert.Equal(list, build.Quote!.Select(q => (q.Part.Id, q.Packs)));
    }

    private static (Build Build, List<string> Told) Imported(string csv, params string[] at) => ImportedTo("tansy-hatch", csv, at);

    private static (Build Build, List<string> Told) ImportedTo(string vehicle, string csv, params string[] at)
    {
        var outcome = Outcome(csv, vehicle, at);
        Assert.True(outcome.Build is not null, string.Join('\n', outcome.Problems));
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("build.yaml", outcome.Build), problems)!;
        new SchemaCheck().Check("build", root, problems);
        var build = BuildReader.Read(root, Catalog, problems);
        Assert.Empty(problems.Sorted());
        return (build!, [.. outcome.Problems.Select(p => p.ToString())]);
    }

    private static ImportOutcome Outcome(string csv, string vehicle, string[] at) => Outcome(csv, new ImportOptions { At = at }, vehicle);

    private static ImportOutcome Outcome(string csv, ImportOptions options, string vehicle = "tansy-hatch") =>
        ImportQuote.Of(QuoteFile.Read("quote.csv", System.Text.Encoding.UTF8.GetBytes(csv), new ProblemList()), vehicle, options, null,
            Catalog, Rules, new ProblemList());
}
