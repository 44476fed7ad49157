using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Commands;
using FitCheck.Cli.NewParts;
using FitCheck.DataSheets;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Asking;

/// <summary>`fitcheck new part` on a terminal: what the kind needs, and nothing else.</summary>
public sealed partial class PartDialogueTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> PartKinds() => [.. Kinds.All.Select(k => k.Kind)];

    // Whoever answers with the example of each question has an entry that lint finds nothing wrong with.
    [Theory, MemberData(nameof(PartKinds))]
    public void An_entry_of_every_kind_passes_lint(string kind)
    {
        var person = new Person("sold");
        Write(kind, "x1-" + kind, person);

        Assert.Equal([], Linted().Split("\n", StringSplitOptions.RemoveEmptyEntries));
        Assert.All(person.Asked, q => Assert.Matches("^[a-z_.]+: .*", q));
    }

    // `back` at the third question: the second is asked again, and what is written is the same.
    [Fact]
    public void Who_goes_back_a_question_answers_it_anew()
    {
        var (straight, goesBack) = (new Person("sold"), new Person("sold"));
        Assert.Equal(0, Written(straight, "straight"));
        Assert.Equal(0, Written(new GoesBack(goesBack, 3), "back"));

        Assert.Equal(straight.Asked.Count + 1, goesBack.Asked.Count);
        Assert.Equal(goesBack.Asked[1], goesBack.Asked[0]);
        Assert.Equal(File.ReadAllText(_folder.Of("straight/x1.yaml")), File.ReadAllText(_folder.Of("back/x1.yaml")));

        int Written(IQuestions ask, string folder)
        {
            Directory.CreateDirectory(_folder.Of(folder));
            return NewPartCommand.Asked(ask, "cup", _folder.Of($"{folder}/x1.yaml"), []);
        }
    }

    private sealed class GoesBack(IQuestions ask, int at) : IQuestions
    {
        private int _asked;

        public Choice One(string question, IReadOnlyList<Choice> choices) => Next(() => ask.One(question, choices));

        public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual,
            bool atLeastOne) => Next(() => ask.Several(question, choices, usual, atLeastOne));

        public string Text(string question, string usual, Func<string, string?> wrong) => Next(() => ask.Text(question, usual, wrong));

        public void Say(string text) => ask.Say(text);

        private T Next<T>(Func<T> asked) => ++_asked == at ? throw new StepBack() : asked();
    }

    [Theory]
    [InlineData("adapter")]
    [InlineData("sundry")]
    public void What_is_owned_is_not_asked_for_price_and_source(string kind)
    {
        var person = new Person("owned");
        Write(kind, "x1-" + kind, person);

        Assert.Equal([], Linted().Split("\n", StringSplitOptions.RemoveEmptyEntries));
        Assert.DoesNotContain(person.Asked, q => q.StartsWith("price", StringComparison.Ordinal)
            || q.StartsWith("source", StringComparison.Ordinal));
        Assert.Contains("owned: true\n", File.ReadAllText(_folder.Of($"shop/{Folder(kind)}/x1-{kind}.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_answers_are_told_with_what_is_near_and_asked_again()
    {
        var person = new Person("sold")
        {
            Slips = { ["type"] = "woofr", ["size"] = "165", ["price"] = "99", ["pack"] = "some",
            ["name"] = "" }
        };
        var entry = Asked("driver", person);

        Assert.Equal("woofer", ((YamlScalar)entry["type"]!).Text);
        Assert.Equal([
            "it is needed", "expected a whole number from 1 to 10000 for `pack`, found `some`",
            "expected a price with its currency, such as `129.00 EUR` for `price`, found `99`",
            "expected one of woofer, tweeter, coaxial, full-range, subwoofer for `type`, found `woofr`; did you mean `woofer`?",
            "expected a length with its unit, such as `165 mm` or `6 1/2 in` for `size`, found `165`; a bare number has no unit"],
                person.Told);
    }

    [Fact]
    public void Units_are_taken_as_people_write_them_and_keys_stand_in_their_order()
    {
        var entry = Asked("adapter", new Person("sold") { Says = { ["thickness"] = "12mm", ["opening"] = "5.75 inch" } });

        Assert.Equal(["id", "kind", "name", "provenance", "source", "pack", "price", "availability", "thickness", "opening"],
            entry.Entries.Select(e => e.Key));
        Assert.Equal(("12 mm", "5.75 in"), (((YamlScalar)entry["thickness"]!).Text, ((YamlScalar)entry["opening"]!).Text));
    }

    [Theory]
    [InlineData("sundry", "capacitor", "capacitance")]
    [InlineData("sundry", "l-pad", "shunt_resistance")]
    [InlineData("wiring", "speaker-cable", "conductor")]
    public void What_only_its_type_needs_is_asked_too(string kind, string type, string key)
    {
        var person = new Person("sold") { Says = { ["type"] = type } };
        Write(kind, "x1-" + kind, person);

        Assert.StartsWith(key + ": ", person.Asked[^1], StringComparison.Ordinal);
        Assert.DoesNotContain("error", Linted(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_is_made_of_drivers_of_the_catalog()
    {
        var person = new Person("sold") { Slips = { ["woofer"] = "orrin-w165-5", ["tweeter"] = "orrin-w165-4" } };
        Asked("component-set", person);

        // One letter off; several woofers are as near, of which the first is named. A woofer is no tweeter.
        Assert.StartsWith("no woofer `orrin-w165-5` in the catalog; did you mean `orrin-w", person.Told[0], StringComparison.Ordinal);
        Assert.StartsWith("no tweeter `orrin-w165-4` in the catalog", person.Told[1], StringComparison.Ordinal);
    }

    private static YamlMap Asked(string kind, Person person) =>
        new PartDialogue(kind, person, PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList())).Ask("mine");

    private void Write(string kind, string id, Person person)
    {
        var entry = new PartDialogue(kind, person, PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList())).Ask(id);
        _folder.Write($"shop/{Folder(kind)}/{id}.yaml", PartFile.Of(entry,
            File.ReadAllText(RepositoryRoot.Of("catalog", "starters", kind + ".yaml"))));
    }

    private string Linted() => string.Join('\n', Lint.Run([],
        new FitCheck.Evaluation.Folders([RepositoryRoot.Of("catalog"), _folder.Of("shop")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing)
        .Problems.Where(p => p.At.File.Contains("/shop/", StringComparison.Ordinal)).Select(p => p.ToString()));

    private static string Folder(string kind) => Kinds.All.First(k => k.Kind == kind).Folder;

    /// <summary>Answers with what a test says, else with what is usual, else with the example of the question; makes slips first.</summary>
    private sealed partial class Person(string first) : IQuestions
    {
        public Dictionary<string, string> Slips { get; } = [];
        public Dictionary<string, string> Says { get; } = [];
        public List<string> Asked { get; } = [];
        public List<string> Told { get; } = [];

        public Choice One(string question, IReadOnlyList<Choice> choices) => choices.First(c => c.Id == first);

        public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual,
            bool atLeastOne) =>
            [];

        public void Say(string text)
        {
        }

        public string Text(string question, string usual, Func<string, string?> wrong)
        {
            Asked.Add(question);
            var key = question.Split(':')[0];
            if (Slips.TryGetValue(key, out var slip))
                Told.Add(wrong(slip) ?? $"`{slip}` is taken for `{key}`");
            var answer = Says.GetValueOrDefault(key) ?? (usual.Length > 0 ? usual : Example(question));
            return wrong(answer) is { } error ? throw new InvalidOperationException($"{question}: {answer}: {error}") : answer;
        }

        private static string Example(string question) => Such().Match(question) is { Success: true } such ? such.Groups[1].Value
            : question.Contains("one of ", StringComparison.Ordinal) ? question.Split("one of ")[1].Split(',')[0]
            : throw new InvalidOperationException($"no example: {question}");

        [GeneratedRegex("such as `([^`]+)`")]
        private static partial Regex Such();
    }
}
