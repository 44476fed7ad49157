using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>
/// `a and b`, `a or b` in Kleene's logic: a false settles `and` and a true settles `or` whatever the other side is, and then nothing of
/// the other side is carried.
/// </summary>
internal sealed class ConnectiveNode(int offset, string word, Node left, Node right) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [left, right];

    public override FactType? TypeOf(TypeCheck check) =>
        check.IsTruth(left, $"`{word}`") & check.IsTruth(right, $"`{word}`") ? FactType.Truth : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var settles = word == "or";
        var a = left.Evaluate(inputs);
        if (a.Truth == settles && a.Unsure.Count == 0)
            return a;
        var b = right.Evaluate(inputs);
        if (a.Truth == settles || b.Truth == settles)
            return FactValue.Of(settles).RestingOn(b.Truth != settles || (a.Truth == settles && a.Unsure.Count <= b.Unsure.Count) ? a : b);
        var result = a.Truth is null || b.Truth is null ? FactValue.Unknown(FactType.Truth) : FactValue.Of(!settles);
        return result.RestingOn(a, b);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var settles = word == "or";
        var a = left.Weigh(facts);
        var aSettles = a.IsKnown && a.IsTrue == settles;
        if (aSettles && !a.IsUnsure)
            return a;
        var b = right.Weigh(facts);
        if (b.IsKnown && b.IsTrue == settles)
            return b;
        return aSettles ? a : a.IsKnown && b.IsKnown ? Brief.Of(!settles, a.IsUnsure || b.IsUnsure) : Brief.Unknown;
    }

    public override Node Given(Func<string, bool?> settled)
    {
        var (a, b) = (left.Given(settled), right.Given(settled));
        if (a.Truth is { } one)
            return one == (word == "or") ? a : b;
        if (b.Truth is { } other)
            return other == (word == "or") ? b : a;
        return ReferenceEquals(a, left) && ReferenceEquals(b, right) ? this : new ConnectiveNode(Offset, word, a, b);
    }
}
