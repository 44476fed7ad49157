namespace FitCheck.Foundation.Problems;

/// <summary>
/// How a path is told: files that come with the program by their place beside it, others as the caller named them; always with `/`.
/// </summary>
internal static class ShownPath
{
    private static readonly string Beside = AppContext.BaseDirectory.Replace('\\', '/').TrimEnd('/') + "/";

    public static string Of(string path)
    {
        var plain = path.Replace('\\', '/');
        return plain.StartsWith(Beside, StringComparison.Ordinal) ? plain[Beside.Length..] : plain;
    }
}
