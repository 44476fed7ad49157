using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`true`, `false` or a word.</summary>
internal sealed class ConstantNode(int offset, FactValue value) : Node(offset)
{
    private readonly Brief _brief = Brief.Of(value);

    public override IReadOnlyList<Node> Children => [];

    public override FactType? TypeOf(TypeCheck check) => value.Type;

    public override FactValue Evaluate(FactInputs inputs) => value;

    public override bool? Truth => value.Truth;

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => _brief;
}
