namespace FitCheck.Findings;

/// <summary>The name of a part as a sentence says it.</summary>
internal static class SpokenName
{
    private static readonly string[] Begins = ["pack of ", "set of "];
    private static readonly string[] Ends = ["pair", " pairs", " pieces"];

    /// <summary>Without how it is packed, which is told in the list: `Tapping screws ST4.2 x 25, pan head, pack of 16`.</summary>
    public static string Of(string name)
    {
        var comma = name.LastIndexOf(", ", StringComparison.Ordinal);
        if (comma <= 0)
            return name;
        var last = name[(comma + 2)..];
        return Array.Exists(Begins, b => last.StartsWith(b, StringComparison.Ordinal))
            || Array.Exists(Ends, e => last.EndsWith(e, StringComparison.Ordinal)) ? name[..comma] : name;
    }
}
