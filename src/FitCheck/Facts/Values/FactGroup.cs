using System.Collections;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>The facts of one subject that one class declares, in the order in which they are written there.</summary>
internal sealed class FactGroup(Subject subject) : IReadOnlyList<Fact>
{
    private readonly List<Fact> _facts = [];

    public int Count => _facts.Count;

    public Fact this[int index] => _facts[index];

    public NumberFact Number(string name, Dimension dimension, string meaning, params Input[] inputs) =>
        Add(new NumberFact(subject, name, dimension, meaning, inputs));

    public TruthFact Truth(string name, string meaning, params Input[] inputs) => Add(new TruthFact(subject, name, meaning, inputs));

    public WordFact Word(string name, string meaning, params Input[] inputs) => Add(new WordFact(subject, name, meaning, inputs));

    public IEnumerator<Fact> GetEnumerator() => _facts.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private T Add<T>(T fact)
        where T : Fact
    {
        _facts.Add(fact);
        return fact;
    }
}
