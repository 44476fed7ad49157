using FitCheck.QuoteImport;

namespace FitCheck.Page.Acting;

/// <summary>A seller's list that is being read in, with what was answered so far; it travels until nothing is open.</summary>
/// <param name="Name">The name of its file.</param>
/// <param name="Bytes">What is in it.</param>
/// <param name="As">Which part a line is, `LINE=ID`.</param>
/// <param name="At">Where a part goes, `ID=POSITION,POSITION`.</param>
/// <param name="Skip">Lines that are left out.</param>
internal sealed record QuoteState(string Name, byte[] Bytes, IReadOnlyList<string> As, IReadOnlyList<string> At, IReadOnlyList<int> Skip)
{
    /// <summary>Lines of which somebody has to say which part they are.</summary>
    public IReadOnlyList<OpenLine> Lines { get; init; } = [];

    /// <summary>Parts that could go to several places.</summary>
    public IReadOnlyList<OpenPlace> Places { get; init; } = [];
}
