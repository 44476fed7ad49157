using FitCheck.Facts.Values;
using FitCheck.Rules.Conditions.Nodes;

namespace FitCheck.Rules.Conditions;

/// <summary>Says in a few words why a condition does not hold, by the part of it that is false: "no amplifier", "not a door".</summary>
internal static class Reasons
{
    /// <summary>Why what is false is so.</summary>
    public static string WhyNot(Node node, FactScope scope, FactInputs inputs) => node switch
    {
        ConnectiveNode { Word: "and" } both => WhyNot(both.Children.First(c => c.Evaluate(inputs).Truth == false), scope, inputs),
        ConnectiveNode either => string.Join(", ",
            either.Children.Select(c => WhyNot(c, scope, inputs)).Distinct(StringComparer.Ordinal)),
        NotNode not => WhySo(not.Operand, scope, inputs),
        NameNode name => scope.Find(name.Name)!.No ?? $"not so: {Meaning(name, scope)}",
        KnownNode { Children: [NameNode name] } => $"{Words(name.Name)} not known",
        CompareNode { Sign: "==", Children: [NameNode name, ConstantNode word] } when scope.Find(name.Name)!.No is { } no =>
            no.Replace("{0}", word.Evaluate(inputs).Word, StringComparison.Ordinal),
        _ => Value(node, inputs),
    };

    private static string WhySo(Node node, FactScope scope, FactInputs inputs) => node switch
    {
        ConnectiveNode { Word: "or" } either => WhySo(either.Children.First(c => c.Evaluate(inputs).Truth == true), scope, inputs),
        ConnectiveNode both => string.Join(", ",
            both.Children.Select(c => WhySo(c, scope, inputs)).Distinct(StringComparer.Ordinal)),
        NotNode not => WhyNot(not.Operand, scope, inputs),
        NameNode name => scope.Find(name.Name)!.Yes ?? Meaning(name, scope),
        KnownNode { Children: [NameNode name] } => $"{Words(name.Name)} known",
        _ => Value(node, inputs),
    };

    // What is compared, as it is: "line channels used: 0".
    private static string Value(Node node, FactInputs inputs) => string.Join(", ", node.Names()
        .Select(n => $"{Words(n)}: {inputs.Of(n).Text}"));

    private static string Words(string name) => name.Replace('_', ' ');

    private static string Meaning(NameNode name, FactScope scope)
    {
        var meaning = scope.Find(name.Name)!.Meaning.TrimEnd('.');
        return char.ToLowerInvariant(meaning[0]) + meaning[1..];
    }
}
