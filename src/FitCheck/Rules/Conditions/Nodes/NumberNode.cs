using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>A number that stands in the expression: `3`, `3 mm`.</summary>
internal sealed class NumberNode(int offset, double si, Unit? unit) : Node(offset)
{
    private readonly FactValue _value = FactValue.Of(unit?.Dimension ?? Dimension.One, si);
    private readonly Brief _brief = Brief.Of(Uncertain.Exact(si));

    public bool IsZero => si == 0;

    public double Si => si;

    public override IReadOnlyList<Node> Children => [];

    public override FactType? TypeOf(TypeCheck check) => _value.Type;

    public override FactValue Evaluate(FactInputs inputs) => _value;

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => _brief;
}
