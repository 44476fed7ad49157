using System.Buffers.Binary;
using FitCheck.Catalog;
using FitCheck.Facts.Entries;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.LintCache;

/// <summary>
/// The note of one entry among those of its file, read when asked for: an entry that hasn't changed is looked at for its id, and copied. It
/// has its size and its line (4 bytes each), the digest of the entry's text (16), what it tells of (1), its id, the number and the value of
/// each figure, and then the rest.
/// </summary>
internal readonly record struct CachedEntry(CachedFile File, int Start)
{
    private const int LineAt = sizeof(int);
    private const int DigestAt = LineAt + sizeof(int);
    private const int TellsAt = DigestAt + EntryDigest.Bytes;
    private const int IdAt = TellsAt + 1;

    [Flags]
    private enum Tells : byte
    {
        None = 0,
        Problems = 1,
        SlipsOfForm = 2,
        Judged = 4,
        References = 8,
        Articles = 16,
    }

    /// <summary>All of it, as it is written.</summary>
    public ReadOnlySpan<byte> Bytes => File.Entries.Span.Slice(Start, Size);

    /// <summary>How many bytes it has.</summary>
    public int Size => BinaryPrimitives.ReadInt32LittleEndian(File.Entries.Span[Start..]);

    /// <summary>The line of the file in which the entry begins.</summary>
    public int Line => BinaryPrimitives.ReadInt32LittleEndian(Bytes[LineAt..]);

    public EntryDigest Digest => EntryDigest.Of(Bytes.Slice(DigestAt, EntryDigest.Bytes));

    public string Id => From(IdAt).Text();

    /// <summary>True when something is wrong with it by itself.</summary>
    public bool HasProblems => Kept.HasFlag(Tells.Problems);

    /// <summary>True when the rules find something implausible in it alone.</summary>
    public bool IsDoubted => Kept.HasFlag(Tells.Judged);

    public bool HasReferences => Kept.HasFlag(Tells.References);

    /// <summary>True for a part that has article numbers.</summary>
    public bool HasArticles => Kept.HasFlag(Tells.Articles);

    /// <summary>An entry with a slip of form is not judged before that is mended.</summary>
    public bool IsMalformed => Kept.HasFlag(Tells.SlipsOfForm);

    private Tells Kept => (Tells)Bytes[TellsAt];

    /// <summary>False for an entry in whose note a place may be told in words.</summary>
    public bool MayMove => !HasProblems && !IsDoubted;

    /// <summary>Writes the note of an entry.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="note">The note.</param>
    /// <param name="digest">What the entry's text is known by.</param>
    /// <param name="classes">Where its figures find the numbers of their classes.</param>
    public static void Write(CacheWriter to, ExaminedEntry note, EntryDigest digest, FigureClasses classes)
    {
        var (start, text) = (to.Length, new CacheText(note.Place));
        to.Write(0);
        to.Write(note.Place.Line);
        digest.Write(to);
        to.Write((byte)(If(note.Problems.Count > 0, Tells.Problems) | If(note.Problems.Any(ExaminedEntry.IsOfForm), Tells.SlipsOfForm) | If(
            note.Judged.Count > 0, Tells.Judged)
            | If(note.References.Count > 0, Tells.References) | If(note.Articles.Count > 0, Tells.Articles)));
        to.Write(note.Id);
        to.Write7BitEncodedInt(note.Samples.Count);
        foreach (var sample in note.Samples)
        {
            to.Write7BitEncodedInt(classes.NumberOf(sample.Within));
            to.Write(sample.Value);
        }
        to.Write(note.Name);
        text.Write(to, note.IdAt);
        var name = note.Name;
        foreach (var sample in note.Samples)
        {
            text.Write(to, sample.At);
            to.Write(sample.WrittenIn?.Symbol ?? "");
            to.Write(sample.Name == name ? "" : sample.Name);
            name = sample.Name;
        }
        to.Write7BitEncodedInt(note.References.Count);
        foreach (var reference in note.References)
        {
            text.Write(to, reference.Target);
            to.Write(reference.Kind ?? "");
            to.Write7BitEncodedInt(reference.Positions.Count);
            foreach (var position in reference.Positions)
                text.Write(to, position);
        }
        to.Write7BitEncodedInt(note.Positions.Count);
        foreach (var position in note.Positions)
            to.Write(position);
        to.Write7BitEncodedInt(note.Articles.Count);
        foreach (var article in note.Articles)
            text.Write(to, article);
        text.Write(to, note.Problems);
        text.Write(to, note.Judged);
        BinaryPrimitives.WriteInt32LittleEndian(to.From(start), to.Length - start);

        static Tells If(bool holds, Tells tells) => holds ? tells : Tells.None;
    }

    /// <summary>Writes the same for the entry at a line of its file, where it may have moved.</summary>
    public void Write(CacheWriter to, int line)
    {
        var start = to.Length;
        to.Write(Bytes);
        BinaryPrimitives.WriteInt32LittleEndian(to.From(start)[LineAt..], line);
    }

    /// <summary>The classes of its figures and their values, in their order.</summary>
    public SampleReader Samples()
    {
        var from = From(IdAt);
        from.SkipText();
        return new SampleReader(from);
    }

    /// <summary>The whole note.</summary>
    public ExaminedEntry Open(FigureClasses classes)
    {
        var place = new Location(File.Name, Line, 1);
        var text = new CacheText(place);
        var from = From(IdAt);
        var id = from.Text();
        var figures = new (int Class, double Value)[from.Number()];
        for (var i = 0; i < figures.Length; i++)
            figures[i] = (from.Number(), from.Double());
        var (name, idAt) = (from.Text(), text.ReadLocation(ref from));
        var (samples, called) = (new FigureSample[figures.Length], name);
        for (var i = 0; i < samples.Length; i++)
        {
            var (at, unit) = (text.ReadLocation(ref from), from.Given());
            called = from.Given() ?? called;
            samples[i] = new FigureSample(classes[figures[i].Class], called, at,
                figures[i].Value)
            { WrittenIn = unit is null ? null : Unit.Find(unit) };
        }
        var references = new Reference[from.Number()];
        for (var i = 0; i < references.Length; i++)
        {
            var (target, kind) = (text.ReadLocated(ref from), from.Given());
            var within = new Located<string>[from.Number()];
            for (var k = 0; k < within.Length; k++)
                within[k] = text.ReadLocated(ref from);
            references[i] = new Reference(target, kind, within);
        }
        var positions = new string[from.Number()];
        for (var i = 0; i < positions.Length; i++)
            positions[i] = from.Text();
        var articles = new Located<string>[from.Number()];
        for (var i = 0; i < articles.Length; i++)
            articles[i] = text.ReadLocated(ref from);
        var (problems, judged) = (text.ReadProblems(ref from), text.ReadProblems(ref from));
        return new ExaminedEntry(id, name, place, idAt, problems, judged, references, positions, articles, samples);
    }

    private CacheReader From(int offset) => new(Bytes) { At = offset };

    /// <summary>One figure after the other.</summary>
    internal ref struct SampleReader
    {
        private CacheReader _from;
        private int _left;

        public SampleReader(CacheReader from)
        {
            _left = from.Number();
            _from = from;
        }

        /// <summary>The number of its class, and its value; false when there is none left.</summary>
        public bool Next(out int number, out double value)
        {
            (number, value) = (0, 0);
            if (_left == 0)
                return false;
            _left--;
            (number, value) = (_from.Number(), _from.Double());
            return true;
        }
    }
}
