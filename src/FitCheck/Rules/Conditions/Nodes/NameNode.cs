using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>The name of a fact; its value is handed on untouched.</summary>
internal sealed class NameNode(int offset, string name) : Node(offset)
{
    // Known once its scope is.
    private int _slot = -1;

    public string Name => name;

    /// <summary>Where facts in brief have it.</summary>
    public int Slot => _slot;

    public override IReadOnlyList<Node> Children => [];

    public override FactType? TypeOf(TypeCheck check) => Declared(check.Scope)?.Type ?? check.Refuse(Offset, check.Scope.WhyNot(name));

    public override FactValue Evaluate(FactInputs inputs) => inputs.Of(name);

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => facts[_slot];

    public override Node Given(Func<string, bool?> settled) =>
        settled(name) is { } truth ? new ConstantNode(Offset, FactValue.Of(truth)) : this;

    private Fact? Declared(FactScope scope)
    {
        _slot = scope.SlotOf(name);
        return scope.Find(name);
    }
}
