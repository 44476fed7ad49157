using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Rules.Model;

/// <summary>A row of the rule's own test: what is given, and which status it has to give.</summary>
/// <param name="Name">What the row shows.</param>
/// <param name="At">Where it stands.</param>
/// <param name="Given">Takes the place of the rule's fact; null when the fact is computed from <paramref name="Facts"/>.</param>
/// <param name="Facts">Values of facts for the condition, the fact and the thresholds.</param>
/// <param name="Expect">Null when the rule must not apply.</param>
internal sealed record RuleExample(string Name, Location At, FactValue? Given, IReadOnlyDictionary<string, FactValue> Facts,
    Status? Expect);
