using System.Text;
using FitCheck.Foundation.Files;

namespace FitCheck.Cli.Output;

/// <summary>
/// Writes what a command was asked to write: a file whole or not at all; says in words why not. The only place of the program that writes
/// files for its user.
/// </summary>
internal static class OutputFile
{
    /// <summary>
    /// Writes a report. What a link leads to is written, not the link; a file that exists is replaced and keeps its permissions.
    /// </summary>
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? Report(string path, string text) => Written(path, Bytes(text), replace: true, throughLinks: true);

    /// <summary>
    /// Writes an input in place of the one that is there. A link is left alone: what it leads to belongs to somebody else, or is shared.
    /// </summary>
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? Edited(string path, byte[] bytes) => Link(path) ?? Written(path, bytes, replace: true, throughLinks: false);

    /// <inheritdoc cref="Edited(string, byte[])"/>
    public static string? Edited(string path, string text) => Edited(path, Bytes(text));

    /// <summary>Writes a file that is not there yet, also when one has come since that was asked.</summary>
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? New(string path, string text)
    {
        if (Taken(path) is { } taken)
            return taken;
        return Written(path, Bytes(text), replace: false, throughLinks: false) is { } failed ? Taken(path) ?? failed : null;
    }

    /// <summary>
    /// A sentence when something has that name already; null when nothing has, or a device, which takes what it is given.
    /// </summary>
    public static string? Taken(string path) =>
        Directory.Exists(path) ? $"{path} is a folder; name a file"
            : Link(path) ?? (File.Exists(path) && SameFile.Key(path) is not null ? $"{path} exists; it is kept as it is" : null);

    /// <summary>A sentence when the path is a link, which nothing is edited through; null when it is none, or leads to a device.</summary>
    public static string? Link(string path) =>
        AtomicFile.IsLink(path) && SameFile.Key(path) is not null
            ? $"{path} is a link to {AtomicFile.Target(Path.GetFullPath(path))}; it is kept as it is, name that file itself" : null;

    private static string? Written(string path, byte[] bytes, bool replace, bool throughLinks)
    {
        var full = Path.GetFullPath(path);
        try
        {
            if (Directory.Exists(full))
                return $"{path} is a folder; name a file";
            // Opened by its name, a file behind it would be written from its beginning again.
            if (SameFile.IsStandardOutput(full))
            {
                using var output = StandardStreams.OutputBytes();
                output.Write(bytes);
            }
            else
            {
                var leadsOn = throughLinks && SameFile.Key(full) is not null && !SameFile.IsOpened(full);
                AtomicFile.Write(leadsOn ? AtomicFile.Target(full) : full, bytes, replace);
            }
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return $"{path} can't be written: "
                + $"{Cause(e)}";
        }
    }

    private static string Cause(Exception e) => e switch
    {
        DirectoryNotFoundException => "there is no such folder",
        UnauthorizedAccessException => "no permission",
        _ => "the disk refused it",
    };

    private static byte[] Bytes(string text) => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text);
}
