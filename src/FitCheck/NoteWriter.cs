namespace FitCheck;

/// <summary>Writes notes; of a text that is written again and again, such as the name of a figure, only the first is written out.</summary>
internal sealed class NoteWriter(Stream to) : BinaryWriter(to)
{
    private readonly Dictionary<string, int> _known = new(StringComparer.Ordinal);

    public void WriteShared(string text)
    {
        if (_known.TryGetValue(text, out var number))
        {
            Write7BitEncodedInt(number);
            return;
        }
        Write7BitEncodedInt(0);
        Write(text);
        _known[text] = _known.Count + 1;
    }
}

/// <summary>Reads what was written so.</summary>
internal sealed class NoteReader(Stream from) : BinaryReader(from)
{
    private readonly List<string> _known = [];

    /// <exception cref="ArgumentOutOfRangeException">It was not written so.</exception>
    public string ReadShared()
    {
        if (Read7BitEncodedInt() is var number and not 0)
            return _known[number - 1];
        _known.Add(ReadString());
        return _known[^1];
    }
}
