namespace FitCheck.Foundation.Files;

/// <summary>Where a path leads when every link on the way is followed.</summary>
internal static class RealPath
{
    // As many as Linux follows.
    private const int MostLinks = 40;

    /// <summary>The path without any link in it; null when links lead round in a circle.</summary>
    public static string? Of(string path)
    {
        var full = Path.GetFullPath(path);
        var real = Path.GetPathRoot(full)!;
        var rest = new Stack<string>();
        Push(full[real.Length..]);
        for (var links = 0; rest.TryPop(out var part);)
        {
            if (part == "..")
            {
                real = Path.GetDirectoryName(real) ?? real;
                continue;
            }
            var next = Path.Join(real, part);
            if (new FileInfo(next).LinkTarget is not { } target)
            {
                real = next;
                continue;
            }
            if (++links > MostLinks)
                return null;
            if (Path.IsPathRooted(target))
                real = Path.GetPathRoot(target)!;
            Push(target);
        }
        return real;

        void Push(string more)
        {
            var parts = more.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries);
            for (var i = parts.Length - 1; i >= 0; i--)
            {
                if (parts[i] != ".")
                    rest.Push(parts[i]);
            }
        }
    }

    /// <summary>True when a real path is a folder or stands somewhere below it.</summary>
    public static bool IsWithin(string path, string folder) =>
        path == folder
            || path.StartsWith(Path.EndsInDirectorySeparator(folder) ? folder : folder + Path.DirectorySeparatorChar,
            StringComparison.Ordinal);
}
