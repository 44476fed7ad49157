using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// From a seller's list to a better build: what is answered passes when it is written and checked, whatever was on the list.
/// </summary>
public sealed class QuoteSuggestionTests
{
    private const int Quotes = 200;

    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    [Fact]
    public void The_flow_of_the_readme_ends_in_builds_that_pass()
    {
        using var folder = new TemporaryFolder();
        var quote = folder.Write("quote.csv", "orrin-c165,1\n");
        var build = new Once(Folders, ValidationCache.In(folder.Path)).Import(BuildSource.File(quote),
            new QuoteRequest("tansy-hatch", new ImportOptions { At = ["orrin-c165=front-door-left,front-door-right"] })).Build!;

        var suggestion = Suggested(folder, folder.Write("quote.yaml", build),
            new SuggestOptions { Keep = ["orrin-c165"], Time = TimeSpan.FromMinutes(5) });

        // The Tansy's plug is Duo-A and the driver's tabs are 4.8 and 2.8 mm; the spacers that are made for its front doors are the flat
        // one and the pair of tilted ones.
        Assert.All(suggestion.Proposals, p => Assert.Contains(p.Changes, c => c.To == "harness-duo-a-48-28"));
        Assert.Equal(["spacer-165-tansy-18", "spacer-165-tansy-tilt-8-left and spacer-165-tansy-tilt-8-right"],
            suggestion.Proposals.Take(2).Select(p => p.Changes.Single(c => c.What == "spacer").To));
        AllPass(folder, suggestion);
    }

    [Fact]
    public void Whatever_is_on_the_list_every_answer_passes_and_every_proof_holds()
    {
        using var folder = new TemporaryFolder();
        var catalog = PartsCatalog.Open(Folders.Catalog, new ProblemList());
        var wrong = new List<string>();
        var answered = 0;
        for (var seed = 0; seed < Quotes; seed++)
        {
            if (RandomQuotes.Build(seed, RandomQuotes.VehicleOf(seed, catalog), catalog, Folders, folder) is not { } build)
                continue;
            try
            {
                var suggestion = Suggested(folder, folder.Write("quote.yaml", build), new SuggestOptions
                {
                    FailOn = seed % 5 == 4 ? Status.Warn : Status.Fail,
                    Prefer = (Preference)(seed % 4),
                    Time = TimeSpan.FromSeconds(0.25),
                });
                answered += suggestion.Proposals.Count;
                if (suggestion is { FailOn: Status.Fail, Passes: false, Proof.Complete: true })
                {
                    Assert.Equal("", ProofTests.NoSwapPasses(build));
                    BeyondTests.NothingAddedPasses(build);
                }
                AllPass(folder, suggestion);
            }
            catch (Exception e)
            {
                wrong.Add($"{seed}: {e.Message}\n{build}");
            }
        }
        Assert.Equal("", string.Join('\n', wrong));
        Assert.True(answered > Quotes / 2, $"{answered} answers say little");
    }

    private static Suggestion Suggested(TemporaryFolder folder, string build, SuggestOptions options)
    {
        var outcome = new Once(Folders, ValidationCache.In(folder.Path)).Suggest(build, options);
        Assert.DoesNotContain(outcome.Problems, p => p.Severity == Severity.Error);
        foreach (var format in SuggestionReports.Formats)
        {
            using var output = new StringWriter { NewLine = "\n" };
            SuggestionReports.Find(format)!.Write(outcome.Result!, ReportOptions.Default, output);
            Assert.NotEmpty(output.ToString());
        }
        return outcome.Result!;
    }

    private static void AllPass(TemporaryFolder folder, Suggestion suggestion)
    {
        foreach (var proposal in suggestion.Proposals)
        {
            var check = new Once(Folders, ValidationCache.In(folder.Path)).Check([folder.Write("changed.yaml", proposal.Yaml)]);
            Assert.DoesNotContain(check.Problems, p => p.Severity == Severity.Error);
            Assert.True(check.Result!.Verdict < suggestion.FailOn, $"{check.Result.Verdict} in {proposal.Yaml}");
        }
    }
}
