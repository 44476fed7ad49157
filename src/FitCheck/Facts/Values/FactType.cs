using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>What kind of value a fact has.</summary>
public enum FactKind
{
    Number,
    Truth,
    Word,
}

/// <summary>The type of a fact or of an expression: a number with a dimension, a truth, or a word.</summary>
public readonly record struct FactType(FactKind Kind, Dimension Dimension = default)
{
    public static readonly FactType Truth = new(FactKind.Truth);
    public static readonly FactType Word = new(FactKind.Word);

    public static FactType Number(Dimension dimension) => new(FactKind.Number, dimension);

    // Written out: the compiler's would need the just-in-time compiler at every start.
    public bool Equals(FactType other) => Kind == other.Kind && Dimension == other.Dimension;

    public override int GetHashCode() => (31 * Dimension.GetHashCode()) + (int)Kind;

    public override string ToString() => Kind switch
    {
        FactKind.Truth => "true or false",
        FactKind.Word => "a word",
        _ => Dimension.ToString(),
    };
}
