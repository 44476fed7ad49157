using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Findings;

namespace FitCheck.Measuring;

/// <summary>A reading that findings of a build wait for.</summary>
/// <param name="Key">What `readings` call it.</param>
/// <param name="Place">Where it is taken, for a person: a position's name, or what it is part of.</param>
/// <param name="What">What is read.</param>
/// <param name="How">How, in sentences.</param>
/// <param name="Decides">The findings that wait for it, each with the values that pass; null where that can't be told.</param>
internal sealed record OpenReading(DatumKey Key, string Place, string What, string How,
    IReadOnlyList<(Finding Finding, string? Passing)> Decides)
{
    /// <summary>The line to fill in.</summary>
    public string Line => ReadingLine.ToFillIn(Key)!;

    /// <summary>What may be answered.</summary>
    public AnswerShape Answer => AnswerShape.Of(Key)!;
}
