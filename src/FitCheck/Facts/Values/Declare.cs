using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>Short forms for the lists of declarations.</summary>
internal static class Declare
{
    public static FactDeclaration Number(Subject subject, string name, Dimension dimension, string meaning) => new(subject, name, FactType.Number(dimension), meaning);

    public static FactDeclaration Truth(Subject subject, string name, string meaning) => new(subject, name, FactType.Truth, meaning);

    public static FactDeclaration Word(Subject subject, string name, string meaning) => new(subject, name, FactType.Word, meaning);
}
