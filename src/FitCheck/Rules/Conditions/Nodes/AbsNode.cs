using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`abs(a)`.</summary>
internal sealed class AbsNode(int offset, Node operand) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [operand];

    public override FactType? TypeOf(TypeCheck check) =>
        check.NumberOf(operand, "`abs`") is { } dimension ? FactType.Number(dimension) : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = operand.Evaluate(inputs);
        return Of(Brief.Of(a)).As(a.Type).RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(operand.Weigh(facts));

    private static Brief Of(in Brief a) => a.IsKnown ? Brief.Of(Uncertain.Abs(a.Number), a.Doubt) : Brief.Unknown;
}
