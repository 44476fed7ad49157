using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`a &lt; b` and its kin; unknown when an operand is, or when bounds overlap.</summary>
internal sealed class CompareNode(int offset, string sign, Node left, Node right) : Node(offset)
{
    // What is compared; known once its operands' types are.
    private FactKind _kind;
    private double _scale;

    public override IReadOnlyList<Node> Children => [left, right];

    public override FactType? TypeOf(TypeCheck check)
    {
        var a = left.TypeOf(check);
        var b = right.TypeOf(check);
        if (a is not { } one || b is not { } two)
            return null;
        if (one.Kind != two.Kind)
            return check.Refuse(Offset, $"`{sign}` compares like with like; the left is {TypeCheck.Found(one)}, the right is {TypeCheck.Found(two)}");
        if (one != two)
            return check.Refuse(Offset, $"`{sign}` compares values of one dimension; the left is {one}, the right is {two}");
        if (one.Kind != FactKind.Number && sign is not ("==" or "!="))
            return check.Refuse(Offset, $"`{sign}` compares numbers, found {one}; `==` and `!=` compare anything");
        (_kind, _scale) = (one.Kind, Comparison.ScaleOf(one.Dimension));
        return FactType.Truth;
    }

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = left.Evaluate(inputs);
        var b = right.Evaluate(inputs);
        if (!a.IsKnown || !b.IsKnown)
            return FactValue.Unknown(FactType.Truth).RestingOn(a, b);
        return Compare(a, b) is { } truth
            ? FactValue.Of(truth).RestingOn(a, b)
            : FactValue.Unknown(FactType.Truth).RestingOn(a, b).OrInexact(this, inputs);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var a = left.Weigh(facts);
        var b = right.Weigh(facts);
        return a.IsKnown && b.IsKnown && Compare(a, b) is { } truth ? Brief.Of(truth, a.IsUnsure || b.IsUnsure) : Brief.Unknown;
    }

    private bool? Compare(in Brief a, in Brief b) => sign switch
    {
        "<" => Comparison.Less(a.Number, b.Number, _scale),
        ">" => Comparison.Less(b.Number, a.Number, _scale),
        ">=" => !Comparison.Less(a.Number, b.Number, _scale),
        "<=" => !Comparison.Less(b.Number, a.Number, _scale),
        "==" => Same(a, b),
        _ => !Same(a, b),
    };

    private bool? Same(in Brief a, in Brief b) => _kind switch
    {
        FactKind.Number => Comparison.Same(a.Number, b.Number, _scale),
        FactKind.Truth => a.IsTrue == b.IsTrue,
        _ => a.Word == b.Word,
    };

    private bool? Compare(FactValue a, FactValue b) => sign switch
    {
        "<" => Less(a, b),
        ">" => Less(b, a),
        ">=" => !Less(a, b),
        "<=" => !Less(b, a),
        "==" => Same(a, b),
        _ => !Same(a, b),
    };

    private static bool? Less(FactValue a, FactValue b) => Comparison.Less(a.Number!.Value, b.Number!.Value, a.Type.Dimension);

    private static bool? Same(FactValue a, FactValue b) => a.Type.Kind switch
    {
        FactKind.Number => Comparison.Same(a.Number!.Value, b.Number!.Value, a.Type.Dimension),
        FactKind.Truth => a.Truth == b.Truth,
        _ => a.Word == b.Word,
    };
}
