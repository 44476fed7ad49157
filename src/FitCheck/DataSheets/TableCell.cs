using System.Text.RegularExpressions;
using FitCheck.Fixes;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.DataSheets;

/// <summary>Reads a cell as what its key takes; whether it is allowed there is the schema's business.</summary>
internal static partial class TableCell
{
    /// <summary>The node, at the place of the cell; null, and told, where nobody can say what is meant.</summary>
    public static YamlNode? Read(Located<string> cell, TableHeading heading, ProblemList problems)
    {
        var text = cell.Value is ['\'', '=' or '+' or '-' or '@', ..] ? cell.Value[1..] : cell.Value;
        var (path, at) = (heading.Path, cell.At);
        var isCollection = path.Takes("array") || path.Takes("object");
        if (text is ['"', .., '"'] or ['\'', .., '\''] || (text[0] is '[' or '{' && isCollection))
            return Written(text, at, problems);
        if (path.Item is { } item && path.Alternatives.Count == 1)
            return new YamlList(at, [.. text.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(t => Scalar(t, item, "", at))]);
        if (path.Figure is not null && OpenComma().IsMatch(text))
        {
            problems.Error(at, $"`{text}` for `{path.Path}` may be a thousand times the other; write it with a decimal point");
            return null;
        }
        return Scalar(text, path, heading.Unit, at);
    }

    private static YamlScalar Scalar(string text, KeyPath path, string unit, Location at)
    {
        var plain = Plain(text, path, unit);
        var scalar = new YamlScalar(at, plain, Quoted: false);
        // What a text may look like to YAML, such as the `no` of `handed`, it is not.
        return path.Takes("string") && path.Figure is null && !FlowText.IsText(scalar) && !path.Takes("integer") && !path.Takes("number")
            && !path.Takes("boolean")
            ? scalar with { Quoted = true } : scalar;
    }

    private static string Plain(string text, KeyPath path, string unit)
    {
        if (path.Words.FirstOrDefault(w => w.Equals(text, StringComparison.OrdinalIgnoreCase)) is { } word)
            return word;
        if (path.Figure is { } figure)
            return Figure(text, figure.Sort, unit);
        if (path.Takes("boolean"))
            return text.ToLowerInvariant() switch { "yes" => "true", "no" => "false", var said => said };
        if (!path.Takes("integer") && !path.Takes("number"))
            return text;
        var number = Comma().Replace(text, "${whole}.${rest}");
        return path.Takes("integer") && number.EndsWith(".0", StringComparison.Ordinal) ? number[..^2] : number;
    }

    // The cell's own unit counts before that of the heading; both are spelled as the catalog does.
    private static string Figure(string text, string sort, string unit)
    {
        var point = Comma().Replace(text, "${whole}.${rest}");
        var whole = unit.Length > 0 && !point.Any(char.IsLetter) && point.AsSpan().IndexOfAny("\"″Ω°%") < 0
            ? $"{point} {unit}" : point;
        return UnitSpelling.Of(sort, whole) ?? whole;
    }

    private static YamlNode? Written(string text, Location at, ProblemList problems)
    {
        var own = new ProblemList();
        if (YamlReader.Read(new SourceText(at.File, text), own) is { } node && !own.HasErrors)
            return Moved(node, at);
        problems.Error(at, $"`{text}` can't be read as YAML: {(own.All.Count > 0 ? own.All[0].Message : "it is empty")}",
            ProblemKind.BrokenYaml);
        return null;
    }

    // A mistake inside is told at the cell.
    private static YamlNode Moved(YamlNode node, Location at) => node switch
    {
        YamlMap map => new YamlMap(at, [.. map.Entries.Select(e => e with { KeyAt = at, Value = Moved(e.Value, at) })]),
        YamlList list => new YamlList(at, [.. list.Items.Select(i => Moved(i, at))]),
        _ => node with { At = at },
    };

    // One to three digits, a comma and three digits may be a thousand and more.
    [GeneratedRegex(@"^[1-9]\d{0,2},\d{3}(\D.*)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OpenComma();

    [GeneratedRegex(@"^(?<whole>-?\d+),(?<rest>\d+)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Comma();
}
