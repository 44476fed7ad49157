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
            : check.Refuse(operands[odd].Offset,
            $"`{function}` needs values of one dimension; the first is {dimensions[0]}, this one is {dimensions[odd]}");
    }

    public override FactValue Evaluate(FactInputs inputs)
    {
        FactValue[] values = [.. operands.Select(o => o.Evaluate(inputs))];
        var result = Brief.Of(values[0]);
        for (var i = 1; i < values.Length; i++)
            result = Of(result, Brief.Of(values[i]));
        return result.As(values[0].Type).RestingOn(values);
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts)
    {
        var result = operands[0].Weigh(facts);
        for (var i = 1; i < operands.Count; i++)
            result = Of(result, operands[i].Weigh(facts));
        return result;
    }

    private Brief Of(in Brief a, in Brief b) => a.IsKnown && b.IsKnown
        ? Brief.Of(function == "min" ? Uncertain.Min(a.Number, b.Number) : Uncertain.Max(a.Number, b.Number), a.Doubt.Or(b.Doubt))
        : Brief.Unknown;
}
