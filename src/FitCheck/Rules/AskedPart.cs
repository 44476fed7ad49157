using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Physics.Quantities;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Rules;

/// <summary>What sort of part would cure what a rule finds: `asks_for: { kind: sundry, type: heat-shrink }`. A list of parts to buy looks for one.</summary>
/// <param name="Kind">A kind of the catalog.</param>
/// <param name="Types">Types of that kind, any of which will do; empty for every one.</param>
/// <param name="Goes">Where a build names it: a word of <see cref="Places"/>.</param>
/// <param name="Length">The shortest that will do, in metres; null for any.</param>
public sealed record AskedPart(string Kind, IReadOnlyList<string> Types, string Goes, double? Length)
{
    /// <summary>Where a build can name a part that is missing.</summary>
    public static readonly IReadOnlyList<string> Places = ["with", "harness", "fuse", "power_cable", "ground_cable", "extras"];

    /// <summary>`heat-shrink`, `foam-tape or damping-sheet`, `harness`.</summary>
    public string Words => Types.Count == 0 ? Kind : string.Join(" or ", Types);

    internal static AskedPart? Read(YamlNode node, Subject subject, ProblemList problems)
    {
        if (node is not YamlMap map)
        {
            problems.Error(node.At, $"`asks_for` of a rule needs a mapping such as `{{ kind: sundry, type: heat-shrink }}`, found {node.Kind}");
            return null;
        }
        var keys = new RuleKeys(map, "`asks_for`", problems, "kind", "type", "goes", "length");
        var kind = keys.Require("kind") is { } k ? keys.Word(k, "kind", [.. Kinds.All.Select(c => c.Kind).Where(c => c != "vehicle")]) : null;
        var types = keys.Find("type") is not { } t ? [] : (t is YamlList list ? list.Items : [t]).Select(n => keys.Scalar(n, "type")?.Text).OfType<string>().ToList();
        var usual = subject == Subject.Position ? "with" : "extras";
        var goes = keys.Find("goes") is { } g ? keys.Word(g, "goes", [.. Places.Where(p => Possible(p, subject))]) : usual;
        var length = keys.Find("length") is { } l && keys.Scalar(l, "length", "a length such as `5 m`") is { } text ? Metres(text, problems) : null;
        return kind is null || goes is null ? null : new AskedPart(kind, types, goes, length);
    }

    /// <summary>Tells types that the kind does not have; they would be looked for in vain.</summary>
    internal static void Check(Rule rule, ProblemList problems)
    {
        if (rule.AsksFor is not { } asked || SchemaText.WordsOf(asked.Kind, "type") is not { } known)
            return;
        foreach (var type in asked.Types.Where(t => !known.Contains(t)))
            problems.Error(rule.PlaceOf("asks_for"), $"no {asked.Kind} has the type `{type}`{Nearest.Hint(type, known)}", ProblemKind.BrokenRule);
    }

    private static bool Possible(string place, Subject subject) => place switch
    {
        "with" or "harness" => subject == Subject.Position,
        "extras" => true,
        _ => subject == Subject.Device,
    };

    private static double? Metres(YamlScalar text, ProblemList problems)
    {
        if (QuantityText.Parse(text.Text) is { } quantity && quantity.Dimension == Dimension.Metre)
            return quantity.Si;
        problems.Error(text.At, $"expected a length with its unit, such as `5 m`, found `{text.Text}`");
        return null;
    }
}
