using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>What kind of value a fact has.</summary>
public enum FactKind
{
    /// <summary>A number with a dimension.</summary>
    Number,
    /// <summary>True or false.</summary>
    Truth,
    /// <summary>A word, such as the name of a material.</summary>
    Word,
}

/// <summary>The type of a fact or of an expression: a number with a dimension, a truth, or a word.</summary>
/// <param name="Kind">Number, truth or word.</param>
/// <param name="Dimension">Of a number; a plain one for truths and words.</param>
public readonly record struct FactType(FactKind Kind, Dimension Dimension = default)
{
    /// <summary>True or false.</summary>
    public static readonly FactType Truth = new(FactKind.Truth);
    /// <summary>A word.</summary>
    public static readonly FactType Word = new(FactKind.Word);

    /// <summary>A number of this dimension.</summary>
    public static FactType Number(Dimension dimension) => new(FactKind.Number, dimension);

    /// <summary>True for equal kinds and dimensions.</summary>
    // Written out: the compiler's would need the just-in-time compiler at every start.
    public bool Equals(FactType other) => Kind == other.Kind && Dimension == other.Dimension;

    /// <inheritdoc/>
    public override int GetHashCode() => (31 * Dimension.GetHashCode()) + (int)Kind;

    /// <summary>What a rule is told that it should have written: `true or false`, `a word`, or the dimension.</summary>
    public override string ToString() => Kind switch
    {
        FactKind.Truth => "true or false",
        FactKind.Word => "a word",
        _ => Dimension.ToString(),
    };
}
