namespace FitCheck.Foundation.Problems;

/// <summary>A place in a source file; line and column count from 1. Line 0 stands for the file as a whole.</summary>
public sealed record Location(string File, int Line, int Column) : IComparable<Location>
{
    /// <summary>By file in ordinal order, then line, then column.</summary>
    public int CompareTo(Location? other)
    {
        if (other is null)
            return 1;
        var byFile = string.CompareOrdinal(File, other.File);
        if (byFile != 0)
            return byFile;
        return Line != other.Line ? Line.CompareTo(other.Line) : Column.CompareTo(other.Column);
    }

    /// <summary>`FILE:LINE:COLUMN`, or the file alone.</summary>
    public override string ToString() => Line == 0 ? File : $"{File}:{Line}:{Column}";

    public static bool operator <(Location left, Location right) => left.CompareTo(right) < 0;
    public static bool operator >(Location left, Location right) => left.CompareTo(right) > 0;
    public static bool operator <=(Location left, Location right) => left.CompareTo(right) <= 0;
    public static bool operator >=(Location left, Location right) => left.CompareTo(right) >= 0;
}
