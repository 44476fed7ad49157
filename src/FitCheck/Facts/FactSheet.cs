using FitCheck.Physics.Quantities;

namespace FitCheck.Facts;

/// <summary>Collects the facts of one subject by name; only declared names are taken, each once.</summary>
internal sealed class FactSheet
{
    private readonly Dictionary<string, FactValue> _values = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, FactValue> Values => _values;

    public void Set(string name, FactValue value) => _values[name] = value;

    public void Set(string name, bool truth) => Set(name, FactValue.Of(truth));

    public void Set(string name, bool? truth, Unsure ifUnknown) =>
        Set(name, truth is { } known ? FactValue.Of(known) : FactValue.Unknown(FactType.Truth, ifUnknown));

    public void Set(string name, string? word)
    {
        if (word is not null)
            Set(name, FactValue.Of(word));
    }

    public void Set(string name, Dimension dimension, double? si)
    {
        if (si is { } number)
            Set(name, FactValue.Of(dimension, number));
    }
}
