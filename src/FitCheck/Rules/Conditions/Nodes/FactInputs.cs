using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>The values that an expression is evaluated with. A fact without a value is unknown and always says what is missing.</summary>
/// <param name="scope">The facts that may be named.</param>
/// <param name="values">Their values; one that is absent is unknown.</param>
/// <param name="absentIsOpen">Even <c>known(fact)</c> is unknown for an absent fact: a rule's example says nothing of the facts that it
/// leaves out.</param>
/// <param name="lacking">Which keys nobody wrote of those that a fact reads; null where nobody can tell.</param>
internal sealed class FactInputs(FactScope scope, IReadOnlyDictionary<string, FactValue> values, bool absentIsOpen = false,
    Func<Fact, IReadOnlyList<UnwrittenKey>>? lacking = null)
{
    // More keys than these, and most of them are rightly not there.
    private const int MostTold = 4;

    /// <summary>True when nothing is said of this fact, not even that it is unknown.</summary>
    public bool IsOpen(string name) => absentIsOpen && !values.ContainsKey(name);

    /// <summary>The value of a declared fact.</summary>
    public FactValue Of(string name)
    {
        var declared = scope.Find(name) ?? throw new InvalidOperationException($"the fact {name} is not declared");
        if (!values.TryGetValue(name, out var value))
            return FactValue.Unknown(declared.Type, Missing(declared));
        if (value.Type != declared.Type)
            throw new InvalidOperationException($"the fact {name} is declared as {declared.Type}, but computed as {value.Type}");
        if (value.Number is { } number && Brief.IsNonsense(number))
            value = value with { Number = null };
        if (value.IsKnown)
            return value;
        return value.Unsure.Count > 0 ? value with { Unsure = ToldWhere(declared, value.Unsure) }
            : value with { Unsure = Missing(declared) };
    }

    /// <summary>What to do about a fact whose tolerance leaves a question open: the data to read again, or else the fact itself.</summary>
    public IReadOnlyList<Unsure> Inexact(string name) => Of(name).Rereadings?.Told() is { Count: > 0 } data
        ? data
        : [new(WhatOf(scope.Find(name)!), "Measure it more exactly; as recorded it may lie on either side of the limit.", Estimated: false,
        Passing(scope.Find(name)!))];

    /// <summary>True when the fact is a number that may be off.</summary>
    public bool IsInexact(string name) => Of(name).Number is { IsExact: false };

    private IReadOnlyList<UnwrittenKey> Lacking(Fact fact) => lacking?.Invoke(fact) ?? [];

    // The data that are really not written, each with its place; where all are, where it comes from.
    private Unsure[] Missing(Fact fact)
    {
        var keys = Lacking(fact);
        if (keys.Count is 0 or > MostTold)
            return [new(WhatOf(fact), From(fact), Estimated: false, Passing(fact))];
        return [.. keys.Select(k => new Unsure($"{Words(k.Key)} of {k.Of}", $"{fact.Meaning} {k.Order}", Estimated: false,
            keys.Count == 1 && fact.Inputs.Count == 1 ? Passing(fact) : null)
        { Key = k.Reading })];
    }

    // What a fact asks for by itself it names in words; the key that is like them is where to write the answer.
    private Unsure[] ToldWhere(Fact fact, IReadOnlyList<Unsure> unsure)
    {
        var keys = Lacking(fact);
        return [.. unsure.Select(u => u.Estimated || KeyOf(u) is not { } key ? u
            : u with { How = $"{u.How} {key.Order}", Key = key.Reading })];

        UnwrittenKey? KeyOf(Unsure one) => one.Key is { } known ? keys.FirstOrDefault(k => k.Reading == known)
            : keys is [var only] && unsure.Count == 1 ? only
            : keys.Where(k => k.Likeness(one.What) > 0).MaxBy(k => k.Likeness(one.What));
    }

    private static string From(Fact fact) => fact.Inputs.Count == 0 ? "Look for what is not recorded of it."
        : $"It follows from {string.Join(", ", fact.Inputs.Select(i => i.Source.Name).Distinct(StringComparer.Ordinal))}: look there for "
            + "what is not recorded.";

    private static string Words(string key) => key[(key.LastIndexOf('.') + 1)..].Replace('_', ' ');

    private static string WhatOf(Fact fact) => fact.Meaning.TrimEnd('.');

    // The fact itself is what the limit is about, so the limit is what would pass.
    private static Func<PassLimit, string?>? Passing(Fact fact) => fact.Type.Kind == FactKind.Number
        ? limit => QuantityText.FormatLimit(limit.Limit, fact.Type.Dimension, limit.AtLeast) + (limit.AtLeast ? " or more" : " or less")
        : null;
}
