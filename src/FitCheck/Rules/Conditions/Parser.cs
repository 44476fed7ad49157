using FitCheck.Facts.Values;
using FitCheck.Rules.Conditions.Nodes;

namespace FitCheck.Rules.Conditions;

/// <summary>Builds the tree of an expression. Weakest first: `or`, `and`, `not`, comparison, `+ -`, `* /`, sign.</summary>
internal sealed class Parser(IReadOnlyList<Token> tokens, Action<int, string> report)
{
    private const int MaxDepth = 64;

    private static readonly string[] Comparisons = ["<", "<=", ">", ">=", "==", "!="];

    private int _next;
    private int _depth;

    private Token Current => tokens[_next];

    /// <summary>The whole expression, or null when it isn't one; the first mistake is reported then.</summary>
    public Node? Parse()
    {
        var root = Or();
        if (root is null || Current.Kind == TokenKind.End)
            return root;
        return Refuse(Current, $"expected an operator or the end, found {Current.Shown}");
    }

    private Node? Or()
    {
        var left = And();
        while (left is not null && Take("or") is { } word)
            left = And() is { } right ? new ConnectiveNode(word.Offset, "or", left, right) : null;
        return left;
    }

    private Node? And()
    {
        var left = Not();
        while (left is not null && Take("and") is { } word)
            left = Not() is { } right ? new ConnectiveNode(word.Offset, "and", left, right) : null;
        return left;
    }

    private Node? Not()
    {
        if (Take("not") is not { } word)
            return Compared();
        return Nested(word, Not) is { } operand ? new NotNode(word.Offset, operand) : null;
    }

    private Node? Compared()
    {
        var left = Sum();
        if (left is null || Take(Comparisons) is not { } sign)
            return left;
        if (Sum() is not { } right)
            return null;
        return Array.Exists(Comparisons, Current.Is)
            ? Refuse(Current, "a comparison can't be compared again; write `a < b and b < c`")
            : new CompareNode(sign.Offset, sign.Text, left, right);
    }

    private Node? Sum()
    {
        var left = Product();
        while (left is not null && Take("+", "-") is { } sign)
            left = Product() is { } right ? new ArithmeticNode(sign.Offset, sign.Text[0], left, right) : null;
        return left;
    }

    private Node? Product()
    {
        var left = Signed();
        while (left is not null && Take("*", "/") is { } sign)
            left = Signed() is { } right ? new ArithmeticNode(sign.Offset, sign.Text[0], left, right) : null;
        return left;
    }

    private Node? Signed()
    {
        if (Take("-") is not { } sign)
            return Primary();
        return Nested(sign, Signed) is { } operand ? new NegativeNode(sign.Offset, operand) : null;
    }

    private Node? Primary()
    {
        var token = Current;
        if (token.Kind == TokenKind.End || (token.Kind == TokenKind.Symbol && token.Text != "(")
            || (token.Kind == TokenKind.Name && token.Text is "and" or "or" or "not"))
            return Refuse(token, $"expected a number, a name or `(`, found {token.Shown}");
        _next++;
        return token.Kind switch
        {
            TokenKind.Number => new NumberNode(token.Offset, token.Si, token.Unit),
            TokenKind.Word => new ConstantNode(token.Offset, FactValue.Of(token.Text)),
            TokenKind.Symbol => Nested(token, Or) is { } inner && Expect(")") ? inner : null,
            _ when token.Text is "true" or "false" => new ConstantNode(token.Offset, FactValue.Of(token.Text == "true")),
            _ when Current.Is("(") => Call(token),
            _ => new NameNode(token.Offset, token.Text),
        };
    }

    private Node? Call(Token name)
    {
        _next++;
        var arguments = new List<Node>();
        do
        {
            if (Nested(name, Or) is not { } argument)
                return null;
            arguments.Add(argument);
        }
        while (Take(",") is not null);
        return Expect(")") ? FunctionCall.Of(name, arguments) ?? Refuse(name, FunctionCall.WhyNot(name.Text, arguments.Count)) : null;
    }

    private Node? Nested(Token opening, Func<Node?> parse)
    {
        if (_depth == MaxDepth)
            return Refuse(opening, $"the expression is nested more than {MaxDepth} deep here");
        _depth++;
        var node = parse();
        _depth--;
        return node;
    }

    private Token? Take(params string[] symbols)
    {
        foreach (var symbol in symbols)
        {
            if (Current.Is(symbol))
                return tokens[_next++];
        }
        return null;
    }

    private bool Expect(string symbol) =>
        Take(symbol) is not null || Refuse(Current, $"expected `{symbol}`, found {Current.Shown}") is not null;

    private Node? Refuse(Token token, string message)
    {
        report(token.Offset, message);
        return null;
    }
}
