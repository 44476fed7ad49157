using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`-a`.</summary>
internal sealed class NegativeNode(int offset, Node operand) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [operand];

    public override FactType? TypeOf(TypeCheck check) => check.NumberOf(operand, "`-`") is { } dimension ? FactType.Number(dimension) : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = operand.Evaluate(inputs);
        return new FactValue(a.Type) { Number = a.Number is { } number ? -number : null }.RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var a = operand.Weigh(facts);
        return a.IsKnown ? a with { Number = -a.Number } : a;
    }
}
