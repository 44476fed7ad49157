using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Reports.Format;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Suggestions;

public sealed class SuggestionReportTests
{
    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    [Theory]
    [InlineData("tansy-wrong-harness")] // proposals
    [InlineData("sedge-shallow-box")] // a conflict
    [InlineData("alder-missing-data")] // readings
    public async Task What_is_written_keeps_the_published_schema(string name)
    {
        var schema = await JsonSchema.FromJsonAsync(File.ReadAllText(RepositoryRoot.Of("reports", "schema", "suggest.schema.json")));

        Assert.Empty(schema.Validate(Written("json", Of(name))));
    }

    [Theory]
    [InlineData("text")]
    [InlineData("markdown")]
    public void Every_format_tells_the_change_its_reason_and_the_proof(string format)
    {
        var written = Plain(Written(format, Of("tansy-wrong-harness")));

        Assert.Contains("spacer-165-flat-10) → Tansy front spacer 18 mm (spacer-165-tansy-18)", written, StringComparison.Ordinal);
        Assert.Contains("margin -10 mm (mount/inner-tabs-in-the-way)", written, StringComparison.Ordinal);
        Assert.Contains("Proved: ", written, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text", "sedge-shallow-box")]
    [InlineData("markdown", "sedge-shallow-box")]
    [InlineData("text", "tansy-wrong-harness")]
    public void Every_format_tells_over_what_the_proof_holds(string format, string name)
    {
        var written = Plain(Written(format, Of(name)));

        Assert.Contains("Proved over: other ", written, StringComparison.Ordinal);
        Assert.Contains("; other spacers;", written, StringComparison.Ordinal);
        // What is not tried is not claimed.
        Assert.Contains("Not tried: parts that are no longer made; adding an amplifier, and a set where tweeters' places "
            + "are open; adding a source unit or a driver;", written, StringComparison.Ordinal);
        Assert.DoesNotContain("choice from the catalog", written, StringComparison.Ordinal);
        Assert.DoesNotContain("choice of the catalog", written, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("markdown")]
    public void Every_format_says_that_no_answer_without_a_new_warning_exists(string format)
    {
        const string Proved = "No answer without a new warning exists among what was tried";
        const string Open = "No answer without a new warning was found";
        var some = Of("tansy-wrong-harness");
        Assert.NotEmpty(some.Proposals);
        Assert.Contains(Proved, Plain(Written(format, some with { WithoutNewWarning = false })), StringComparison.Ordinal);
        Assert.Contains(Open, Plain(Written(format, some with { WithoutNewWarning = null })), StringComparison.Ordinal);
        Assert.DoesNotContain("without a new warning", Plain(Written(format, some with { WithoutNewWarning = true })),
            StringComparison.Ordinal);
        Assert.DoesNotContain("without a new warning", Plain(Written(format, Of("sedge-shallow-box"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    [InlineData(null)]
    public async Task A_program_reads_it_too_where_it_is_known(bool? known)
    {
        var written = Written("json", Of("tansy-wrong-harness") with { WithoutNewWarning = known });
        using var json = System.Text.Json.JsonDocument.Parse(written);
        Assert.Equal(known is not null, json.RootElement.TryGetProperty("without_new_warning", out var value));
        if (known is not null)
            Assert.Equal(known, value.GetBoolean());
        var schema = await JsonSchema.FromJsonAsync(File.ReadAllText(RepositoryRoot.Of("reports", "schema", "suggest.schema.json")));
        Assert.Empty(schema.Validate(written));
    }

    [Fact]
    public void A_program_reads_over_what_the_proof_holds()
    {
        using var json = System.Text.Json.JsonDocument.Parse(Written("json", Of("tansy-wrong-harness")));
        var proof = json.RootElement.GetProperty("proof");

        Assert.Contains(proof.GetProperty("tried").EnumerateArray(),
            t => t.GetProperty("what").GetString() == "spacer" && t.GetProperty("where")[0].GetString() == "Front door, left");
        Assert.Contains(proof.GetProperty("not_tried").EnumerateArray(),
            t => t.GetString()!.Contains("amplifier", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_kept_is_not_said_to_be_tried()
    {
        var kept = new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", "tansy-wrong-harness.yaml"),
            new SuggestOptions { Keep = ["spacer-165-flat-10"] }).Result!;

        Assert.DoesNotContain(kept.Coverage.Tried, t => t.What == "spacer");
        Assert.Contains("anything else for what is to be kept (spacer-165-flat-10)", kept.Coverage.NotTried);
    }

    [Fact]
    public void A_conflict_names_the_wish_that_it_would_help_to_give_up() =>
        // the rings for 250 mm come blank on the panel's face
        Assert.Equal(["drilling is not accepted"], Of("sedge-shallow-box").Conflict!.Wishes);

    [Fact]
    public void What_is_kept_stays()
    {
        var kept = new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", "tansy-wrong-harness.yaml"),
            new SuggestOptions { Keep = ["spacer-165-flat-10"] }).Result!;

        Assert.DoesNotContain(kept.Proposals.SelectMany(p => p.Changes), c => c.From == "spacer-165-flat-10");
        // Neither with another driver: its screw circle of 158 mm meets no door of 172 mm.
        Assert.Contains("spacer-165-flat-10 is to be kept", kept.Conflict!.Wishes);
    }

    [Fact]
    public void A_name_to_keep_that_nothing_has_is_told()
    {
        var outcome = new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", "tansy-wrong-harness.yaml"),
            new SuggestOptions { Keep = ["spacer-165-flat-11"] });

        Assert.Null(outcome.Result);
        Assert.Contains("did you mean `spacer-165-flat-10`", Assert.Single(outcome.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_reading_that_settles_most_comes_first()
    {
        var readings = Of("alder-missing-data").Readings;

        Assert.Equal(readings.Max(r => r.Settles.Count), readings[0].Settles.Count);
        Assert.Contains(readings, r => r.What.Contains("free depth behind the panel", StringComparison.Ordinal));
    }

    private static Suggestion Of(string name) =>
        new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", name + ".yaml"),
            new SuggestOptions { Time = TimeSpan.FromMinutes(10) }).Result!;

    private static string Written(string format, Suggestion suggestion)
    {
        using var output = new StringWriter { NewLine = "\n" };
        SuggestionReports.Find(format)!.Write(suggestion, ReportOptions.Default, output);
        return output.ToString();
    }

    private static string Plain(string text) =>
        string.Join(' ', text.Replace("\\", "", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
