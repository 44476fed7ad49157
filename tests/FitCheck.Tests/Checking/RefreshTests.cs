using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>
/// Files that change while a checker is open: a good state takes over, of a bad one the reasons are told and the last good one stays.
/// </summary>
public sealed class RefreshTests : IDisposable
{
    private const string Driver = "drivers/orrin-c165.yaml";
    private static readonly BuildSource Build = BuildSource.File(OpenCheckers.Build("front-rear-two-amps"));

    private readonly TemporaryFolder _catalog = new();
    private readonly TemporaryFolder _rules = new();
    private readonly Checker _checker;

    public RefreshTests()
    {
        _catalog.Write(Driver, Priced("60.00"));
        var opened =
            Checker.Open(
                new CheckerOptions
                {
                    Catalogs = [RepositoryRoot.Of("catalog"), _catalog.Path],
                    Rules = [RepositoryRoot.Of("rules"), _rules.Path]
                });
        Assert.Empty(opened.Problems);
        _checker = opened.Checker!;
    }

    public void Dispose()
    {
        _catalog.Dispose();
        _rules.Dispose();
    }

    [Fact]
    public void A_price_that_changes_changes_the_total()
    {
        var before = Total();
        _catalog.Write(Driver, Priced("67.50"));

        Assert.Equal(before, Total());
        var outcome = _checker.Changed([_catalog.Of(Driver)]);

        Assert.Equal((true, true, 0), (outcome.HasChanged, outcome.IsSound, outcome.Problems.Count));
        // One pack of two for the rear doors: 67.50 less 60.00.
        Assert.Equal(before + 7.50m, Total());
    }

    [Fact]
    public void A_checker_that_was_refreshed_says_what_one_says_that_was_opened_then()
    {
        _catalog.Write(Driver, Priced("67.50").Replace("\nprice:", "\n\n# moved down\nprice:", StringComparison.Ordinal));
        _catalog.Write("drivers/another-c165.yaml",
            Priced("50.00").Replace("id: orrin-c165", "id: another-c165", StringComparison.Ordinal));
        _rules.Write("mount/grille-too-near.yaml", "id: mount/grille-too-near\nreason: \"The grilles are stiff.\"\noff: true\n");
        Assert.True(_checker.Refresh().HasChanged);

        var opened =
            Checker.Open(
                new CheckerOptions
                {
                    Catalogs = [RepositoryRoot.Of("catalog"), _catalog.Path],
                    Rules = [RepositoryRoot.Of("rules"), _rules.Path]
                }).Checker!;
        var builds = BuildSource.Files(OpenCheckers.Builds);

        Assert.Equal(opened.CatalogDigest, _checker.CatalogDigest);
        Assert.Equal(OpenCheckers.Json(opened.Check(builds)), OpenCheckers.Json(_checker.Check(builds)));
    }

    [Fact]
    public void Where_no_byte_differs_nothing_changes()
    {
        _catalog.Write(Driver, Priced("60.00"));

        var outcome = _checker.Refresh();

        Assert.Equal((false, true), (outcome.HasChanged, outcome.IsSound));
    }

    [Fact]
    public void A_broken_file_keeps_the_last_good_state_and_is_told()
    {
        var before = OpenCheckers.Json(_checker.Check([Build]));
        _catalog.Write(Driver, Priced("60.00").Replace("price: 60.00 EUR", "price: sixty", StringComparison.Ordinal));

        for (var twice = 0; twice < 2; twice++)
        {
            var outcome = _checker.Refresh();

            Assert.Equal((false, false), (outcome.HasChanged, outcome.IsSound));
            var problem = Assert.Single(outcome.Problems);
            Assert.EndsWith(Driver, problem.At.File, StringComparison.Ordinal);
            Assert.Contains("sixty", problem.Message, StringComparison.Ordinal);
            Assert.Equal(before, OpenCheckers.Json(_checker.Check([Build])));
        }
        _catalog.Write(Driver, Priced("60.00"));
        Assert.Equal((false, true), (_checker.Refresh() is var mended ? mended.HasChanged : default, mended.IsSound));
    }

    [Fact]
    public void A_reference_that_a_change_leaves_without_its_end_is_told()
    {
        using var catalog = new TemporaryFolder();
        catalog.Write("drivers/lone-w165.yaml",
            Trial.Entry("drivers/orrin-w165-4.yaml").Replace("id: orrin-w165-4", "id: lone-w165", StringComparison.Ordinal));
        catalog.Write("sets/lone-set.yaml",
            Trial.Entry("sets/orrin-set-165.yaml").Replace("id: orrin-set-165", "id: lone-set", StringComparison.Ordinal)
                .Replace("woofer: orrin-w165-4", "woofer: lone-w165", StringComparison.Ordinal));
        var checker = OpenCheckers.Opened(RepositoryRoot.Of("catalog"), catalog.Path);
        File.Delete(catalog.Of("drivers/lone-w165.yaml"));

        var outcome = checker.Changed([catalog.Of("drivers/lone-w165.yaml")]);

        Assert.False(outcome.IsSound);
        Assert.Contains("lone-w165", Assert.Single(outcome.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_that_changes_judges_from_then_on()
    {
        Assert.Contains(_checker.Judged(Build).Findings, f => f.Rule == "mount/grille-too-near");
        _rules.Write("mount/grille-too-near.yaml", "id: mount/grille-too-near\nreason: \"The grilles are stiff.\"\noff: true\n");

        Assert.True(_checker.Changed([_rules.Of("mount/grille-too-near.yaml")]).HasChanged);

        Assert.DoesNotContain(_checker.Judged(Build).Findings, f => f.Rule == "mount/grille-too-near");
    }

    [Fact]
    public void A_broken_rule_keeps_the_last_good_state_and_is_told()
    {
        _rules.Write("mount/grille-too-near.yaml", "id: mount/grille-too-near\nreason: \"?\"\nofff: true\n");

        var outcome = _checker.Refresh();

        Assert.Equal((false, false), (outcome.HasChanged, outcome.IsSound));
        Assert.Contains(outcome.Problems, p => p.At.File.EndsWith("grille-too-near.yaml", StringComparison.Ordinal));
        Assert.Contains(_checker.Judged(Build).Findings, f => f.Rule == "mount/grille-too-near");
    }

    [Fact]
    public void Paths_that_bear_on_nothing_are_passed_over()
    {
        _catalog.Write(Driver, Priced("67.50"));

        Assert.False(_checker.Changed([Path.Combine(Path.GetTempPath(), "elsewhere.yaml"), "a\0b"]).HasChanged);
        Assert.True(_checker.Changed([Path.GetDirectoryName(_catalog.Path)!]).HasChanged);
    }

    private static string Priced(string price)
    {
        var entry = Trial.Entry(Driver);
        Assert.Matches(@"price: \S+ EUR", entry);
        return Regex.Replace(entry, @"price: \S+ EUR", $"price: {price} EUR");
    }

    private decimal Total() => Assert.Single(_checker.Judged(Build).Totals).Amount;
}
