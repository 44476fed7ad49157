using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>`a + b`, `a - b`, `a * b`, `a / b`. Worst cases are carried as if both operands could be off at once.</summary>
internal sealed class ArithmeticNode(int offset, char sign, Node left, Node right) : Node(offset)
{
    public char Sign => sign;

    public override IReadOnlyList<Node> Children => [left, right];

    public override FactType? TypeOf(TypeCheck check)
    {
        var a = check.NumberOf(left, $"`{sign}`");
        var b = check.NumberOf(right, $"`{sign}`");
        if (a is not { } one || b is not { } two)
            return null;
        if (sign == '/' && right is NumberNode { IsZero: true })
            return check.Refuse(right.Offset, "nothing can be divided by zero");
        if (sign is '*' or '/')
            return FactType.Number(Combine(one, two));
        return one == two
            ? FactType.Number(one)
            : check.Refuse(Offset, $"`{sign}` needs two values of one dimension; the left is {one}, the right is {two}");
    }

    public override FactValue Evaluate(FactInputs inputs)
    {
        var a = left.Evaluate(inputs);
        var b = right.Evaluate(inputs);
        var type = FactType.Number(sign is '*' or '/' ? Combine(a.Type.Dimension, b.Type.Dimension) : a.Type.Dimension);
        var value = Of(Brief.Of(a), Brief.Of(b)).As(type).RestingOn(a, b);
        return a.IsKnown && b.IsKnown && !value.IsKnown ? value.OrInexact(right, inputs) : value;
    }

    public override Brief Weigh(ReadOnlySpan<Brief> facts) => Of(left.Weigh(facts), right.Weigh(facts));

    private Brief Of(in Brief a, in Brief b)
    {
        if (!a.IsKnown || !b.IsKnown)
            return Brief.Unknown;
        var number = sign switch
        {
            '+' => a.Number + b.Number,
            '-' => a.Number - b.Number,
            '*' => a.Number * b.Number,
            _ => Uncertain.Divide(a.Number, b.Number),
        };
        return number is { } known ? Brief.Of(known, a.Doubt.Or(b.Doubt)) : Brief.Unknown;
    }

    private Dimension Combine(Dimension a, Dimension b) => sign == '*' ? a * b : a / b;
}
