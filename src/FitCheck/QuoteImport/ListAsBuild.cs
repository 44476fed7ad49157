namespace FitCheck.QuoteImport;

/// <summary>What a build is called that a seller's list was read into and nobody has saved.</summary>
internal static class ListAsBuild
{
    private const string Ending = " as a build";

    public static string NameOf(string list) => list + Ending;

    /// <summary>The list of a build that is called so; null for any other build.</summary>
    public static string? ListOf(string name) => name.EndsWith(Ending, StringComparison.Ordinal) ? name[..^Ending.Length] : null;
}
