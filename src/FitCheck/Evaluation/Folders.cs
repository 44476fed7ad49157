namespace FitCheck.Evaluation;

/// <summary>The folders that a run reads; later ones overlay earlier ones.</summary>
internal sealed record Folders(IReadOnlyList<string> Catalog, IReadOnlyList<string> Rules)
{
    /// <summary>Those beside the program.</summary>
    public static Folders BesideProgram { get; } = new([Beside("catalog")], [Beside("rules")]);

    private static string Beside(string name) => Path.Combine(AppContext.BaseDirectory, name).Replace('\\', '/');
}
