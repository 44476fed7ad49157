using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What a vehicle's entry lacks is asked for there, and is no fault of the build.</summary>
public sealed class UnrecordedRadioTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("tansy-rear-amplifier")]
    [InlineData("tansy-active-two-way")]
    public void A_build_that_names_a_radio_of_which_nothing_is_recorded_is_judged(string build)
    {
        var outcome = Without("factory_source", build);

        Assert.DoesNotContain(outcome.Problems, p => p.Severity == FitCheck.Foundation.Problems.Severity.Error);
        var before = Check(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]), build).Result!.Builds[0].Findings
            .Where(f => f.Status == Status.Fail).Select(f => (f.Rule, f.Position)).ToHashSet();
        var findings = outcome.Result!.Builds[0].Findings;
        Assert.DoesNotContain(findings, f => f.Status == Status.Fail && !before.Contains((f.Rule, f.Position)));
        Assert.Contains(findings, f => f.Status == Status.Measure);
        Assert.Contains(findings, f => f.Message.Contains("`factory_source` is not recorded in", StringComparison.Ordinal)
            || f.ToMeasure.Any(m => m.ToString().Contains("`factory_source` is not recorded in", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("tansy-quote")]
    [InlineData("tansy-bare-tweeter")]
    public void Which_output_feeds_a_place_is_asked_for_with_the_key_and_the_file(string build)
    {
        var findings = Without("factory_channel", build).Result!.Builds[0].Findings;

        var fed = findings.Where(f => f.Rule == "power/driver-without-output").ToList();
        Assert.NotEmpty(fed);
        Assert.All(fed, f => Assert.Equal(Status.Measure, f.Status));
        var text = Text(build);
        Assert.Contains("Write it as `factory_channel` into", text, StringComparison.Ordinal);
        Assert.Contains("vehicles/tansy-hatch.yaml", text, StringComparison.Ordinal);
    }

    private string Text(string build)
    {
        using var text = new StringWriter { NewLine = "\n" };
        FitCheck.Reports.ReportList.Find("text")!.Write(Without("factory_channel", build).Result!,
            FitCheck.Reports.Format.ReportOptions.Default, text);
        return string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private CheckOutcome Without(string key, string build)
    {
        _folder.Write("vehicles/tansy-hatch.yaml", string.Join('\n',
            File.ReadLines(RepositoryRoot.Of("catalog", "vehicles", "tansy-hatch.yaml"))
            .Where(l => !l.TrimStart().StartsWith(key + ":", StringComparison.Ordinal))) + "\n");
        return Check(new Folders([RepositoryRoot.Of("catalog"), _folder.Path], [RepositoryRoot.Of("rules")]), build);
    }

    private static CheckOutcome Check(Folders folders, string build) =>
        new FitCheck.Cli.Commands.Once(folders, ValidationCache.Nothing).Check([RepositoryRoot.Of("catalog", "builds", build + ".yaml")]);
}
