using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace FitCheck.Facts.Values;

/// <summary>
/// Facts of which each is computed when it is asked for: of a hundred thousand subjects nearly all are settled by the first two.
/// </summary>
/// <param name="names">Those that there may be.</param>
/// <param name="compute">The fact of a name, or null when this subject has none.</param>
/// <param name="brief">Gives a fact of a name in brief; left out, the whole fact is looked at.</param>
internal sealed class FactsOnDemand(IReadOnlyList<string> names, Func<string, FactValue?> compute, Func<string, Brief>? brief = null)
    : IReadOnlyDictionary<string, FactValue>
{
    public IEnumerable<string> Keys => names.Where(ContainsKey);

    public IEnumerable<FactValue> Values => names.Select(compute).OfType<FactValue>();

    public int Count => names.Count(ContainsKey);

    public Brief InBrief(string name) => brief is null ? Brief.Of(compute(name)) : brief(name);

    public FactValue this[string key] => compute(key) ?? throw new KeyNotFoundException(key);

    public bool ContainsKey(string key) => compute(key) is not null;

    public bool TryGetValue(string key, [MaybeNullWhen(false)] out FactValue value) => (value = compute(key)) is not null;

    public IEnumerator<KeyValuePair<string, FactValue>> GetEnumerator() =>
        names.Where(ContainsKey).Select(n => KeyValuePair.Create(n, this[n])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
