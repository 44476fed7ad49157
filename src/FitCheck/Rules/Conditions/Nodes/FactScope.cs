using FitCheck.Facts.Values;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>The facts that a rule about one subject may name.</summary>
internal sealed class FactScope
{
    private readonly Dictionary<string, Fact> _own = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _slots = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Subject> _elsewhere = new(StringComparer.Ordinal);

    public FactScope(Subject subject, IReadOnlyList<Fact> declared)
    {
        Subject = subject;
        foreach (var fact in declared)
        {
            if (fact.Subject == subject)
            {
                _own[fact.Name] = fact;
                _slots.TryAdd(fact.Name, _slots.Count);
            }
            else
                _elsewhere.TryAdd(fact.Name, fact.Subject);
        }
    }

    public Subject Subject { get; }

    public IReadOnlyCollection<string> Names => _own.Keys;

    /// <summary>The place of a declared fact among all of the subject, from 0; -1 when there is none of this name.</summary>
    internal int SlotOf(string name) => _slots.GetValueOrDefault(name, -1);

    public Fact? Find(string name) => _own.GetValueOrDefault(name);

    /// <summary>Why this name can't be used here: a fact of another subject, or probably a spelling mistake.</summary>
    public string WhyNot(string name) => _elsewhere.TryGetValue(name, out var other)
        ? $"`{name}` is a fact of a {SubjectWords.Word(other)}; this rule is about a {SubjectWords.Word(Subject)}"
        : $"no fact is named `{name}`{Foundation.Problems.Nearest.Hint(name, _own.Keys)}";
}
