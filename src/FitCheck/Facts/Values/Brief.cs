using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>
/// A fact in brief: its value and whether any datum under it is missing or guessed, without the evidence that a finding tells. Judging millions of pairs
/// needs no more, and takes no memory.
/// </summary>
internal readonly record struct Brief(bool IsKnown, bool IsUnsure = false)
{
    public static readonly Brief Unknown = new(IsKnown: false);

    /// <summary>Meant only where it is known, and a number.</summary>
    public Uncertain Number { get; init; }

    /// <summary>Meant only where it is known, and true or false.</summary>
    public bool IsTrue { get; init; }

    /// <summary>Null where it is unknown or no word.</summary>
    public string? Word { get; init; }

    public static Brief Of(in Uncertain number, bool unsure) => IsNonsense(number) ? Unknown : new(IsKnown: true, unsure) { Number = number };

    public static Brief Of(bool truth, bool unsure) => new(IsKnown: true, unsure) { IsTrue = truth };

    /// <summary>A whole fact in brief; one that was never set is unknown.</summary>
    public static Brief Of(FactValue? fact)
    {
        if (fact is not { IsKnown: true })
            return Unknown;
        var unsure = fact.Unsure.Count > 0;
        return fact.Type.Kind switch
        {
            FactKind.Number => Of(fact.Number!.Value, unsure),
            FactKind.Truth => Of(fact.Truth!.Value, unsure),
            _ => new(IsKnown: true, unsure) { Word = fact.Word },
        };
    }

    internal static bool IsNonsense(in Uncertain n) => double.IsNaN(n.Value) || double.IsNaN(n.Low) || double.IsNaN(n.High);
}
