using System.Text.Json;

namespace FitCheck.Tests.Hostile;

/// <summary>The files that name every package by version and hash.</summary>
internal static class Locks
{
    /// <summary>
    /// Projects, by their paths below the root, that have none: their packages depend on the machine and on the SDK's patch.
    /// </summary>
    public static readonly string[] Without =
        ["src/FitCheck.Cli/Native/FitCheck.Native.csproj", "src/FitCheck.Page.Static/FitCheck.Page.Static.csproj"];

    /// <summary>All projects, by their paths below the root.</summary>
    public static IEnumerable<string> Projects() =>
        from folder in new[] { "src", "tests" }
        from file in Directory.EnumerateFiles(RepositoryRoot.Of(folder), "*.csproj", SearchOption.AllDirectories)
        select Path.GetRelativePath(RepositoryRoot.Path, file).Replace('\\', '/');

    /// <summary>The file of a project.</summary>
    public static string Of(string project) => Path.Combine(RepositoryRoot.Path, Path.GetDirectoryName(project)!, "packages.lock.json");

    /// <summary>
    /// Whether these tests were built with what is locked. A registry that lacks a version gives the next one, which a build takes and the
    /// workflow refuses.
    /// </summary>
    public static bool AreServedHere { get; } = Restored().SetEquals(
        Packages(Of("tests/FitCheck.Tests/FitCheck.Tests.csproj")).Select(p => $"{p.Name}/{p.Resolved}"));

    /// <summary>What is locked: how it came in, which version, and its hash.</summary>
    public static IEnumerable<(string Name, string Type, string Resolved, string Hash)> Packages(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(file));
        return [.. from framework in document.RootElement.GetProperty("dependencies").EnumerateObject()
            from package in framework.Value.EnumerateObject()
            let type = package.Value.GetProperty("type").GetString()
            where type != "Project"
            select (package.Name, type, package.Value.GetProperty("resolved").GetString()!,
                package.Value.GetProperty("contentHash").GetString()!)];
    }

    private static HashSet<string> Restored()
    {
        using var assets = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("tests", "FitCheck.Tests", "obj", "project.assets.json")));
        return [.. from library in assets.RootElement.GetProperty("libraries").EnumerateObject()
            where library.Value.GetProperty("type").GetString() == "package"
            select library.Name];
    }
}
