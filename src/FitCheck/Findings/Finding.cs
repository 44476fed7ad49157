using FitCheck.Builds.Readable;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Findings;

/// <summary>What to measure, how, and which value would pass.</summary>
public sealed record ToMeasure(string What, string How, string? Passing)
{
    /// <summary>True for what neither tape, meter nor label answers, but the maker: it is asked for last.</summary>
    public bool IsForMaker { get; init; }

    /// <summary>What a reading of it is called; null where none answers it.</summary>
    internal DatumKey? Key { get; init; }

    /// <summary>
    /// The line to fill in under `readings` of the build, `{at: front-door-left, of: mounting.depth, value: ____ mm}`; null where no
    /// reading answers it, and <see cref="How"/> says what to write where.
    /// </summary>
    public string? ToFillIn => Key is { } key ? ReadingLine.ToFillIn(key) : null;
}

/// <summary>What one rule says of one subject.</summary>
public sealed record Finding
{
    /// <summary>The rule's id, `family/slug`.</summary>
    public required string Rule { get; init; }
    /// <summary>What the rule looks at, in words.</summary>
    public required string Title { get; init; }
    /// <summary>What the rule says; a waived finding keeps it.</summary>
    public required Status Status { get; init; }
    /// <summary>The key of its subject: a position, a channel, `build`, or a part's id.</summary>
    public required string Position { get; init; }
    /// <summary>The subject's name for a person.</summary>
    public required string PositionName { get; init; }
    /// <summary>Ids of the parts concerned.</summary>
    public required IReadOnlyList<string> Parts { get; init; }
    /// <summary>The rule's fact, as the rule writes it.</summary>
    public required string Fact { get; init; }
    /// <summary>The value in the rule's unit; null when unknown or not a number.</summary>
    public Uncertain? Value { get; init; }
    /// <summary>The value as text, whatever its type.</summary>
    public required string ValueText { get; init; }
    /// <summary>The unit in which value, limit and margin are given; empty for truths and words.</summary>
    public required string Unit { get; init; }
    /// <summary>The nearest threshold, in the rule's unit.</summary>
    public double? Limit { get; init; }
    /// <summary>Distance to the limit in the rule's unit, negative when beyond it.</summary>
    public double? Margin { get; init; }
    /// <summary>What is so, in sentences with value and limit.</summary>
    public required string Message { get; init; }
    /// <summary>What to do, in sentences.</summary>
    public required string Advice { get; init; }
    /// <summary>Where the rule's figure comes from.</summary>
    public required string Source { get; init; }
    /// <summary>The line of the build that chose what the finding is about.</summary>
    public required Location At { get; init; }
    /// <summary>The data of the catalog and the threshold of the rule on which it rests, in the order of files and lines.</summary>
    public IReadOnlyList<Related> Related { get; init; } = [];
    /// <summary>What to measure; empty unless the status is measure.</summary>
    public IReadOnlyList<ToMeasure> ToMeasure { get; init; } = [];
    /// <summary>The reason of a waiver, when the build has one for this finding.</summary>
    public string? Waived { get; init; }
    /// <summary>The last day on which that waiver holds; null for no end.</summary>
    public DateOnly? WaivedUntil { get; init; }
    /// <summary>Names this finding across edits that only move lines: rule, build name, position, fact.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The total order of findings: file, line, column, rule, position, message.</summary>
    public static int Compare(Finding a, Finding b)
    {
        var order = a.At.CompareTo(b.At);
        if (order == 0)
            order = string.CompareOrdinal(a.Rule, b.Rule);
        if (order == 0)
            order = string.CompareOrdinal(a.Position, b.Position);
        return order != 0 ? order : string.CompareOrdinal(a.Message, b.Message);
    }
}
