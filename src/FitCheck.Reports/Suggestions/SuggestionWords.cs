using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Reports.Telling;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>The sentences of a suggestion, the same in every format.</summary>
internal static class SuggestionWords
{
    public static string Best(Preference preference) => preference switch
    {
        Preference.Changes => "the fewest changes",
        Preference.Work => "the least work",
        Preference.Margin => "the largest of the least clearances",
        _ => "the least total price",
    };

    /// <summary>`Front door, left and right: spacer none → 18 mm spacer (spacer-165-tansy-18), +12.00 EUR`.</summary>
    public static string Change(ProposedChange change)
    {
        var price = change.Difference is { Amount: not 0 } difference ? $", {Signed(difference)}" : "";
        return $"{Names.Joined(change.Where)}: {change.What} {Choice(change.FromName, change.From)} → {Choice(change.ToName, change.To)}{price}";
    }

    /// <summary>One sentence a rule: what would stand in the way, and how far the change moves it.</summary>
    public static IEnumerable<string> Reasons(ProposedChange change)
    {
        foreach (var same in change.Because.GroupBy(r => (r.Without.Rule, Move(r))))
            yield return $"{Names.Joined(same.Select(r => r.Without.PositionName))}: {Lower(same.First().Without.Title)}{same.Key.Item2} ({same.Key.Rule})";
    }

    public static string Price(Proposal proposal)
    {
        var total = proposal.After.Totals.Count == 0 ? "nothing to buy" : string.Join(" + ", proposal.After.Totals);
        var difference = proposal.Difference.Where(m => m.Amount != 0).ToList();
        return difference.Count == 0 ? $"{total}, as before" : $"{total} ({string.Join(", ", difference.Select(Signed))})";
    }

    public static string Work(int work) => work == 0 ? "none" : Wording.Count(work, "point", "points");

    public static string? Clearance(double? metres) => metres is { } m ? Figures.Show(m * 1000, "mm") : null;

    public static string Proof(Suggestion suggestion)
    {
        var proof = suggestion.Proof;
        var counts = $"{Wording.Count(proof.Judged, "combination was", "combinations were")} judged by all rules, {Figures.Whole(proof.Foreseen)} ruled out by what those had shown"
            + (proof.TooDear > 0 ? $", {Figures.Whole(proof.TooDear)} left because nothing could make them better" : "");
        if (!proof.Complete)
            return $"Not proved: the time ran out after {counts}.";
        return suggestion.Proposals.Count > 0
            ? $"Proved: {counts}. No other choice from the catalog is better by {Best(suggestion.Preference)}."
            : $"Proved: {counts}. No choice from the catalog makes this build pass.";
    }

    public const string Scope =
        "Looked at: parts that are still made, for this vehicle or universal, on the factory plug's family. What was chosen for its sound (drivers, sets, radio, converter, amplifier) stays as long as anything else helps.";

    public static string Signed(Money money) => (money.Amount > 0 ? "+" : "") + money;

    private static string Move(Reason reason)
    {
        if (Figures.Margin(reason.Without) is not { } before)
            return "";
        return reason.With is { } with && Figures.Margin(with) is { } after ? $", margin {before} → {after}" : $", margin {before}";
    }

    private static string Choice(string? name, string? id) => id is null ? "none" : name is null ? id : $"{name} ({id})";

    private static string Lower(string title) => title.Length > 1 && char.IsUpper(title[0]) && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;
}
