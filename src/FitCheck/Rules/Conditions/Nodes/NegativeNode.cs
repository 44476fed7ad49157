using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`-a`.</summary>
internal sealed class NegativeNode(int offset, Node operand) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [operand];

    public override FactType? TypeOf(TypeCheck check) =>
        check.NumberOf(operand, "`-`") is { } dimension ? FactType.Number(dimension) : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = operand.Evaluate(inputs);
        return Of(Brief.Of(a)).As(a.Type).RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(operand.Weigh(facts));

    private static Brief Of(in Brief a) => a.IsKnown ? Brief.Of(-a.Number, a.Doubt) : Brief.Unknown;
}
