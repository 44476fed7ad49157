using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Messages;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Rules;

/// <summary>
/// What a message may name: every fact of the subject, and `value`, `limit`, `margin` (signed), `short` (margin without sign),
/// `name` of the subject, and `wanted`: what to measure and what would pass.
/// </summary>
internal sealed class MessageVariables(Rule rule, FactTable table, FactInputs inputs, Judgement judgement, string wanted)
{
    private static readonly string[] Words = ["value", "limit", "margin", "short", "name", "wanted"];

    /// <summary>Reports messages of a rule that can't be parsed or that name something unknown.</summary>
    public static void Check(Rule rule, ProblemList problems)
    {
        string[] names = [.. rule.Scope.Names, .. Words];
        foreach (var message in rule.Messages.All)
            message.Check(names, problems);
    }

    /// <summary>The variables against another of the rule's limits.</summary>
    public MessageVariables Against(Limit limit) => new(rule, table, inputs, judgement with { Deciding = limit }, wanted);

    /// <summary>The text of a variable, or null when there is none of this name.</summary>
    public string? Find(string variable) => variable switch
    {
        "value" => Shown.Value(judgement.Fact, rule.Unit, table.Currency),
        "limit" => judgement.Deciding is { } limit ? Shown.Value(limit.Value, rule.Unit, table.Currency) : "unknown",
        "margin" => judgement.Margin is { } margin ? Shown.Signed(margin, rule.Unit!, table.Currency) : "unknown",
        "short" => judgement.Margin is { } margin ? Shown.Number(Math.Abs(margin), rule.Unit!, table.Currency) : "unknown",
        "name" => table.Name,
        "wanted" => wanted,
        _ => FactText(variable),
    };

    private string? FactText(string name)
    {
        if (rule.Scope.Find(name) is null)
            return null;
        var value = inputs.Of(name);
        return value is { Number: { } number, Shown: null } && value.Type.Dimension == Dimension.Currency
            ? Shown.Number(number.Value, Unit.Find("money")!, table.Currency)
            : value.Text;
    }
}
