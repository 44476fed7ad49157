using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>What lint keeps of one file of a catalog: how the file looks from outside, and its entries, each under the digest of its text.</summary>
/// <param name="Path">Where it is.</param>
/// <param name="Kind">The kind of its entries.</param>
/// <param name="Stamp">How it looked; null when it was too young to be sure that a later change would show.</param>
/// <param name="Entries">In the order of the file.</param>
internal sealed record FileNotes(string Path, string Kind, FileStamp? Stamp, IReadOnlyList<(string Digest, EntryNote Note)> Entries)
{
    // 128 bits, in hexadecimal.
    private const int DigestLength = 32;

    /// <summary>What an entry is known by.</summary>
    public static string DigestOf(EntryText text) => Remembered.Key([text.InList ? (byte)1 : (byte)0], text.Text.ToArray())[..DigestLength];

    public void Write(NoteWriter to)
    {
        to.Write(Path);
        to.WriteShared(Kind);
        to.Write(Entries.Count > 0 ? Entries[0].Note.Place.File : "");
        to.Write(Stamp is not null);
        Stamp?.Write(to);
        to.Write7BitEncodedInt(Entries.Count);
        foreach (var (digest, note) in Entries)
        {
            to.Write(digest);
            to.Write7BitEncodedInt(note.Place.Line);
            note.Write(to);
        }
    }

    public static FileNotes Read(NoteReader from)
    {
        var (path, kind, file) = (from.ReadString(), from.ReadShared(), from.ReadString());
        var stamp = from.ReadBoolean() ? FileStamp.Read(from) : null;
        var entries = new (string, EntryNote)[from.Read7BitEncodedInt()];
        for (var i = 0; i < entries.Length; i++)
            entries[i] = (from.ReadString(), EntryNote.Read(from, kind, new Location(file, from.Read7BitEncodedInt(), 1)));
        return new FileNotes(path, kind, stamp, entries);
    }
}
