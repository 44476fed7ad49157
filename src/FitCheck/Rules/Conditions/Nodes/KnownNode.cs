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
        var known = Of(inputs.IsOpen(fact.Name) ? Brief.Unsaid : Brief.Of(value)).As(FactType.Truth);
        return known.IsKnown ? known with { Data = value.Data } : known.RestingOn(value);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(facts[fact.Slot]);

    private static Brief Of(in Brief fact) => fact.IsUnsaid ? Brief.Unknown : Brief.Of(fact.IsKnown);
}
