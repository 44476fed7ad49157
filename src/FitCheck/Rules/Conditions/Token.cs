using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions;

internal enum TokenKind
{
    Number,
    Word,
    Name,
    Symbol,
    End,
}

/// <summary>A piece of an expression: its kind, its text, where it starts, and for a number its value in SI and its unit.</summary>
internal sealed record Token(TokenKind Kind, string Text, int Offset, double Si = 0, Unit? Unit = null)
{
    public bool Is(string symbol) => Kind is TokenKind.Symbol or TokenKind.Name && Text == symbol;

    /// <summary>How a message names it.</summary>
    public string Shown => Kind == TokenKind.End ? "the end" : $"`{Text}`";
}
