using System.Globalization;
using System.Text;

namespace FitCheck.Cli.Revisions;

/// <summary>
/// Writes folders of a revision's tree into a folder, byte for byte as git keeps them. `git archive` would leave out and rewrite what the
/// revision's own `.gitattributes` says, and these come with the change that is to be judged.
/// </summary>
internal static class RevisionTree
{
    private const string Plain = "100", Link = "120000";

    /// <summary>Why it can't be laid out; null when all is there.</summary>
    /// <param name="top">The top of the repository.</param>
    /// <param name="tree">The revision's tree.</param>
    /// <param name="paths">The folders of it that are wanted.</param>
    /// <param name="folder">Where they are written.</param>
    /// <param name="writing">Does what writes there.</param>
    public static string? LayOut(string top, string tree, IReadOnlyList<string> paths, string folder, Action<Action> writing)
    {
        using var listed = new MemoryStream();
        if (!Git.Into(listed, top, ["ls-tree", "-r", "-z", tree, .. paths]))
            return "git can't read it";
        var entries = Encoding.UTF8.GetString(listed.ToArray()).Split('\0', StringSplitOptions.RemoveEmptyEntries).Select(Entry.Of)
            .Where(e => e.Mode.StartsWith(Plain, StringComparison.Ordinal) || e.Mode == Link).ToList();
        // No commit made by git has such a name, but a tree can be written by hand.
        if (entries.Find(e => !IsBelow(e.Path)) is { Path: { } bad })
            return $"the file `{bad}` leads out of it";
        try
        {
            foreach (var path in paths)
                writing(() => Directory.CreateDirectory(Path.Combine(folder, path)));
            return Write(top, entries, folder, writing) ? null : "git can't read it";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"it can't be laid out in {folder}: two files of it have one name, a name is none here, or the disk refuses it";
        }
    }

    private static bool Write(string top, List<Entry> entries, string folder, Action<Action> writing)
    {
        // Links come last, so that nothing is written through one; where they lead is looked at when the folder is read.
        var files = entries.Where(e => e.Mode != Link).Concat(entries.Where(e => e.Mode == Link)).ToList();
        return Git.Ask(top, ["cat-file", "--batch"], files.Select(f => f.Object), output =>
        {
            foreach (var file in files)
            {
                // `OBJECT blob SIZE`, the bytes, a line feed.
                if (Line(output).Split(' ') is not [_, "blob", var size]
                    || !long.TryParse(size, NumberStyles.None, CultureInfo.InvariantCulture, out var length))
                    return false;
                writing(() => Write(file, Path.Combine(folder, file.Path), output, length));
                if (output.ReadByte() != '\n')
                    return false;
            }
            return true;
        });
    }

    private static void Write(Entry file, string path, Stream output, long length)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        if (file.Mode != Link)
        {
            using var written = new FileStream(path, FileMode.CreateNew);
            Copy(output, written, length);
            return;
        }
        using var target = new MemoryStream();
        Copy(output, target, length);
        var to = Encoding.UTF8.GetString(target.ToArray());
        if (to.Length == 0 || to.Contains('\0', StringComparison.Ordinal))
            throw new IOException("a link to no name");
        File.CreateSymbolicLink(path, to);
    }

    private static bool IsBelow(string path) =>
        path.Split(Path.DirectorySeparatorChar, '/').All(part => part is not ("" or "." or "..")) && !Path.IsPathRooted(path);

    private static string Line(Stream from)
    {
        var line = new StringBuilder();
        for (var next = from.ReadByte(); next is >= 0 and not '\n'; next = from.ReadByte())
            line.Append((char)next);
        return line.ToString();
    }

    private static void Copy(Stream from, Stream to, long length)
    {
        var buffer = new byte[1 << 16];
        while (length > 0)
        {
            var read = from.Read(buffer, 0, (int)Math.Min(buffer.Length, length));
            if (read == 0)
                throw new EndOfStreamException();
            to.Write(buffer, 0, read);
            length -= read;
        }
    }

    private readonly record struct Entry(string Mode, string Object, string Path)
    {
        // `MODE TYPE OBJECT`, a tab, the path.
        public static Entry Of(string line)
        {
            var tab = line.IndexOf('\t', StringComparison.Ordinal);
            var words = line[..tab].Split(' ');
            return new Entry(words[0], words[2], line[(tab + 1)..]);
        }
    }
}
