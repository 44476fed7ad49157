using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>
/// `supposing(fact, most)`: the fact within all that it can be while inductances that no sheet gives lie between nothing and this much.
/// Where nothing is missing it is the fact itself.
/// </summary>
internal sealed class SupposingNode(int offset, NameNode fact, Node most) : Node(offset)
{
    public override IReadOnlyList<Node> Children => [fact, most];

    public override FactType? TypeOf(TypeCheck check)
    {
        if (check.NumberOf(fact, "`supposing`") is not { } dimension || check.NumberOf(most, "`supposing`") is not { } bound)
            return null;
        return bound == Dimension.Henry ? FactType.Number(dimension)
            : check.Refuse(most.Offset,
            $"`supposing` takes the most that an inductance can be, such as `0.5 mH`, found a number in {bound}");
    }

    public override FactValue Evaluate(FactInputs inputs)
    {
        var value = fact.Evaluate(inputs);
        return value.Supposing is null ? value : Within(value.Supposing, Brief.Of(most.Evaluate(inputs))) ?? value;
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var value = fact.Weigh(facts);
        return value.Supposing is { } supposing && Within(supposing, most.Weigh(facts)) is { } within ? Brief.Of(within) : value;
    }

    private static FactValue? Within(Func<double, FactValue> supposing, in Brief most) =>
        most.IsKnown ? supposing(most.Number.Value) : null;
}
