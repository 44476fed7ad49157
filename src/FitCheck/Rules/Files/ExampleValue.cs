using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>
/// Reads a value that an example gives: `8 mm`, `true`, `splice`, `unknown`, or `{ low: -1 mm, value: 1 mm, high: 3 mm, estimated: true }`.
/// </summary>
internal sealed class ExampleValue(ProblemList problems)
{
    /// <summary>The value as a fact of this type, or null when it is none; the reason is reported.</summary>
    public FactValue? Read(YamlNode node, FactType type, string what) => node switch
    {
        YamlScalar scalar => One(scalar, type, what),
        YamlMap map => Bounded(map, type, what),
        _ => Refuse(node, type),
    };

    private FactValue? One(YamlScalar scalar, FactType type, string what)
    {
        if (scalar is { Text: "unknown", Quoted: false })
            return FactValue.Unknown(type, Doubt(what, type, estimated: false));
        return type.Kind switch
        {
            FactKind.Number =>
                Number(scalar, type.Dimension) is { } number ? With(type, number, number.Provenance == Provenance.Estimated, what)
                    : Refuse(scalar, type),
            FactKind.Truth => scalar.Text is "true" or "false" ? FactValue.Of(scalar.Text == "true") : Refuse(scalar, type),
            _ => FactValue.Of(scalar.Text),
        };
    }

    private FactValue? Bounded(YamlMap map, FactType type, string what)
    {
        var keys = new RuleKeys(map, "a value", problems, "low", "value", "high", "estimated");
        if (keys.Require("value") is not { } node || keys.Scalar(node, "value", "a value") is not { } middle
            || One(middle, type, what) is not { } value)
            return null;
        var estimated = keys.Find("estimated") is { } flag && keys.Word(flag, "estimated", ["true", "false"]) == "true";
        if (value.Number is { } number)
        {
            var low = Bound(keys, "low", type, number.Low);
            var high = Bound(keys, "high", type, number.High);
            if (low > number.Value || high < number.Value)
                problems.Error(map.At, "a value lies between its `low` and its `high`");
            value = value with { Number = new Uncertain(number.Value, low, high, (high - low) / 2) };
        }
        else if (keys.Find("low") is not null || keys.Find("high") is not null)
        {
            problems.Error(map.At, "only a known number has `low` and `high`");
        }
        return estimated && value.Unsure.Count == 0 ? value with { Unsure = [Doubt(what, type, estimated: true)] } : value;
    }

    private double Bound(RuleKeys keys, string key, FactType type, double otherwise)
    {
        if (keys.Find(key) is not { } node || keys.Scalar(node, key, "a value") is not { } text)
            return otherwise;
        if (Number(text, type.Dimension) is { } number)
            return number.Si;
        Refuse(text, type);
        return otherwise;
    }

    private static FactValue With(FactType type, Quantity number, bool estimated, string what) => new(type)
    {
        Number = Uncertain.Within(number.Si, number.Tolerance ?? 0),
        Unsure = estimated ? [Doubt(what, type, estimated: true)] : [],
    };

    private static Quantity? Number(YamlScalar text, Dimension dimension)
    {
        if (dimension == Dimension.One && QuantityText.ParseNumber(text.Text) is { } plain)
            return new Quantity(plain, Unit.Find("1")!);
        return QuantityText.Parse(text.Text) is { } quantity && quantity.Dimension == dimension ? quantity : null;
    }

    private static Unsure Doubt(string what, FactType type, bool estimated) => new(what, "Measure it.", estimated,
        type.Kind == FactKind.Number
            ? limit => QuantityText.Format(limit.Limit, type.Dimension) + (limit.AtLeast ? " or more" : " or less") : null);

    private FactValue? Refuse(YamlNode node, FactType type)
    {
        var expected = type.Kind switch
        {
            FactKind.Number => type.Dimension == Dimension.One ? "a number" : $"a number in {type}",
            FactKind.Truth => "true or false",
            _ => "a word",
        };
        problems.Error(node.At, $"expected {expected} or `unknown`, found {(node is YamlScalar scalar ? $"`{scalar.Text}`" : node.Kind)}");
        return null;
    }
}
