using Scriban.Syntax;

namespace FitCheck.Rules.Messages;

/// <summary>
/// What may stand in a message, and the names in it. A rule may come from strangers: with functions or loops that call each other a message
/// would never end, however deep and long each of them is allowed to be. Whatever is not named here is refused.
/// </summary>
internal sealed class MessageGrammar : ScriptVisitor
{
    private const int ShownLetters = 30;

    private readonly string _text;

    private MessageGrammar(string text) => _text = text;

    /// <summary>Names whose values are asked for.</summary>
    public HashSet<string> Read { get; } = new(StringComparer.Ordinal);

    /// <summary>Names that the message gives a value to.</summary>
    public HashSet<string> Written { get; } = new(StringComparer.Ordinal);

    /// <summary>A sentence that says what is not for messages; null when all is.</summary>
    public string? Refused { get; private set; }

    /// <summary>Looks through a message.</summary>
    /// <param name="page">What was parsed.</param>
    /// <param name="text">As it is written.</param>
    public static MessageGrammar Of(ScriptPage page, string text)
    {
        var grammar = new MessageGrammar(text);
        grammar.Visit(page);
        return grammar;
    }

    public override void Visit(ScriptNode? node)
    {
        if (node is null || Refused is not null)
            return;
        if (!IsFor(node))
        {
            Refused = $"`{Shown(node)}` is not for messages: they name facts, compare them, and say `if`, `else` and `end`";
            return;
        }
        if (node is ScriptAssignExpression { Target: ScriptVariableGlobal target } assignment)
        {
            Written.Add(target.Name);
            Visit(assignment.Value);
            return;
        }
        if (node is ScriptVariableGlobal name)
            Read.Add(name.Name);
        base.Visit(node);
    }

    private static bool IsFor(ScriptNode node) => node switch
    {
        ScriptPage or ScriptBlockStatement or ScriptRawStatement or ScriptEscapeStatement or ScriptExpressionStatement
            or ScriptNopStatement => true,
        ScriptIfStatement or ScriptElseStatement or ScriptEndStatement => true,
        ScriptVariableGlobal or ScriptLiteral or ScriptNestedExpression => true,
        // A text that is put together from itself doubles with every word.
        ScriptAssignExpression assignment => assignment is { Target: ScriptVariableGlobal, EqualToken.Value: "=" },
        ScriptBinaryExpression two => two.Operator is ScriptBinaryOperator.And or ScriptBinaryOperator.Or
            or ScriptBinaryOperator.CompareEqual or ScriptBinaryOperator.CompareNotEqual or ScriptBinaryOperator.CompareLess
            or ScriptBinaryOperator.CompareLessOrEqual or ScriptBinaryOperator.CompareGreater or ScriptBinaryOperator.CompareGreaterOrEqual
            // Values are texts, so these come to nothing; of a number they make no text longer.
            or ScriptBinaryOperator.Subtract or ScriptBinaryOperator.Divide,
        ScriptUnaryExpression one => one.Operator == ScriptUnaryOperator.Not,
        ScriptToken or ScriptKeyword or ScriptList => true,
        _ => false,
    };

    private string Shown(ScriptNode node)
    {
        var start = Math.Clamp(node.Span.Start.Offset, 0, _text.Length);
        var words = _text[start..Math.Clamp(node.Span.End.Offset + 1, start, _text.Length)].ReplaceLineEndings(" ").Trim();
        return words.Length <= ShownLetters ? words : words[..ShownLetters].TrimEnd() + "…";
    }
}
