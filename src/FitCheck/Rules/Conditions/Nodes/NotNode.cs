using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`not a`; the opposite of unknown is unknown.</summary>
internal sealed class NotNode(int offset, Node operand) : Node(offset)
{
    public Node Operand => operand;

    public override IReadOnlyList<Node> Children => [operand];

    public override FactType? TypeOf(TypeCheck check) => check.IsTruth(operand, "`not`") ? FactType.Truth : null;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = operand.Evaluate(inputs);
        return Of(Brief.Of(a)).As(FactType.Truth).RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(operand.Weigh(facts));

    public override Node Given(Func<string, bool?> settled) => operand.Given(settled) switch
    {
        { Truth: { } truth } => new ConstantNode(Offset, FactValue.Of(!truth)),
        var given => ReferenceEquals(given, operand) ? this : new NotNode(Offset, given),
    };

    private static Brief Of(in Brief a) => a.IsKnown ? Brief.Of(!a.IsTrue, a.Doubt) : Brief.Unknown;
}
