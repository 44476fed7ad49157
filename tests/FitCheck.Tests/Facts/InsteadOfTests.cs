using FitCheck.Catalog;
using FitCheck.Finds;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Wording;
using FitCheck.Tests.Cli;
using FitCheck.Tests.Reports;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What is written and told of a car that the catalog does not have.</summary>
public sealed class InsteadOfTests : IDisposable
{
    private const string Note = "guessed from the nearest vehicle, the Merrow Tansy hatchback";
    private readonly TemporaryFolder _folder = new();

    public InsteadOfTests() => _folder.Write("mine.yaml", StandInText.Meant("tansy-door-swap"));

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("''", "mine.yaml:")]
    [InlineData("'  '", "expected the name of the car that is meant")]
    [InlineData("tansy-hatch", "is the vehicle of the catalog itself")]
    [InlineData("merrow tansy HATCHBACK", "is the vehicle of the catalog itself")]
    public void A_name_that_is_none_is_told_with_its_place(string name, string told)
    {
        _folder.Write("mine.yaml", StandInText.Meant("tansy-door-swap").Replace("Aunt Olga's estate", name, StringComparison.Ordinal));

        var run = Run.Of(_folder.Path, "check", "mine.yaml");

        Assert.Equal(2, run.Status);
        Assert.Matches(@"mine\.yaml:\d+:13: error: ", run.Error); // behind `instead_of: `
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check", "text")]
    [InlineData("check", "html")]
    [InlineData("check", "markdown")]
    [InlineData("check", "junit")]
    [InlineData("list", "text")]
    [InlineData("list", "html")]
    [InlineData("list", "markdown")]
    [InlineData("suggest", "text")]
    [InlineData("suggest", "markdown")]
    public void The_head_names_the_car_and_says_where_its_figures_come_from(string command, string format)
    {
        var run = Run.Of(_folder.Path, command, "mine.yaml", "--format", format);

        var words = string.Join(' ', run.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Matches("Aunt Olga(\\\\?'|&#39;|&apos;)s estate", words);
        Assert.Contains(Note, words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    [InlineData("suggest")]
    public async Task JSON_has_both_names_and_keeps_its_schema(string command)
    {
        var json = Run.Of(_folder.Path, command, "mine.yaml", "--format", "json").Out;

        Assert.Contains("\"stand_in\": \"Merrow Tansy hatchback\"", json, StringComparison.Ordinal);
        var schema = await JsonSchema.FromJsonAsync(File.ReadAllText(RepositoryRoot.Of("reports", "schema", $"{command}.schema.json")));
        Assert.Empty(schema.Validate(json));
    }

    [Fact]
    public void The_sheet_and_the_measuring_card_say_so_too()
    {
        Run.Of(_folder.Path, "check", "mine.yaml", "--sheet", "sheet.html");
        Run.Of(_folder.Path, "measure", "mine.yaml", "--card", "card.html");

        Assert.Contains(Note, File.ReadAllText(_folder.Of("sheet.html")), StringComparison.Ordinal);
        Assert.Contains(Note, File.ReadAllText(_folder.Of("card.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_vehicle_of_the_catalog_has_no_such_note()
    {
        Assert.Null(VehicleWords.Note(null));
        Assert.DoesNotContain("stand_in", Run.Of(_folder.Path, "check", RepositoryRoot.Of("catalog", "builds", "tansy-door-swap.yaml"),
            "--format", "json").Out, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    public void A_hostile_name_stays_text(string name)
    {
        var quoted = Yaml.Double(name);
        var result = Trial.Of(StandInText.Meant("tansy-door-swap").Replace("Aunt Olga's estate", quoted, StringComparison.Ordinal));

        Assert.Equal(name.Trim(), result.VehicleName);
    }

    [Theory]
    [InlineData("tansy-hatch", "tansy-hatch")] // its id
    [InlineData("merrow hatch", "tansy-hatch")] // words of its name
    [InlineData("larkspur estate", "larkspur-wagon")] // an estate is a wagon
    [InlineData("Aunt Olga's tansey", "tansy-hatch")] // misspelt
    [InlineData("people carrier", "alder-mpv")]
    public void The_nearest_vehicle_comes_first(string words, string id) => Assert.Equal(id, Near(words)[0]);

    [Fact]
    public void Words_of_nothing_find_nothing()
    {
        Assert.Empty(Near("zzzzzzzzzzzzzzzzzzzz"));
        Assert.Empty(Near(" "));
    }

    private static List<string> Near(string words) =>
        [.. NearestVehicles.Of(words, PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList())).Select(v => v.Id)];

    private static class Yaml
    {
        // A double-quoted scalar with everything but plain letters as its number.
        public static string Double(string text) => "\"" + string.Concat(text.Select(c =>
            char.IsAsciiLetterOrDigit(c) || c == ' ' ? c.ToString() : $"\\u{(int)c:X4}")) + "\"";
    }
}
