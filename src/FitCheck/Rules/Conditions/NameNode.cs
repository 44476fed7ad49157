using FitCheck.Facts;

namespace FitCheck.Rules.Conditions;

/// <summary>The name of a fact; its value is handed on untouched.</summary>
internal sealed class NameNode(int offset, string name) : Node(offset)
{
    public string Name => name;

    public override IReadOnlyList<Node> Children => [];

    public override FactType? TypeOf(TypeCheck check) => check.Scope.Find(name)?.Type ?? check.Refuse(Offset, check.Scope.WhyNot(name));

    public override FactValue Evaluate(FactInputs inputs) => inputs.Of(name);
}
