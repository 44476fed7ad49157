using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>A part of an expression. It knows its type before anything is evaluated, and answers "unknown" rather than guess.</summary>
internal abstract class Node(int offset)
{
    /// <summary>Where it stands in the expression's text; for an operation, where the operator stands.</summary>
    public int Offset { get; } = offset;

    public abstract IReadOnlyList<Node> Children { get; }

    /// <summary>Its type, or null when it has none; the reason is reported then.</summary>
    public abstract FactType? TypeOf(TypeCheck check);

    /// <summary>
    /// Its value as <see cref="Weigh"/> has it, made of its operands' by one and the same function, and the evidence for it.
    /// </summary>
    public abstract FactValue Evaluate(FactInputs inputs);

    /// <summary>Its value without evidence, from facts in brief by their slots in the scope.</summary>
    public abstract Brief Weigh(ReadOnlySpan<Brief> facts);

    /// <summary>
    /// What is left of the condition where some truths are settled: what they decide is gone. Evidence of what is gone is gone too.
    /// </summary>
    /// <param name="settled">The truth of a fact that is settled and not in doubt; null of any other.</param>
    public virtual Node Given(Func<string, bool?> settled) => this;

    /// <summary>Its truth when it is a constant.</summary>
    public virtual bool? Truth => null;

    /// <summary>The names of facts in it, each once, in the order they are written.</summary>
    public IEnumerable<string> Names() => AllNames().Distinct(StringComparer.Ordinal);

    private IEnumerable<string> AllNames() => this is NameNode name ? [name.Name] : Children.SelectMany(c => c.AllNames());
}
