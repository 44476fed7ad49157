using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`a &lt; b` and its kin; unknown when an operand is, or when bounds overlap.</summary>
internal sealed class CompareNode(int offset, string sign, Node left, Node right) : Node(offset)
{
    // What is compared; known once its operands' types are.
    private FactKind _kind;
    private double _scale;

    public string Sign => sign;

    public override IReadOnlyList<Node> Children => [left, right];

    public override FactType? TypeOf(TypeCheck check)
    {
        var a = left.TypeOf(check);
        var b = right.TypeOf(check);
        if (a is not { } one || b is not { } two)
            return null;
        if (one.Kind != two.Kind)
            return check.Refuse(Offset,
                $"`{sign}` compares like with like; the left is {TypeCheck.Found(one)}, the right is {TypeCheck.Found(two)}");
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
        var truth = Of(Brief.Of(a), Brief.Of(b)).As(FactType.Truth).RestingOn(a, b);
        return a.IsKnown && b.IsKnown && !truth.IsKnown ? truth.OrInexact(this, inputs) : truth;
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(left.Weigh(facts), right.Weigh(facts));

    private Brief Of(in Brief a, in Brief b) =>
        a.IsKnown && b.IsKnown && Compare(a, b) is { } truth ? Brief.Of(truth, a.Doubt.Or(b.Doubt)) : Brief.Unknown;

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
}
