using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`abs(a)`.</summary>
internal sealed class AbsNode(int offset, Node operand) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [operand];

    public override FactType? TypeOf(TypeCheck check) => check.NumberOf(operand, "`abs`") is { } dimension ? FactType.Number(dimension) : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = operand.Evaluate(inputs);
        return new FactValue(a.Type) { Number = a.Number is { } number ? Uncertain.Abs(number) : null }.RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var a = operand.Weigh(facts);
        return a.IsKnown ? a with { Number = Uncertain.Abs(a.Number) } : a;
    }
}
