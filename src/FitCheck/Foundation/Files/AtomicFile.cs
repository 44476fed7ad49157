namespace FitCheck.Foundation.Files;

/// <summary>
/// Writes a file whole or not at all: beside its place first, and then in one step there, so that no reader ever sees half of it.
/// </summary>
internal static class AtomicFile
{
    private const string Beside = ".fitcheck-", Ending = ".part";

    /// <summary>Writes the file; one that exists keeps its permissions.</summary>
    /// <param name="path">In full, in a folder that exists.</param>
    /// <param name="bytes">What is to be in it.</param>
    /// <param name="replace">False to leave a file alone that is there already.</param>
    /// <exception cref="IOException">The folder is missing, the disk refuses it, or a file is there that is not to be replaced; what was
    /// there before is still there.</exception>
    /// <exception cref="UnauthorizedAccessException">Writing there is not allowed.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> bytes, bool replace = true) =>
        Write(path, file => file.Write(bytes.Span), replace);

    /// <summary>Writes the file piece by piece; one that exists keeps its permissions. A device or a pipe is written to directly.</summary>
    public static void Write(string path, Action<FileStream> write, bool replace = true)
    {
        ArgumentNullException.ThrowIfNull(write);
        if (SameFile.IsOpened(path) || SameFile.Key(path) is null)
        {
            // A device or a pipe is written to; a file can't take its place.
            using var there = new FileStream(path, FileMode.Open, FileAccess.Write);
            write(there);
            // Of a file that is open nothing of what it had stays behind the end.
            if (SameFile.Key(path) is not null)
                there.SetLength(there.Position);
            return;
        }
        var folder = Path.GetDirectoryName(path) ?? ".";
        var beside = Path.Combine(folder, PassingName.Of(Beside) + Path.GetRandomFileName() + Ending);
        try
        {
            using (var file = File.Create(beside))
                write(file);
            if (!OperatingSystem.IsWindows() && File.Exists(path))
                File.SetUnixFileMode(beside, File.GetUnixFileMode(path));
            File.Move(beside, path, replace);
            Sweep(folder);
        }
        catch (ArgumentOutOfRangeException e)
        {
            // What the runtime makes of a file that grows beyond what the disk takes.
            TryDelete(beside);
            throw new IOException("the file is too large", e);
        }
        catch
        {
            TryDelete(beside);
            throw;
        }
    }

    /// <summary>Where a link leads in the end; the path itself when it is none, or when that can't be told.</summary>
    public static string Target(string path)
    {
        try
        {
            return File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return path;
        }
    }

    /// <summary>True for a link that leads elsewhere, though there may be nothing.</summary>
    public static bool IsLink(string path)
    {
        try
        {
            return new FileInfo(path).LinkTarget is not null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    // What runs left that were killed while they wrote.
    private static void Sweep(string folder)
    {
        try
        {
            foreach (var file in Directory.EnumerateFiles(folder, Beside + "*" + Ending))
            {
                if (PassingName.IsLeft(Path.GetFileName(file), Beside))
                    TryDelete(file);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The folder may be written and not listed.
        }
    }

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It was never written, or nobody takes it for the file itself.
        }
    }
}
