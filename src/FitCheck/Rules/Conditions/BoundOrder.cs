using FitCheck.Rules.Conditions.Nodes;

namespace FitCheck.Rules.Conditions;

/// <summary>
/// Tells whether one limit is never below another, whatever the facts are: of numbers, and of multiples of one fact. Such a fact is a
/// rating or a limit of a part, which is never negative.
/// </summary>
internal static class BoundOrder
{
    private const double Rounding = 1e-12;

    /// <summary>True when it is so for certain; false also when it can't be told.</summary>
    public static bool IsAtLeast(Node more, Node less) => (more, less) switch
    {
        (ExtremeNode { Function: "max" } many, _) when many.Children.Any(c => IsAtLeast(c, less)) => true,
        (ExtremeNode { Function: "min" } many, _) when many.Children.All(c => IsAtLeast(c, less)) => true,
        (_, ExtremeNode { Function: "max" } many) when many.Children.All(c => IsAtLeast(more, c)) => true,
        (_, ExtremeNode { Function: "min" } many) when many.Children.Any(c => IsAtLeast(more, c)) => true,
        _ => Line.Of(more) is { } a && Line.Of(less) is { } b && (a.Name is null || b.Name is null || a.Name == b.Name)
            && a.Factor - b.Factor >= -Rounding && a.Offset - b.Offset >= -Rounding,
    };

    // factor * fact + offset
    private sealed record Line(string? Name, double Factor, double Offset)
    {
        public static Line? Of(Node node) => node switch
        {
            NumberNode number => new Line(null, 0, number.Si),
            NameNode name => new Line(name.Name, 1, 0),
            NegativeNode negative => Of(negative.Children[0])?.Times(-1),
            ArithmeticNode { Sign: '+' or '-' } sum => Sum(Of(sum.Children[0]), Of(sum.Children[1])?.Times(sum.Sign == '-' ? -1 : 1)),
            ArithmeticNode { Sign: '*' } product => Product(Of(product.Children[0]), Of(product.Children[1])),
            ArithmeticNode quotient =>
                Of(quotient.Children[1]) is { Name: null, Offset: not 0 } by ? Of(quotient.Children[0])?.Times(1 / by.Offset) : null,
            _ => null,
        };

        private static Line? Sum(Line? a, Line? b) =>
            a is null || b is null || (a.Name is not null && b.Name is not null && a.Name != b.Name) ? null
            : new Line(a.Name ?? b.Name, a.Factor + b.Factor, a.Offset + b.Offset);

        private static Line? Product(Line? a, Line? b) => (a, b) switch
        {
            (null, _) or (_, null) => null,
            ({ Name: null }, _) => b.Times(a.Offset),
            (_, { Name: null }) => a.Times(b.Offset),
            _ => null,
        };

        private Line Times(double by) => new(Name, Factor * by, Offset * by);
    }
}
