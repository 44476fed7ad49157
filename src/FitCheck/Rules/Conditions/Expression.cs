using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Yaml;

namespace FitCheck.Rules.Conditions;

/// <summary>
/// An expression of a rule file, read once, its names and dimensions checked; evaluating it can't fail, only be unknown.
/// Evaluating the same expression on several threads is safe.
/// </summary>
internal sealed class Expression
{
    /// <summary>Longest text that is read; a condition of a rule is a line or two.</summary>
    public const int MaxLength = 2000;

    private readonly Node _root;

    private Expression(string text, Location at, FactType type, Node root)
    {
        (Text, At, Type, _root) = (text, at, type, root);
        Names = [.. root.Names()];
    }

    /// <summary>As it is written.</summary>
    public string Text { get; }

    public Location At { get; }

    public FactType Type { get; }

    /// <summary>The facts that it names, each once, in the order they are written.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Its value when it names no fact; null when it does.</summary>
    public FactValue? Constant =>
        Names.Count == 0
            ? _root.Evaluate(new FactInputs(new FactScope(Subject.Build, []), new Dictionary<string, FactValue>(StringComparer.Ordinal)))
            : null;

    /// <summary>Reads an expression; null when it has a mistake, which is told with its line and column.</summary>
    public static Expression? Read(YamlScalar source, FactScope scope, ProblemList problems)
    {
        if (source.Text.Length > MaxLength)
        {
            problems.Error(source.At, $"the expression has {source.Text.Length} characters; at most {MaxLength} are read");
            return null;
        }
        if (new Lexer(source.Text, Report).Read() is not { } tokens || new Parser(tokens, Report).Parse() is not { } root)
            return null;
        var type = root.TypeOf(new TypeCheck(scope, Report));
        return type is null ? null : new Expression(source.Text, source.At, type.Value, root);

        void Report(int offset, string message) =>
            problems.Error(source.At with { Column = source.At.Column + offset + (source.Quoted ? 1 : 0) }, message);
    }

    /// <summary>An expression that is one word, for thresholds that are written without quotes.</summary>
    public static Expression OfWord(YamlScalar source)
    {
        var value = FactValue.Of(source.Text);
        return new Expression(source.Text, source.At, value.Type, new ConstantNode(0, value));
    }

    /// <summary>The value for these facts, with what it rests on.</summary>
    public FactValue Evaluate(FactInputs inputs) => _root.Evaluate(inputs);

    /// <summary>The value that <see cref="Evaluate"/> has, without what it rests on.</summary>
    /// <param name="facts">In brief, by their slots in the scope.</param>
    internal Brief Weigh(ReadOnlySpan<Brief> facts) => _root.Weigh(facts);

    /// <summary>True when it is certain that it is never below another of its dimension, whatever the facts are.</summary>
    internal bool IsAtLeast(Expression other) => BoundOrder.IsAtLeast(_root, other._root);

    /// <summary>The slot of the fact that it is and no more; -1 for any other.</summary>
    internal int Slot => _root is NameNode name ? name.Slot : -1;

    /// <summary>What it asks of one fact, when it asks of one alone whether it is true or known; null for any other.</summary>
    internal Gate? Gate => _root switch
    {
        NotNode { Operand: KnownNode known } => new(known.Slot, IsOfKnown: true, IsNegated: true),
        NotNode { Operand: NameNode name } => new(name.Slot, IsOfKnown: false, IsNegated: true),
        KnownNode known => new(known.Slot, IsOfKnown: true, IsNegated: false),
        NameNode name => new(name.Slot, IsOfKnown: false, IsNegated: false),
        _ => null,
    };

    /// <summary>What is left of the condition where some truths are settled, for weighing.</summary>
    /// <inheritdoc cref="Node.Given"/>
    internal Expression Given(Func<string, bool?> settled) => new(Text, At, Type, _root.Given(settled));

    /// <summary>Why a condition that is false for these facts is so, in a few words.</summary>
    public string WhyNot(FactScope scope, FactInputs inputs) => Reasons.WhyNot(_root, scope, inputs);

    /// <summary>An answer for an expression that is left open by tolerances only: the facts to measure more exactly.</summary>
    public IReadOnlyList<Unsure> Inexact(FactInputs inputs)
    {
        var inexact = Names.Where(inputs.IsInexact).SelectMany(inputs.Inexact);
        return _root is NameNode ? [.. inexact] : [.. inexact.Select(Evidence.WithoutPassing)];
    }
}

/// <summary>A condition on one fact.</summary>
/// <param name="Slot">Where facts in brief have it.</param>
/// <param name="IsOfKnown">Whether it has to be known, or else true.</param>
/// <param name="IsNegated">Whether it must not be so.</param>
internal readonly record struct Gate(int Slot, bool IsOfKnown, bool IsNegated);
