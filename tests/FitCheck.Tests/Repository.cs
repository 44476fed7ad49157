namespace FitCheck.Tests;

/// <summary>The repository that the tests were built from.</summary>
public static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>A path below the root.</summary>
    public static string PathTo(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>C# sources below a folder of the root, without what the build leaves there, as paths relative to the root with `/`.</summary>
    public static IEnumerable<string> Sources(string folder) =>
        Directory.EnumerateFiles(PathTo(folder), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Where(file => !file.Contains("/bin/") && !file.Contains("/obj/"))
            .Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FitCheck.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests must run from inside the repository.");
        return folder.FullName;
    }
}
