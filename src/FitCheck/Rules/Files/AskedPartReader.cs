using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Reads `asks_for` of a rule file.</summary>
internal static class AskedPartReader
{
    /// <summary>Null when something is wrong, which is told.</summary>
    public static AskedPart? Read(YamlNode node, Subject subject, ProblemList problems)
    {
        if (node is not YamlMap map)
        {
            problems.Error(node.At,
                $"`asks_for` of a rule needs a mapping such as `{{ kind: sundry, type: heat-shrink }}`, found {node.Kind}");
            return null;
        }
        var keys = new RuleKeys(map, "`asks_for`", problems, "kind", "type", "goes", "length");
        var kind = keys.Require("kind") is { } k ? keys.Word(k, "kind", [.. Kinds.All.Select(c => c.Kind).Where(c => c != "vehicle")])
            : null;
        var types = keys.Find("type") is not { } t ? []
            : (t is YamlList list ? list.Items : [t]).Select(n => keys.Scalar(n, "type")?.Text).OfType<string>().ToList();
        var usual = subject == Subject.Position ? "with" : "extras";
        var goes = keys.Find("goes") is { } g ? keys.Word(g, "goes", [.. AskedPart.Places.Where(p => Possible(p, subject))]) : usual;
        var length = keys.Find("length") is { } l && keys.Scalar(l, "length", "a length such as `5 m`") is { } text
            ? Metres(text, problems) : null;
        return kind is null || goes is null ? null : new AskedPart(kind, types, goes, length);
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
