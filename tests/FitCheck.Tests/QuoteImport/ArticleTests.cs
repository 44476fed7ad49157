using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Tests.Asking;
using Xunit;

namespace FitCheck.Tests.QuoteImport;

/// <summary>Article numbers: of the catalog's entries, and of a shop's own file, which a list teaches; and the questions of a
/// list.</summary>
public sealed class ArticleTests : IDisposable
{
    private const string Head = "Art.-Nr.;Bezeichnung;Menge\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("K-1650")]
    [InlineData("k-16 50")]
    [InlineData(" K -1650 ")]
    public void A_number_of_an_entry_finds_it(string number)
    {
        _folder.Write("shop/drivers/my-driver.yaml", MyDriver("articles: [K-1650, \"77\"]"));
        _folder.Write("q.csv", $"{Head}{number};Lautsprecher, schwarz;1\n");

        Assert.Contains("{part: my-driver, packs: 1}", Import(new()).Build, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_entries_with_one_number_are_told_at_the_second()
    {
        _folder.Write("shop/drivers/my-driver.yaml", MyDriver("articles: [K-1650]"));
        _folder.Write("shop/drivers/other-driver.yaml", MyDriver("articles: [\"5\", k-1650]")
            .Replace("my-driver", "other-driver", StringComparison.Ordinal));

        Assert.Contains(Lint.Run([], Folders, ValidationCache.Nothing).Problems, p => p.ToString().EndsWith(
            "/other-driver.yaml:14:17: error: the article number `k-1650` is that of `my-driver` too; one number stands for one entry",
            StringComparison.Ordinal));
        Assert.Contains(Checker.Open(new CheckerOptions { Catalogs = Folders.Catalog, Rules = Folders.Rules }).Problems,
            p => p.Message.Contains("`k-1650` is that of `my-driver` too", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_sure_or_answered_is_learned_and_found_the_next_time()
    {
        var file = _folder.Of("shop.csv");
        _folder.Write("q.csv", $"{Head}A7;Orrin C165 coaxial;1\nA8;mystery ring;1\nA9;unknown thing 77;1\n;Einbau;1\n");
        var answers = new ListedAnswers(("Line 3", "another part"), ("Its id", "spacer-165-tansy-18"), ("Line 4", ""));

        var outcome = Import(new(), file, answers);

        Assert.Contains("{part: spacer-165-tansy-18, packs: 1}", outcome.Build, StringComparison.Ordinal);
        Assert.Contains("line 4: A9 unknown thing 77 (skipped)", outcome.Build, StringComparison.Ordinal);
        Assert.Equal("article,part\nA7,orrin-c165\nA8,spacer-165-tansy-18\n", File.ReadAllText(file));

        _folder.Write("q.csv", $"{Head}A8;ein Ring;2\n");
        Assert.Contains("{part: spacer-165-tansy-18, packs: 2}", Import(new(), file).Build, StringComparison.Ordinal);
        Assert.Equal("article,part\nA7,orrin-c165\nA8,spacer-165-tansy-18\n", File.ReadAllText(file));
    }

    [Fact]
    public void The_file_is_extended_and_nothing_in_it_is_lost()
    {
        const string own = "Artikel;Teil;Bemerkung\r\nA1;gone-part;alt\r\n=2;orrin-t25;";
        var file = _folder.Write("shop.csv", own);
        _folder.Write("q.csv", $"{Head}A1;Orrin C165 coaxial;1\nA2;Orrin C165 coaxial;1\n2;Orrin T25 tweeter;1\n");

        var outcome = Import(new(), file);

        Assert.Equal(own + "\r\nA2;orrin-c165\r\n2;orrin-t25\r\n", File.ReadAllText(file));
        Assert.Contains(outcome.Problems, p => p.ToString().Contains("shop.csv:2:4: warning: no part `gone-part`",
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_line_whose_number_and_name_disagree_is_asked_with_both()
    {
        var file = _folder.Write("shop.csv", "article,part\nA7,orrin-t25\n");
        _folder.Write("q.csv", $"{Head}A7;Orrin C165 coaxial;1\norrin-t25;;1\n");
        var answers = new ListedAnswers(("Line 2", "orrin-c165"), ("Orrin C165 coaxial, 1 pack", ""));

        Import(new(), file, answers);

        Assert.Equal(["orrin-t25", "orrin-c165", "another part", ""], answers.Asked[0].Offered.Select(c => c.Id));
        Assert.Contains("75.00 EUR", answers.Asked[0].Offered[0].Label, StringComparison.Ordinal);
        Assert.Equal("article,part\nA7,orrin-t25\n", File.ReadAllText(file));
    }

    [Fact]
    public void Without_a_person_a_list_of_choices_is_told_and_nothing_is_learned_of_what_is_open()
    {
        var file = _folder.Of("shop.csv");
        _folder.Write("q.csv", $"{Head}A7;Orrin C165 coaxial;1\nA8;mystery ring;1\n");

        var outcome = Import(new(), file);

        Assert.Contains(outcome.Problems, p => p.Message.Contains("`--skip 3`", StringComparison.Ordinal));
        Assert.Equal("article,part\nA7,orrin-c165\n", File.ReadAllText(file));
    }

    [Fact]
    public void A_wrong_id_is_told_with_what_is_near()
    {
        var asked = new List<string?>();
        QuoteDialogue.Answered(new Probe(asked), [new(3, "ring", [])],
            PartsCatalog.Open([RepositoryRoot.Of("catalog")], new()), new ImportOptions());

        Assert.Equal(["no part `orrin-c156` in the catalog; did you mean `orrin-c165`?", null, null], asked);
    }

    [Fact]
    public void Where_a_part_goes_that_could_go_to_several_places_is_asked_too()
    {
        // Both doors of the Tansy take 165 mm; two packs are two pairs, or one pair and two to spare.
        _folder.Write("q.csv", "orrin-c165,2\n");
        var nobody = Import(new());
        var answers = new Asking.ListedAnswers(("Orrin C165 coaxial, 2 packs of 2: where does it go?", "rear-door-left,rear-door-right"));
        var both = new Asking.ListedAnswers(("", "front-door-left,front-door-right,rear-door-left,rear-door-right"));
        var neither = new Asking.ListedAnswers(("", ""));

        Assert.Contains(nobody.Problems, p => p.Message.Contains("could go to several places", StringComparison.Ordinal));
        Assert.Contains("at: [rear-door-left, rear-door-right]", Import(new(), person: answers).Build, StringComparison.Ordinal);
        var offered = Assert.Single(answers.Asked).Offered;
        Assert.Equal(["front-door-left,front-door-right", "rear-door-left,rear-door-right",
            "front-door-left,front-door-right,rear-door-left,rear-door-right", ""], offered.Select(c => c.Id));
        Assert.DoesNotContain(Import(new(), person: both).Problems,
            p => p.Message.Contains("several places", StringComparison.Ordinal));
        Assert.Equal(nobody.Build, Import(new(), person: neither).Build);
    }

    private Folders Folders => new(Directory.Exists(_folder.Of("shop")) ? [RepositoryRoot.Of("catalog"), _folder.Of("shop")]
        : [RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    private ImportOutcome Import(ImportOptions options, string? articles = null, IQuestions? person = null) =>
        new Once(Folders, ValidationCache.Nothing, ask: () => person).Import(BuildSource.File(_folder.Of("q.csv")),
            new QuoteRequest("tansy-hatch", options, articles));

    private static string MyDriver(string more) =>
        $"id: my-driver\nkind: driver\nname: Velm speaker 6\nprovenance: datasheet\nsource: sheet\npack: 2\nprice: 89.00 EUR\n"
            + $"availability: current\ntype: coaxial\nsize: 165 mm\nshape: round\nimpedance: 4 ohm\nmass: 900 g\n{more}\n";

    // Types an id wrongly, then rightly, then none.
    private sealed class Probe(List<string?> told) : IQuestions
    {
        public Choice One(string question, IReadOnlyList<Choice> choices) => choices.First(c => c.Id == "another part");

        public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual,
            bool atLeastOne) =>
            [];

        public void Say(string text)
        {
        }

        public string Text(string question, string usual, Func<string, string?> wrong)
        {
            told.AddRange([wrong("orrin-c156"), wrong("orrin-c165"), wrong("")]);
            return "orrin-c165";
        }
    }
}
