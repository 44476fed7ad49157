namespace FitCheck.Facts;

/// <summary>Every fact that a rule may name.</summary>
public static class FactRegistry
{
    public static IReadOnlyList<FactDeclaration> Declarations { get; } = [];
}
