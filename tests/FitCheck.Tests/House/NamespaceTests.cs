using FitCheck.Findings;
using NetArchTest.Rules;
using Xunit;

namespace FitCheck.Tests.House;

public class NamespaceTests
{
    /// <summary>What each folder of the library may use. A folder that is not named here stands above all: it may use any of these, and none of them it.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Yaml"] = [],
        ["Schemas"] = ["Yaml"],
        ["Catalog"] = ["Yaml", "Schemas"],
        ["Builds"] = ["Yaml", "Schemas", "Catalog"],
        ["Facts"] = ["Yaml", "Schemas", "Catalog", "Builds", "Findings", "Drawings"],
        ["Rules"] = ["Yaml", "Schemas", "Catalog", "Builds", "Facts", "Findings", "Drawings"],
        // What a report is given: findings with their drawings, and drawings with their statuses.
        ["Findings"] = ["Yaml", "Catalog", "Builds", "Facts", "Drawings"],
        ["Drawings"] = ["Findings"],
    };

    public static TheoryData<string> Folders => [.. MayUse.Keys];

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_uses_only_what_it_may(string folder)
    {
        var library = Types.InAssembly(typeof(Finding).Assembly);
        var all = library.GetTypes().Select(t => Folder(t.Namespace)).OfType<string>().Distinct();

        var offenders =
            from other in all
            where other != folder && !MayUse[folder].Contains(other)
            let result = library.That().ResideInNamespaceMatching($@"^FitCheck\.{folder}(\.|$)").ShouldNot().HaveDependencyOn($"FitCheck.{other}").GetResult()
            from type in result.FailingTypeNames ?? []
            select $"{type} uses FitCheck.{other}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void The_test_sees_a_use()
    {
        var result = Types.InAssembly(typeof(Finding).Assembly).That().ResideInNamespace("FitCheck.Findings").ShouldNot().HaveDependencyOn("FitCheck.Yaml").GetResult();

        Assert.Contains(typeof(Finding).FullName, result.FailingTypeNames);
    }

    private static string? Folder(string? space) =>
        space?.Split('.') is ["FitCheck", var folder, ..] ? folder : null;
}
