using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>The status that a rule gives, and what it rests on; without messages and places.</summary>
/// <param name="Status">The status.</param>
/// <param name="Fact">The value that was judged.</param>
/// <param name="Limits">Every limit of the rule.</param>
/// <param name="Deciding">The limit that decided; for a pass the nearest, for an unknown value the strictest.</param>
/// <param name="Unsure">What is missing or guessed, when that is why.</param>
/// <param name="Data">Where the data stand that it rests on.</param>
internal sealed record Judgement(Status Status, FactValue Fact, IReadOnlyList<Limit> Limits, Limit? Deciding, IReadOnlyList<Unsure> Unsure, IReadOnlyList<Datum> Data)
{
    /// <summary>True when only the tolerances of good data leave it open whether the limit is kept: a warning, or a failure that they could still save.</summary>
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
        if (!when.IsKnown)
            return new Judgement(Status.Measure, fact, limits, null, Told(rule.When!, when, inputs, []), when.Data);

        Limit? decided = null;
        var doubt = false;
        var status = fact.IsKnown ? Compare(rule, fact, limits, Doubts(), out decided, out doubt) : Status.Measure;
        var unsure = Doubts();
        var savedByTolerances = doubt && status == Status.Measure && unsure.Count == 0 && decided?.Margin(fact) < 0 && fact.Number is { IsExact: false };
        if (status == Status.Measure && unsure.Count == 0)
            unsure = Told(rule.Fact, fact, inputs, limits);
        decided ??= Strictest(limits);
        return new Judgement(status, fact, limits, decided, unsure, [.. fact.Data, .. limits.SelectMany(l => l.Value.Data)])
        {
            InDoubt = savedByTolerances || (doubt && status == Status.Warn),
        };

        // What a datum of the condition or of a limit has to be can't be told from the limit of the fact.
        IReadOnlyList<Unsure> Doubts() => fact.IsKnown
            ? [.. fact.Unsure, .. limits.SelectMany(l => l.Value.Unsure).Concat(when.Unsure).Select(Evidence.WithoutPassing)]
            : fact.Unsure;
    }

    // The worst case must settle on which side of the outermost limit a value lies: one that is nominally beyond the limit of failing never goes
    // together, and where its tolerances could save it, it waits for a measurement (but an entry that contradicts itself is told at once). A warning
    // short of a failure goes by the nominal value: a margin that is good enough is not made a warning by the tolerances of good data.
    private static Status Compare(Rule rule, FactValue fact, IReadOnlyList<Limit> limits, IReadOnlyList<Unsure> doubts, out Limit? decided, out bool doubt)
    {
        doubt = false;
        // A datum whose every value lies within the bounds of the fact leaves open only what lies between them.
        var guessed = doubts.Any(d => !d.IsBounded);
        var bounded = doubts.Any(d => d.IsBounded);
        var known = limits.Where(l => l.Value.IsKnown).ToList();
        var open = guessed || bounded ? Status.Measure : Status.Warn;
        if (First(Status.Fail, true, out decided))
            return Status.Fail;
        decided = limits.FirstOrDefault(l => !l.Value.IsKnown);
        if (decided is not null)
            return Status.Measure;
        if (First(Status.Fail, null, out decided))
        {
            doubt = true;
            return rule.Warn is null || (decided!.Margin(fact) < 0 && !rule.Subject.IsOfEntries()) ? Status.Measure : open;
        }
        if (First(Status.Warn, true, out decided))
            return Status.Warn;
        if (First(Status.Warn, null, out decided))
        {
            doubt = rule.Fail is null;
            if (guessed || bounded || doubt || decided!.Margin(fact) < 0)
                return open;
        }
        decided = Nearest(known, fact);
        return guessed ? Status.Measure : Status.Pass;

        bool First(Status status, bool? broken, out Limit? limit)
        {
            limit = Nearest(known.Where(l => l.Status == status && l.IsBroken(fact) == broken), fact);
            return limit is not null;
        }
    }

    private static Limit? Nearest(IEnumerable<Limit> limits, FactValue fact) => limits.MinBy(l => l.Margin(fact) ?? 0);

    private static Limit? Strictest(IReadOnlyList<Limit> limits) => limits.FirstOrDefault(l => l.Status == Status.Warn) ?? (limits.Count > 0 ? limits[0] : null);

    // A measure finding always says what to measure, even where only tolerances leave it open: those of the value or those of its limits.
    private static IReadOnlyList<Unsure> Told(Expression expression, FactValue value, FactInputs inputs, IReadOnlyList<Limit> limits)
    {
        if (value.Unsure.Count > 0)
            return value.Unsure;
        Unsure[] inexact =
        [
            .. expression.Inexact(inputs).Concat(limits.SelectMany(l => l.Bound.Inexact(inputs)).Select(Evidence.WithoutPassing)).DistinctBy(u => u.What, StringComparer.Ordinal),
        ];
        return inexact.Length > 0 ? inexact : [new Unsure(expression.Text, "The data recorded leave it open; measure them again.", Estimated: false)];
    }
}
