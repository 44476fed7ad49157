using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>The sentences that more than one format says, so that a paper and a screen never disagree.</summary>
internal static class Sentences
{
    public static readonly IReadOnlyList<Status> WorstFirst = [Status.Fail, Status.Measure, Status.Warn, Status.Pass];

    public const string Unknown = "unknown — measure";

    public const string LastWord =
        "FitCheck helps to choose parts; the vehicle maker's documents, local codes and licensed practice come first.";

    /// <summary>The answer to "does it go together?" in one sentence, from what is told once each (<see cref="Tally.OfPoints"/>).</summary>
    public static string Verdict(Tally points) => points switch
    {
        { Checks: 0, Waived: 0 } => "Nothing was checked: no rule applies to this build.",
        { Checks: 0 } => "Nothing is left to judge: every finding on this build is waived.",
        { Fail: > 0, Measure: > 0 } =>
            $"This build does not go together as planned: {Points(points.Fail, "has", "have")} to change, and "
                + $"{Number(points.Measure, "waits", "wait")} for a measurement.",
        { Fail: > 0 } => $"This build does not go together as planned: {Points(points.Fail, "has", "have")} to change.",
        { Measure: > 0 } => $"This build can't be judged yet: {Points(points.Measure, "waits", "wait")} for a measurement.",
        { Warn: > 0 } => $"This build goes together, with {Count(points.Warn, "point", "points")} to look at{Waived(points.Waived)}.",
        { Pass: 1 } => $"This build goes together: the one check that applies passes{Waived(points.Waived)}.",
        _ => $"This build goes together: all {Figures.Whole(points.Pass)} checks pass{Waived(points.Waived)}.",
    };

    public const string RulesOfThisShop = "Rules of this shop";

    public const string WhatRulesOfThisShopAre = "This report was judged by limits that differ from those that come with FitCheck:";

    /// <summary>What a shop changed of a rule, and why.</summary>
    public static string Changed(RuleChange change) =>
        $"`{change.Rule}` ({change.Title}): {change.What}.{(change.Reason is { } reason ? $" Reason: {reason}"
            + $"{(reason.EndsWith('.') ? "" : ".")}" : "")}";

    /// <summary>What `lint` found, in one sentence.</summary>
    public static string Lint(LintResult result) => result.Problems.Count == 0
        ? "Catalog, rules and builds are in order."
        : $"{Count(result.Errors, "error", "errors")}, {Count(result.Warnings, "warning", "warnings")}";

    public const string HowToSetTheGain =
        "With a test tone, the source at full volume and the driver unplugged, turn the gain up until a voltmeter at the output shows "
            + "this.";

    /// <summary>What a voltmeter shows when the gain is set.</summary>
    public static string Gain(double volts) =>
        $"gain to start from: {Figures.Show(volts, "V")} at the output, with a test tone, the source at full volume and the driver "
            + $"unplugged";

    /// <summary>`1 pack`, `2 packs`.</summary>
    public static string Count(int count, string one, string many) => $"{Figures.Whole(count)} {(count == 1 ? one : many)}";

    /// <summary>What is left of the budget, or why nothing can be said.</summary>
    public static string? Budget(BuildResult build)
    {
        if (build.Budget is not { } budget)
            return null;
        if (build.Totals.Count == 0)
            return $"Budget {budget}.";
        if (build.Totals.Count > 1 || build.Totals[0].Currency != budget.Currency)
            return $"Budget {budget}; not compared, because the prices are not all in {budget.Currency}.";
        var left = budget.Amount - build.Totals[0].Amount;
        var rest = new Money(Math.Abs(left), budget.Currency);
        return left switch
        {
            > 0 => $"Budget {budget}: {rest} left.",
            0 => $"Budget {budget}: exactly spent.",
            _ => $"Budget {budget}: {rest} over.",
        };
    }

    /// <summary>`1 pack of 2`, or just the number when parts come singly.</summary>
    public static string ToBuy(ListLine line) =>
        line.IsOwned ? "nothing" : line.Pack <= 1 ? Figures.Whole(line.Packs)
            : $"{Count(line.Packs, "pack", "packs")} of {Figures.Whole(line.Pack)}";

    /// <summary>Says only what is out of the ordinary.</summary>
    public static string Availability(string word) => word switch
    {
        "current" => "",
        "to-order" => "to order",
        _ => word,
    };

    /// <summary>Why a finding is accepted, and until when.</summary>
    public static string Waived(Finding finding) => finding.WaivedUntil is { } day
        ? $"{finding.Waived} (until {day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)})" : finding.Waived!;

    private static string Waived(int count) => count == 0 ? "" : $", and {Count(count, "finding is", "findings are")} waived";

    private static string Points(int count, string one, string many) => $"{Count(count, "point", "points")} {(count == 1 ? one : many)}";

    private static string Number(int count, string one, string many) => $"{Figures.Whole(count)} {(count == 1 ? one : many)}";
}
