using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>A verdict with its evidence, for whoever shows it; without messages and places.</summary>
/// <param name="Status">The status.</param>
/// <param name="Fact">The value that was judged.</param>
/// <param name="Limits">Every limit of the rule.</param>
/// <param name="Deciding">The limit that decided; for a pass the nearest, for an unknown value the strictest.</param>
/// <param name="Unsure">What is missing or guessed, when that is why.</param>
/// <param name="Data">Where the data stand that it rests on.</param>
internal sealed record Judgement(Status Status, FactValue Fact, IReadOnlyList<Limit> Limits, Limit? Deciding, IReadOnlyList<Unsure> Unsure,
    IReadOnlyList<Datum> Data)
{
    /// <summary>
    /// True when only the tolerances of good data leave it open whether the limit is kept: a warning, or a failure that they could still
    /// save.
    /// </summary>
    public bool InDoubt { get; init; }

    /// <summary>Distance to the deciding limit in SI, negative beyond it; null when the value or the limit is unknown.</summary>
    public double? Margin => Deciding?.Margin(Fact);

    /// <summary>Judges one subject; null when the rule doesn't apply to it.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="inputs">The facts of the subject.</param>
    /// <param name="given">Takes the place of the rule's fact, for examples.</param>
    /// <param name="applies">Takes the place of the rule's condition, for examples.</param>
    public static Judgement? Of(Rule rule, FactInputs inputs, FactValue? given = null, bool? applies = null)
    {
        var when = applies is { } forced ? FactValue.Of(forced) : rule.When?.Evaluate(inputs) ?? FactValue.Of(true);
        if (when.Truth == false)
            return null;
        var fact = given ?? rule.Fact.Evaluate(inputs);
        var limits = Limit.AllOf(rule, inputs);
        var verdict = Verdict.Of(Brief.Of(fact), [.. limits.Select(l => l.InBrief)], Manner.Of(rule),
            when.IsKnown ? Facts.Values.Doubts.Of(when.Unsure) : Doubt.None);
        // What passes if the rule applies is nothing to ask about.
        if (!when.IsKnown && verdict.Status != Status.Pass)
            return new Judgement(Status.Measure, fact, limits, null, Told(rule.When!, when, inputs, []), when.Data);
        var unsure = Doubts();
        if (verdict.Status == Status.Measure && unsure.Count == 0)
            unsure = Told(rule.Fact, fact, inputs, limits);
        var deciding = verdict.Deciding < 0 ? null : limits[verdict.Deciding];
        return new Judgement(verdict.Status, fact, limits, deciding, unsure,
            [.. fact.Data, .. limits.SelectMany(l => l.Value.Data)])
        { InDoubt = verdict.InDoubt };

        // What a datum of the condition or of a limit has to be can't be told from the limit of the fact.
        IReadOnlyList<Unsure> Doubts() => fact.IsKnown
            ? [.. fact.Unsure, .. limits.SelectMany(l => l.Value.Unsure).Concat(when.Unsure).Select(Evidence.WithoutPassing)]
            : fact.Unsure;
    }

    // A measure finding always says what to measure, even where only tolerances leave it open: those of the value or those of its limits.
    private static IReadOnlyList<Unsure> Told(Expression expression, FactValue value, FactInputs inputs, IReadOnlyList<Limit> limits)
    {
        if (value.Unsure.Count > 0)
            return value.Unsure;
        Unsure[] inexact =
        [
            .. expression.Inexact(inputs).Concat(limits.SelectMany(l => l.Bound.Inexact(inputs)).Select(Evidence.WithoutPassing))
                .DistinctBy(u => u.What, StringComparer.Ordinal),
        ];
        return inexact.Length > 0 ? inexact : [new Unsure(expression.Text, "The data recorded leave it open; measure them again.",
            Estimated: false)];
    }
}
