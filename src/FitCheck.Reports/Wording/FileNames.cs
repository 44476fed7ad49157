namespace FitCheck.Reports.Wording;

/// <summary>How machines are told which file is meant: from the folder in which the program runs, where that is possible.</summary>
internal static class FileNames
{
    /// <summary>With `/`, from the root when it lies below it; else as it was given.</summary>
    public static string In(string? root, string file)
    {
        var plain = file.Replace('\\', '/');
        while (plain.StartsWith("./", StringComparison.Ordinal))
            plain = plain[2..];
        if (root is null || !Path.IsPathRooted(file))
            return plain;
        var folder = root.Replace('\\', '/').TrimEnd('/') + "/";
        return plain.StartsWith(folder, StringComparison.Ordinal) ? plain[folder.Length..] : plain;
    }

    /// <summary>
    /// With `/`, from the root or else from its catalog or rules on: no folder of the machine shows, since the name has to be alike on
    /// every one.
    /// </summary>
    public static string Alike(string? root, string file) => Figures.ShortFile(In(root, file));

    /// <summary>As it is typed on a command line.</summary>
    public static string Word(string file) => file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file;

    /// <summary>As a URI reference: percent-encoded, and absolute for a rooted path.</summary>
    public static string Uri(string? root, string file)
    {
        var path = In(root, file);
        var encoded = string.Join('/', path.Split('/').Select(System.Uri.EscapeDataString));
        return !Path.IsPathRooted(path) ? encoded : "file://" + (encoded.StartsWith('/') ? encoded : "/" + encoded);
    }
}
