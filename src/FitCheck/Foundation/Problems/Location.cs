namespace FitCheck.Foundation.Problems;

/// <summary>A place in a source file.</summary>
/// <param name="File">As the caller named it, with `/`; what comes with the program, by its place beside it.</param>
/// <param name="Line">Counts from 1; 0 stands for the file as a whole.</param>
/// <param name="Column">Counts from 1.</param>
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

    /// <summary>True when the left one comes first.</summary>
    public static bool operator <(Location left, Location right) => left.CompareTo(right) < 0;
    /// <summary>True when the left one comes last.</summary>
    public static bool operator >(Location left, Location right) => left.CompareTo(right) > 0;
    /// <summary>True when the left one comes first or both are one place.</summary>
    public static bool operator <=(Location left, Location right) => left.CompareTo(right) <= 0;
    /// <summary>True when the left one comes last or both are one place.</summary>
    public static bool operator >=(Location left, Location right) => left.CompareTo(right) >= 0;
}
