using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>
/// `a and b`, `a or b` in Kleene's logic: a false settles `and` and a true settles `or` whatever the other side is, and then nothing of
/// the other side is carried.
/// </summary>
internal sealed class ConnectiveNode(int offset, string word, Node left, Node right) : Node(offset)
{
    public string Word => word;

    public override IReadOnlyList<Node> Children => [left, right];

    public override FactType? TypeOf(TypeCheck check) =>
        check.IsTruth(left, $"`{word}`") & check.IsTruth(right, $"`{word}`") ? FactType.Truth : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = left.Evaluate(inputs);
        var one = Brief.Of(a);
        if (Ends(one))
            return a;
        var b = right.Evaluate(inputs);
        var other = Brief.Of(b);
        var both = Of(one, other);
        var result = both.As(FactType.Truth);
        // What settles it is carried alone; of two sides that do and are in equal doubt, the one with less that is unsure.
        return (Settles(one) && one.Doubt == both.Doubt, Settles(other) && other.Doubt == both.Doubt) switch
        {
            (true, true) => result.RestingOn(a.Unsure.Count <= b.Unsure.Count ? a : b),
            (true, _) => result.RestingOn(a),
            (_, true) => result.RestingOn(b),
            _ => result.RestingOn(a, b),
        };
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var a = left.Weigh(facts);
        return Ends(a) ? a : Of(a, right.Weigh(facts));
    }

    private bool Settles(in Brief side) => side.IsKnown && side.IsTrue == (word == "or");

    // Nothing that the other side may be makes it another truth, or less in doubt.
    private bool Ends(in Brief side) => Settles(side) && side.Doubt == Doubt.None;

    private Brief Of(in Brief a, in Brief b)
    {
        if (Settles(a))
            return Settles(b) && b.Doubt < a.Doubt ? b : a;
        if (Settles(b))
            return b;
        return a.IsKnown && b.IsKnown ? Brief.Of(word != "or", a.Doubt.Or(b.Doubt)) : Brief.Unknown;
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
