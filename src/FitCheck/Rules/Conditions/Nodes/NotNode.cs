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
        return new FactValue(FactType.Truth) { Truth = !a.Truth }.RestingOn(a);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var a = operand.Weigh(facts);
        return a.IsKnown ? a with { IsTrue = !a.IsTrue } : a;
    }

    public override Node Given(Func<string, bool?> settled) => operand.Given(settled) switch
    {
        { Truth: { } truth } => new ConstantNode(Offset, FactValue.Of(!truth)),
        var given => ReferenceEquals(given, operand) ? this : new NotNode(Offset, given),
    };
}
