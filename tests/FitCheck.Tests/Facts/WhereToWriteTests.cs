using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What is missing is asked for by its key, at the entry that lacks it.</summary>
public sealed class WhereToWriteTests
{
    [Theory]
    [InlineData("      grille_gap: 54 mm ± 1 mm (measured)\n", "front-door-left", "mount/grille-too-near", "mounting.grille_gap")]
    [InlineData("      grille_gap: 54 mm ± 1 mm (measured)\n", "front-door-right", "mount/grille-too-near", "mounting.grille_gap")]
    [InlineData("    airbag_near: false\n", "front-door-left", "seal/airbag-near", "airbag_near")]
    public void A_datum_of_a_position_is_to_be_written_there_and_that_of_a_mirrored_one_at_the_other_side(string line, string position,
        string rule, string key)
    {
        var vehicle = Trial.Entry("vehicles/tansy-hatch.yaml");
        var at = vehicle.IndexOf(line, StringComparison.Ordinal);
        var how = Assert.Single(Asked("tansy-door-swap", position, rule, "vehicles/tansy-hatch.yaml", vehicle.Remove(at, line.Length))).How;
        Assert.Contains($"Write it as `{key}` into ", how, StringComparison.Ordinal);
        Assert.EndsWith("vehicles/tansy-hatch.yaml, position front-door-left.", how, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("spacer-165-tansy-18", "cable_exit: true\n", "mount/cable-exit-missing", "cable_exit")]
    [InlineData("spacer-165-tansy-18", "thickness: 18 mm\n", "mount/too-deep", "thickness")]
    public void A_datum_of_a_part_is_to_be_written_into_its_file(string part, string line, string rule, string key)
    {
        var file = $"adapters/{part}.yaml";
        var without = Trial.Entry(file).Replace(line, "", StringComparison.Ordinal);
        Assert.NotEqual(Trial.Entry(file), without);
        var how = Assert.Single(Asked("tansy-door-swap", "front-door-left", rule, file, without)).How;
        Assert.Contains($"Write it as `{key}` into ", how, StringComparison.Ordinal);
        Assert.EndsWith(file + ".", how, StringComparison.Ordinal);
    }

    private static IReadOnlyList<ToMeasure> Asked(string build, string position, string rule, string file, string entry) =>
        Assert.Single(Trial.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", build + ".yaml")), (file, entry)).Findings,
            f => f.Rule == rule && f.Position == position).ToMeasure;
}
