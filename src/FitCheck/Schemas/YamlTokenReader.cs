using System.Globalization;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Newtonsoft.Json;

namespace FitCheck.Schemas;

/// <summary>
/// Presents a YAML node to Json.NET with line and column on every token, so that the schema validator can say where an error is.
/// </summary>
internal sealed class YamlTokenReader : JsonReader, IJsonLineInfo
{
    private readonly List<(JsonToken Token, object? Value, Location At)> _tokens = [];
    private int _next;

    public YamlTokenReader(YamlNode root) => Flatten(root);

    public int LineNumber => _next == 0 ? 0 : _tokens[_next - 1].At.Line;

    public int LinePosition => _next == 0 ? 0 : _tokens[_next - 1].At.Column;

    public bool HasLineInfo() => _next > 0;

    public override bool Read()
    {
        if (_next >= _tokens.Count)
            return false;
        var (token, value, _) = _tokens[_next++];
        SetToken(token, value);
        return true;
    }

    /// <summary>The JSON value of a scalar by YAML's core schema: null, truth, whole number, number, else text.</summary>
    public static (JsonToken Token, object? Value) Resolve(YamlScalar scalar)
    {
        if (scalar.Quoted)
            return (JsonToken.String, scalar.Text);
        return scalar.Text switch
        {
            "" or "~" or "null" or "Null" or "NULL" => (JsonToken.Null, null),
            "true" or "True" or "TRUE" => (JsonToken.Boolean, true),
            "false" or "False" or "FALSE" => (JsonToken.Boolean, false),
            _ when long.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) =>
                (JsonToken.Integer, whole),
            _ when char.IsAsciiDigit(scalar.Text[^1])
                && double.TryParse(scalar.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) =>
                (JsonToken.Float, number),
            _ => (JsonToken.String, scalar.Text),
        };
    }

    private void Flatten(YamlNode node)
    {
        switch (node)
        {
            case YamlMap map:
                _tokens.Add((JsonToken.StartObject, null, map.At));
                foreach (var entry in map.Entries)
                {
                    _tokens.Add((JsonToken.PropertyName, entry.Key, entry.KeyAt));
                    Flatten(entry.Value);
                }
                _tokens.Add((JsonToken.EndObject, null, map.At));
                break;
            case YamlList list:
                _tokens.Add((JsonToken.StartArray, null, list.At));
                foreach (var item in list.Items)
                    Flatten(item);
                _tokens.Add((JsonToken.EndArray, null, list.At));
                break;
            case YamlScalar scalar:
                var (token, value) = Resolve(scalar);
                _tokens.Add((token, value, scalar.At));
                break;
        }
    }
}
