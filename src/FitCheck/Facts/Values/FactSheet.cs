using System.Collections;
using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using FitCheck.Catalog;

namespace FitCheck.Facts.Values;

/// <summary>
/// Collects the facts of one subject by name; only declared names are taken, each once. Facts that are left for later are computed when one
/// of them is asked for: who only wants to know about the screws does not pay for the acoustics. They are listed in the order in which they
/// were entered or left.
/// </summary>
internal sealed class FactSheet : IReadOnlyDictionary<string, FactValue>
{
    private readonly Dictionary<string, FactValue> _values = new(StringComparer.Ordinal);
    private readonly List<Part> _parts = [];
    private Part _open = new();

    public FactSheet() => _parts.Add(_open);

    public IReadOnlyDictionary<string, FactValue> Values => this;

    public FactValue this[string key] => TryGetValue(key, out var value) ? value : throw new KeyNotFoundException(key);

    public IEnumerable<string> Keys => All().Select(f => f.Key);

    IEnumerable<FactValue> IReadOnlyDictionary<string, FactValue>.Values => All().Select(f => f.Value);

    public int Count => All().Count();

    /// <summary>The names of declared facts.</summary>
    public static IReadOnlySet<string> Names(IReadOnlyList<Fact> declarations) =>
        declarations.Select(d => d.Name).ToHashSet(StringComparer.Ordinal);

    /// <summary>Leaves these facts to be computed when one of them is asked for.</summary>
    public void Later(IReadOnlySet<string> names, Action<FactSheet> compute) => _parts.Add(new Part { Names = names, Compute = compute });

    public void Set(Fact fact, FactValue value)
    {
        if (!_values.ContainsKey(fact.Name))
            _open.Entered.Add(fact.Name);
        _values[fact.Name] = value;
    }

    public void Set(TruthFact fact, bool truth) => Set(fact, FactValue.Of(truth));

    public void Set(TruthFact fact, bool? truth, Unsure ifUnknown) =>
        Set(fact, truth is { } known ? FactValue.Of(known) : FactValue.Unknown(FactType.Truth, ifUnknown));

    public void Set(WordFact fact, string? word)
    {
        if (word is not null)
            Set(fact, FactValue.Of(word));
    }

    /// <param name="fact">Its key.</param>
    /// <param name="si">The number in SI; null leaves it unknown.</param>
    public void Set(NumberFact fact, double? si)
    {
        if (si is { } number)
            Set(fact, FactValue.Of(fact.Dimension, number));
    }

    /// <summary>A figure as it is written, without its tolerance and with its place; where nobody wrote it nothing is entered.</summary>
    public void Set(NumberFact fact, Figure? figure, string what)
    {
        if (figure is not null)
            Set(fact, FactValue.Of(fact.Dimension, figure.Si) with { Data = [new Datum(what, figure)] });
    }

    /// <summary>The value of a fact; null where none was entered.</summary>
    public FactValue? Of(Fact fact) => TryGetValue(fact.Name, out var value) ? value : null;

    public bool ContainsKey(string key) => TryGetValue(key, out _);

    public bool TryGetValue(string key, [MaybeNullWhen(false)] out FactValue value)
    {
        if (_values.TryGetValue(key, out value))
            return true;
        foreach (var part in _parts)
        {
            if (part.Compute is not null && part.Names.Contains(key))
                Fill(part);
        }
        return _values.TryGetValue(key, out value);
    }

    public IEnumerator<KeyValuePair<string, FactValue>> GetEnumerator() => All().GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private IEnumerable<KeyValuePair<string, FactValue>> All()
    {
        foreach (var part in _parts)
        {
            if (part.Compute is not null)
                Fill(part);
        }
        return _parts.SelectMany(p => p.Entered).Select(n => KeyValuePair.Create(n, _values[n]));
    }

    // One part may ask for a fact of another one.
    private void Fill(Part part)
    {
        var (compute, open) = (part.Compute!, _open);
        (part.Compute, _open) = (null, part);
        compute(this);
        _open = open;
    }

    private sealed class Part
    {
        public IReadOnlySet<string> Names { get; init; } = FrozenSet<string>.Empty;
        public List<string> Entered { get; } = [];
        public Action<FactSheet>? Compute { get; set; }
    }
}
