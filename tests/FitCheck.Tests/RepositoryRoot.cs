namespace FitCheck.Tests;

/// <summary>Where the repository lies, seen from the compiled tests.</summary>
internal static class RepositoryRoot
{
    public static string Path { get; } = Find(AppContext.BaseDirectory);

    /// <summary>A path below the root.</summary>
    public static string Of(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    private static string Find(string? directory)
    {
        while (directory is not null && !File.Exists(System.IO.Path.Combine(directory, "FitCheck.sln")))
            directory = System.IO.Path.GetDirectoryName(directory);
        return directory ?? throw new InvalidOperationException("FitCheck.sln stands in no directory above the tests");
    }
}
