using FitCheck.Charts;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;
using Xunit;

namespace FitCheck.Tests.Entries;

/// <summary>
/// Two faces that meet stand at an angle of 0° to 180°; at 90° and more a spacer has no thickness in the middle that points into the panel,
/// and turned the other way it is another spacer's hand, not a negative angle (elementary geometry, worked by hand).
/// </summary>
public sealed class TiltTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("90 deg")]
    [InlineData("-360 deg")]
    [InlineData("-8 deg")]
    [InlineData("360/3 deg")]
    [InlineData("88 deg ± 3 deg")]
    public void One_that_no_spacer_has_is_a_slip_of_form_for_every_command(string tilt)
    {
        var (build, folders, spacer, line) = Written(tilt);

        Assert.All(Told(build, folders), told =>
            Assert.Contains(told,
                p => p is { Severity: Severity.Error, At: { Line: var at, Column: 7 } } && at == line && p.At.File == spacer
                    && p.Message.Contains($"found `{tilt}`", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("0 deg")]
    [InlineData("8 deg ± 10 deg")]
    [InlineData("89.5 deg")]
    public void One_that_could_be_is_for_the_rules_to_judge(string tilt)
    {
        var (build, folders, _, _) = Written(tilt);

        Assert.All(Told(build, folders), told => Assert.DoesNotContain(told, p => p.Severity == Severity.Error && p.Rule is null));
    }

    private (string Build, Folders Folders, string Spacer, int Line) Written(string tilt)
    {
        var text = Trial.Entry("adapters/spacer-165-tilt-12.yaml").Replace("tilt: 12 deg", "tilt: " + tilt, StringComparison.Ordinal);
        var spacer = _folder.Write("shop/adapters/spacer-165-tilt-12.yaml", text).Replace('\\', '/');
        var build = _folder.Write("b.yaml", """
            kind: build
            name: One front door
            vehicle: tansy-hatch
            accepts: [cut-wires, drill, enlarge-holes, trim-parts]
            fit:
              - {at: [front-door-left], driver: orrin-w165-4, adapter: spacer-165-tilt-12}
            """);
        return (build, new Folders([RepositoryRoot.Of("catalog"), _folder.Of("shop").Replace('\\', '/')], [RepositoryRoot.Of("rules")]),
            spacer, text.Split('\n').ToList().FindIndex(l => l.StartsWith("tilt:", StringComparison.Ordinal)) + 1);
    }

    private static IReadOnlyList<IReadOnlyList<Problem>> Told(string build, Folders folders) =>
    [
        new Once(folders, ValidationCache.Nothing).Check([build]).Problems,
        Lint.Run([build], folders, ValidationCache.Nothing).Problems,
        new Once(folders, ValidationCache.Nothing).Chart(new ChartSlice { Vehicles = ["tansy-hatch"] }).Problems,
        new Once(folders, ValidationCache.Nothing).Suggest(build, new SuggestOptions { Time = TimeSpan.FromSeconds(1) }).Problems,
        new Once(folders, ValidationCache.Nothing).List([build], Tax.NotAsked).Problems,
    ];
}
