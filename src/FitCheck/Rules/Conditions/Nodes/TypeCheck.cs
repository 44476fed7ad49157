using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>What nodes need to tell their type and to report that they have none.</summary>
internal sealed class TypeCheck(FactScope scope, Action<int, string> report)
{
    public FactScope Scope => scope;

    public FactType? Refuse(int offset, string message)
    {
        report(offset, message);
        return null;
    }

    /// <summary>The dimension of an operand that has to be a number; null when it is none.</summary>
    public Dimension? NumberOf(Node operand, string operation)
    {
        if (operand.TypeOf(this) is not { } type)
            return null;
        if (type.Kind == FactKind.Number)
            return type.Dimension;
        Refuse(operand.Offset, $"{operation} needs a number, found {type}");
        return null;
    }

    /// <summary>True when the operand is a truth; reports when it is something else.</summary>
    public bool IsTruth(Node operand, string operation)
    {
        if (operand.TypeOf(this) is not { } type)
            return false;
        if (type.Kind == FactKind.Truth)
            return true;
        Refuse(operand.Offset, $"{operation} needs true or false, found {Found(type)}");
        return false;
    }

    /// <summary>How a message names the type that was found.</summary>
    public static string Found(FactType type) =>
        type.Kind == FactKind.Number && type.Dimension != Dimension.One ? $"a number in {type}" : type.ToString();
}
