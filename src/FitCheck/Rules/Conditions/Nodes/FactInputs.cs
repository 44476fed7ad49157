using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions.Nodes;

/// <summary>The values that an expression is evaluated with. A fact without a value is unknown and always says what is missing.</summary>
/// <param name="scope">The facts that may be named.</param>
/// <param name="values">Their values; one that is absent is unknown.</param>
/// <param name="absentIsOpen">Even <c>known(fact)</c> is unknown for an absent fact: a rule's example says nothing of the facts that it
/// leaves out.</param>
internal sealed class FactInputs(FactScope scope, IReadOnlyDictionary<string, FactValue> values, bool absentIsOpen = false)
{
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
        return value.IsKnown || value.Unsure.Count > 0 ? value : value with { Unsure = [Missing(declared)] };
    }

    /// <summary>What to do about a fact whose tolerance leaves a question open: the data to read again, or else the fact itself.</summary>
    public IReadOnlyList<Unsure> Inexact(string name) => Of(name).Rereadings?.Told() is { Count: > 0 } data
        ? data
        : [new(WhatOf(scope.Find(name)!), "Measure it more exactly; as recorded it may lie on either side of the limit.", Estimated: false,
        Passing(scope.Find(name)!))];

    /// <summary>True when the fact is a number that may be off.</summary>
    public bool IsInexact(string name) => Of(name).Number is { IsExact: false };

    private static Unsure Missing(Fact fact) => new(
        WhatOf(fact), "Nothing that gives it is recorded: add the data to the catalog or to the build.", Estimated: false, Passing(fact));

    private static string WhatOf(Fact fact) => fact.Meaning.TrimEnd('.');

    // The fact itself is what the limit is about, so the limit is what would pass.
    private static Func<PassLimit, string?>? Passing(Fact fact) => fact.Type.Kind == FactKind.Number
        ? limit => QuantityText.Format(limit.Limit, fact.Type.Dimension) + (limit.AtLeast ? " or more" : " or less")
        : null;
}
