using System.Collections.Concurrent;
using System.Text.Json;
using FitCheck.Yaml;

namespace FitCheck.Schemas;

/// <summary>
/// A schema made ready to say yes: whether a document is certainly valid. It is asked first, because nearly every document is; where it
/// doubts, for a violation or for a keyword or pattern that it does not know, the schema library decides and finds the words.
/// </summary>
internal sealed class SchemaMatcher
{
    private static readonly string[] Known = ["$schema", "title", "description", "definitions", "type", "properties", "required",
        "additionalProperties", "enum", "pattern", "items",
        "minItems", "maxItems", "minimum", "maximum", "minLength"];

    private static readonly string[] Yes = ["true", "True", "TRUE"];

    private readonly string _type = "";
    private readonly bool _doubted;
    private readonly Dictionary<string, Lazy<SchemaMatcher>>? _properties;
    private readonly string[] _required = [];
    private readonly bool _open = true;
    private readonly HashSet<string>? _words;
    private readonly TextPattern? _pattern;
    private readonly Lazy<SchemaMatcher>? _items;
    private readonly Lazy<SchemaMatcher>[]? _alternatives;
    private readonly (int Least, int Most) _count = (0, int.MaxValue);
    private readonly (double Least, double Most) _value = (double.NegativeInfinity, double.PositiveInfinity);
    private readonly int _length;

    private SchemaMatcher(JsonElement schema, Func<JsonElement, SchemaMatcher> shapeOf)
    {
        foreach (var keyword in schema.EnumerateObject())
        {
            var value = keyword.Value;
            switch (keyword.Name)
            {
                case "type":
                    _type = value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
                    break;
                case "properties":
                    _properties = new Dictionary<string, Lazy<SchemaMatcher>>(StringComparer.Ordinal);
                    foreach (var property in value.EnumerateObject())
                        _properties[property.Name] = new Lazy<SchemaMatcher>(() => shapeOf(property.Value));
                    break;
                case "required":
                    _required = [.. value.EnumerateArray().Select(r => r.GetString()!)];
                    break;
                case "additionalProperties":
                    _open = value.ValueKind == JsonValueKind.True;
                    _doubted |= value.ValueKind is not (JsonValueKind.True or JsonValueKind.False);
                    break;
                case "enum":
                    _doubted |= value.EnumerateArray().Any(e => e.ValueKind is not (JsonValueKind.String or JsonValueKind.True));
                    _words = new HashSet<string>(
                        value.EnumerateArray().SelectMany(e => e.ValueKind == JsonValueKind.String ? [e.GetString()!] : Yes),
                        StringComparer.Ordinal);
                    break;
                case "pattern":
                    _pattern = TextPattern.Of(value.GetString()!);
                    _doubted |= _pattern is null;
                    break;
                case "items":
                    _items = new Lazy<SchemaMatcher>(() => shapeOf(value));
                    _doubted |= value.ValueKind != JsonValueKind.Object;
                    break;
                case "anyOf":
                    _alternatives = [.. value.EnumerateArray().Select(a => new Lazy<SchemaMatcher>(() => shapeOf(a)))];
                    break;
                case "minItems":
                    _count.Least = value.GetInt32();
                    break;
                case "maxItems":
                    _count.Most = value.GetInt32();
                    break;
                case "minimum":
                    _value.Least = value.GetDouble();
                    break;
                case "maximum":
                    _value.Most = value.GetDouble();
                    break;
                case "minLength":
                    _length = value.GetInt32();
                    break;
                default:
                    _doubted |= !Known.Contains(keyword.Name, StringComparer.Ordinal);
                    break;
            }
        }
    }

    /// <summary>The shape of a schema.</summary>
    /// <param name="own">Its text.</param>
    /// <param name="shared">The text of the definitions that several schemas share.</param>
    public static SchemaMatcher Of(string own, string shared)
    {
        var here = JsonDocument.Parse(own).RootElement;
        var there = new Lazy<JsonElement>(() => JsonDocument.Parse(shared).RootElement);
        var named = new ConcurrentDictionary<string, SchemaMatcher>(StringComparer.Ordinal);
        return Shape(here);

        SchemaMatcher Shape(JsonElement schema) =>
            schema.TryGetProperty("$ref", out var reference) && schema.EnumerateObject().All(k => k.Name is "$ref" or "description")
                ? named.GetOrAdd(reference.GetString()!, name => new SchemaMatcher(Target(name.Split("#/definitions/")), Shape))
                : new SchemaMatcher(schema, Shape);

        // A shared definition names another one as its own.
        JsonElement Target(string[] name) =>
            (name[0].Length == 0 && here.TryGetProperty("definitions", out var own) ? own
                : there.Value.GetProperty("definitions")).GetProperty(name[1]);
    }

    /// <summary>True when the document is valid for certain.</summary>
    public bool Holds(YamlNode node) =>
        !_doubted && (_alternatives is null || Array.Exists(_alternatives, a => a.Value.Holds(node)))
        && (_type.Length == 0 && _alternatives is not null || HoldsItself(node));

    private bool HoldsItself(YamlNode node) => node switch
    {
        YamlMap map => _type == "object" && HoldsMap(map),
        YamlList list => _type == "array" && HoldsList(list),
        YamlScalar scalar => HoldsScalar(scalar),
        _ => false,
    };

    private bool HoldsMap(YamlMap map)
    {
        var required = 0;
        foreach (var entry in map.Entries)
        {
            if (_properties is not null && _properties.TryGetValue(entry.Key, out var shape) ? !shape.Value.Holds(entry.Value) : !_open)
                return false;
            if (Array.IndexOf(_required, entry.Key) >= 0)
                required++;
        }
        return required == _required.Length;
    }

    private bool HoldsList(YamlList list)
    {
        if (list.Items.Count < _count.Least || list.Items.Count > _count.Most)
            return false;
        if (_items is null)
            return true;
        foreach (var item in list.Items)
        {
            if (!_items.Value.Holds(item))
                return false;
        }
        return true;
    }

    private bool HoldsScalar(YamlScalar scalar)
    {
        switch (_type)
        {
            case "string":
                return IsText(scalar) && scalar.Text.Length >= _length && (_words is null || _words.Contains(scalar.Text))
                    && (_pattern is null || _pattern.Matches(scalar.Text));
            case "boolean":
                return !scalar.Quoted && scalar.Text is "true" or "True" or "TRUE" or "false" or "False" or "FALSE"
                    && (_words is null || _words.Contains(scalar.Text));
            case "integer" or "number":
                return !IsText(scalar) && YamlTokenReader.Resolve(scalar).Value switch
                {
                    long whole => whole >= _value.Least && whole <= _value.Most,
                    double number => _type == "number" && number >= _value.Least && number <= _value.Most && double.IsFinite(number),
                    _ => false,
                };
            default:
                return false;
        }
    }

    // What ends in a digit may be a number; else only these few words are something other than text.
    private static bool IsText(YamlScalar scalar) => scalar.Quoted
        || (scalar.Text.Length > 0 && char.IsAsciiDigit(scalar.Text[^1])
            ? YamlTokenReader.Resolve(scalar).Value is string
            : scalar.Text is not ("" or "~" or "null" or "Null" or "NULL" or "true" or "True" or "TRUE" or "false" or "False" or "FALSE"));
}
