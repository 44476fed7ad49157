namespace FitCheck.Yaml;

/// <summary>A place in a source file; line and column count from 1. Line 0 stands for the file as a whole.</summary>
public readonly record struct Location(string File, int Line, int Column) : IComparable<Location>
{
    public int CompareTo(Location other)
    {
        var byFile = string.CompareOrdinal(File, other.File);
        if (byFile != 0)
            return byFile;
        return Line != other.Line ? Line.CompareTo(other.Line) : Column.CompareTo(other.Column);
    }

    // Written out: the compiler's would need the just-in-time compiler at every start.
    public bool Equals(Location other) => Line == other.Line && Column == other.Column && string.Equals(File, other.File, StringComparison.Ordinal);

    public override int GetHashCode() => (31 * ((31 * Line) + Column)) + (File is null ? 0 : StringComparer.Ordinal.GetHashCode(File));

    public override string ToString() => Line == 0 ? File : $"{File}:{Line}:{Column}";

    public static bool operator <(Location left, Location right) => left.CompareTo(right) < 0;
    public static bool operator >(Location left, Location right) => left.CompareTo(right) > 0;
    public static bool operator <=(Location left, Location right) => left.CompareTo(right) <= 0;
    public static bool operator >=(Location left, Location right) => left.CompareTo(right) >= 0;
}
