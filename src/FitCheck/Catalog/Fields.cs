using System.Globalization;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>
/// Takes typed values out of a mapping. Structure is the schema's business: a value of the wrong shape reads as absent here, because the
/// schema has told it already; a quantity that can't be read is told here too.
/// </summary>
internal sealed class Fields(YamlMap map, Provenance provenance, ProblemList problems)
{
    public YamlMap Map => map;

    public Location At => map.At;

    public Provenance Provenance => provenance;

    public ProblemList Problems => problems;

    public Located<string>? Text(string key) => map[key] is YamlScalar s ? new Located<string>(s.Text, s.At) : null;

    public string Word(string key, string absent = "") => Text(key)?.Value ?? absent;

    public bool? Truth(string key) => (map[key] as YamlScalar)?.Text switch
    {
        "true" or "True" or "TRUE" => true,
        "false" or "False" or "FALSE" => false,
        _ => null,
    };

    public double? Number(string key) => map[key] is YamlScalar s && QuantityText.ParseNumber(s.Text) is { } n ? n : null;

    public int? Count(string key) =>
        map[key] is YamlScalar s && int.TryParse(s.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;

    public Figure? Figure(string key, Dimension dimension) => map[key] is YamlScalar s ? ReadFigure(s, dimension) : null;

    /// <summary>A length.</summary>
    public Figure? Length(string key) => Figure(key, Dimension.Metre);

    public IReadOnlyList<Figure> Figures(string key, Dimension dimension) =>
        Items(key, node => node is YamlScalar s ? ReadFigure(s, dimension) : null);

    public IReadOnlyList<Located<string>> Texts(string key) =>
        Items(key, node => node is YamlScalar s ? new Located<string>(s.Text, s.At) : null);

    public IReadOnlyList<double> Numbers(string key)
    {
        var numbers = new List<double>();
        foreach (var text in Texts(key))
        {
            if (QuantityText.ParseNumber(text.Value) is { } number)
                numbers.Add(number);
        }
        return numbers;
    }

    public Fields? Inner(string key) => map[key] is YamlMap inner ? new Fields(inner, provenance, problems) : null;

    public IReadOnlyList<Fields> Each(string key) => Items(key, node => node is YamlMap m ? new Fields(m, provenance, problems) : null);

    public Located<Money>? Money(string key)
    {
        if (map[key] is not YamlScalar s || s.Text.Split(' ') is not [var amount, { Length: 3 } currency]
            || !decimal.TryParse(amount, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
            out var value))
            return null;
        return new Located<Money>(new Money(value, currency), s.At);
    }

    /// <summary>
    /// The text before ` @ ` and after it, for figures such as `3000 Hz @ 12 dB/octave`; provenance in brackets is taken off.
    /// </summary>
    public (Figure Main, string? Reference)? Rated(string key, Dimension dimension)
    {
        if (map[key] is not YamlScalar s)
            return null;
        var text = s.Text;
        var given = Origin(s);
        foreach (var (word, value) in new[] { (" (measured)", Provenance.Measured), (" (datasheet)", Provenance.Datasheet),
            (" (estimated)", Provenance.Estimated) })
        {
            if (text.EndsWith(word, StringComparison.Ordinal))
                (text, given) = (text[..^word.Length], s.IsTakenOver ? given : value);
        }
        var parts = text.Split(" @ ", 2);
        return QuantityText.Parse(parts[0]) is { } q && q.Dimension == dimension
            ? (new Figure(q, s.At, given), parts.Length > 1 ? parts[1] : null)
            : null;
    }

    // Whoever writes a reading has measured it.
    private Provenance Origin(YamlScalar scalar) =>
        scalar.IsReading ? Provenance.Measured : scalar.IsTakenOver ? Provenance.Estimated : provenance;

    private List<T> Items<T>(string key, Func<YamlNode, T?> read) where T : class
    {
        var items = new List<T>();
        if (map[key] is not YamlList list)
            return items;
        foreach (var node in list.Items)
        {
            if (read(node) is { } item)
                items.Add(item);
        }
        return items;
    }

    private Figure? ReadFigure(YamlScalar scalar, Dimension dimension)
    {
        if (QuantityText.Parse(scalar.Text) is { } quantity && quantity.Dimension == dimension)
        {
            return scalar.IsTakenOver ? new Figure(quantity, scalar.At, Provenance.Estimated).AtLeastAsRoughAsAGuess
                : new Figure(quantity, scalar.At, quantity.Provenance ?? Origin(scalar)) { IsReading = scalar.IsReading };
        }
        problems.Error(scalar.At, $"expected a figure in {dimension}, found `{scalar.Text}`", ProblemKind.WrongShape);
        return null;
    }
}
