using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`min(a, b, …)` and `max(a, b, …)`; unknown when any of them is.</summary>
internal sealed class ExtremeNode(int offset, string function, IReadOnlyList<Node> operands) : Node(offset)
{
    public string Function => function;

    public override IReadOnlyList<Node> Children => operands;

    public override FactType? TypeOf(TypeCheck check)
    {
        var dimensions = operands.Select(o => check.NumberOf(o, $"`{function}`")).ToList();
        if (dimensions.Exists(d => d is null))
            return null;
        var odd = dimensions.FindIndex(d => d != dimensions[0]);
        return odd < 0
            ? FactType.Number(dimensions[0]!.Value)
            : check.Refuse(operands[odd].Offset, $"`{function}` needs values of one dimension; the first is {dimensions[0]}, this one is {dimensions[odd]}");
    }

    public override FactValue Evaluate(FactInputs inputs)
    {
        FactValue[] values = [.. operands.Select(o => o.Evaluate(inputs))];
        var result = new FactValue(values[0].Type);
        if (Array.TrueForAll(values, v => v.Number is not null))
            result = result with { Number = values.Select(v => v.Number!.Value).Aggregate((a, b) => function == "min" ? Uncertain.Min(a, b) : Uncertain.Max(a, b)) };
        return result.RestingOn(values);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var result = operands[0].Weigh(facts);
        for (var i = 1; i < operands.Count; i++)
        {
            var other = operands[i].Weigh(facts);
            if (!result.IsKnown || !other.IsKnown)
                return Brief.Unknown;
            result = Brief.Of(function == "min" ? Uncertain.Min(result.Number, other.Number) : Uncertain.Max(result.Number, other.Number), result.IsUnsure || other.IsUnsure);
        }
        return result;
    }
}
