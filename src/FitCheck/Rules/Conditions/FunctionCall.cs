using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions.Nodes;

namespace FitCheck.Rules.Conditions;

/// <summary>The functions of the language: `min`, `max`, `abs`, `known`, `supposing`.</summary>
internal static class FunctionCall
{
    private static readonly string[] All = ["min", "max", "abs", "known", "supposing"];

    /// <summary>The call as a node, or null when there is no such function or it takes other arguments.</summary>
    public static Node? Of(Token name, IReadOnlyList<Node> arguments) => (name.Text, arguments) switch
    {
        ("min" or "max", { Count: > 1 }) => new ExtremeNode(name.Offset, name.Text, arguments),
        ("abs", [var operand]) => new AbsNode(name.Offset, operand),
        ("known", [NameNode fact]) => new KnownNode(name.Offset, fact),
        ("supposing", [NameNode fact, var most]) => new SupposingNode(name.Offset, fact, most),
        _ => null,
    };

    public static string WhyNot(string name, int count) => name switch
    {
        "min" or "max" => $"`{name}` takes two values or more, found {count}",
        "abs" => $"`abs` takes one value, found {count}",
        "known" => "`known` takes the name of one fact, `known(depth)`",
        "supposing" => "`supposing` takes the name of one fact and the most that an inductance can be, `supposing(load_min, 0.5 mH)`",
        _ => $"there is no function `{name}`{Nearest.Hint(name, All)}",
    };
}
