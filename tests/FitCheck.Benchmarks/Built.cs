namespace FitCheck.Benchmarks;

/// <summary>What the solution's build left, in the configuration of this program.</summary>
internal static class Built
{
    private static readonly DirectoryInfo Here = new(AppContext.BaseDirectory);

    /// <summary>A path below the repository's root, as seen from tests/FitCheck.Benchmarks/bin/CONFIGURATION/net10.0.</summary>
    public static string Path(params string[] parts) =>
        System.IO.Path.GetFullPath(System.IO.Path.Combine([Here.FullName, "..", "..", "..", "..", "..", .. parts]));

    /// <summary>The executable of a project.</summary>
    public static string Program(string folder, string project, string? name = null) =>
        Path(folder, project, "bin", Here.Parent!.Name, Here.Name, (name ?? project) + (OperatingSystem.IsWindows() ? ".exe" : ""));
}
