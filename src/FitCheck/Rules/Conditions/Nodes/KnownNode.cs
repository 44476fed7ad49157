using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`known(fact)`: whether the fact has a value. Nothing else turns an unknown into a truth.</summary>
internal sealed class KnownNode(int offset, NameNode fact) : Node(offset)
{
    /// <summary>Where facts in brief have the fact.</summary>
    public int Slot => fact.Slot;

    public override IReadOnlyList<Node> Children => [fact];

    public override FactType? TypeOf(TypeCheck check) => fact.TypeOf(check) is null ? null : FactType.Truth;

    public override FactValue Evaluate(FactInputs inputs)
    {
        var value = fact.Evaluate(inputs);
        if (inputs.IsOpen(fact.Name))
            return FactValue.Unknown(FactType.Truth).RestingOn(value);
        return FactValue.Of(value.IsKnown) with { Data = value.Data };
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Brief.Of(facts[fact.Slot].IsKnown, unsure: false);
}
