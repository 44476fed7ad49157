using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;

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

    /// <summary>`Front door, left and right: no spacer → 18 mm spacer (spacer-165-tansy-18), +12.00 EUR`.</summary>
    public static string Change(ProposedChange change)
    {
        var price = change.Difference is { Amount: not 0 } difference ? $", {Signed(difference)}" : "";
        var was = change.From is null ? $"no {change.What}" : $"{change.What} {Choice(change.FromName, change.From)}";
        return $"{Names.Joined(change.Where)}: {was} → {Choice(change.ToName, change.To)}{price}";
    }

    /// <summary>One sentence a rule: what would stand in the way, and how far the change moves it.</summary>
    public static IEnumerable<string> Reasons(ProposedChange change)
    {
        foreach (var same in change.Because.GroupBy(r => (r.Without.Rule, Move(r))))
            yield return $"{Names.Joined(same.Select(r => r.Without.PositionName))}: {Lower(same.First().Without.Title)}"
                + $"{same.Key.Item2} ({same.Key.Rule})";
    }

    public static string Price(Proposal proposal)
    {
        var total = proposal.After.Totals.Count == 0 ? "nothing to buy" : string.Join(" + ", proposal.After.Totals);
        var difference = proposal.Difference.Where(m => m.Amount != 0).ToList();
        return difference.Count == 0 ? $"{total}, as before" : $"{total} ({string.Join(", ", difference.Select(Signed))})";
    }

    public static string Work(int work) => work == 0 ? "none" : Sentences.Count(work, "point", "points");

    public static string? Clearance(double? metres) => metres is { } m ? Figures.Show(m * 1000, "mm") : null;

    public static string Proof(Suggestion suggestion)
    {
        var proof = suggestion.Proof;
        var counts =
            $"{Sentences.Count(proof.Judged, "combination was", "combinations were")} judged by all rules, "
                + $"{Figures.Whole(proof.Foreseen)} ruled out by a single finding"
            + (proof.TooDear > 0 ? $", {Figures.Whole(proof.TooDear)} left because nothing could make them better" : "");
        if (!proof.Complete && suggestion.WithoutNewWarning == true)
            return $"Not proved that nothing else without a new warning is better: it was left at {counts}.";
        if (!proof.Complete)
            return $"Not proved: the time ran out after {counts}.";
        return suggestion.Proposals.Count > 0
            ? $"Proved: {counts}. No other choice that was tried is better by {Best(suggestion.Preference)}; what need not change was "
                + $"left as it is."
            : $"Proved: {counts}. Nothing that was tried makes this build pass.";
    }

    /// <summary>That the proposals add something to be looked at, and that nothing else would do; null for nothing to say.</summary>
    public static string? Warnings(Suggestion suggestion) => (suggestion.Proposals.Count, suggestion.WithoutNewWarning) switch
    {
        (0, _) or (_, true) => null,
        (_, false) => "No answer without a new warning exists among what was tried: whoever takes one of these has to look at what "
            + "it adds.",
        _ => "No answer without a new warning was found that keeps as much of what was chosen for its sound; that there is none "
            + "at all is not proved. Each of these adds something to look at.",
    };

    public static string NothingToChange(Suggestion suggestion) => suggestion.Before.Verdict == Status.Measure
        ? "Nothing has to change by what is known; what is open has to be measured."
        : "It passes as it is: nothing has to change.";

    /// <summary>Over what the proof holds, what it leaves out, and which parts were looked at.</summary>
    public static IEnumerable<string> Scope(Suggestion suggestion)
    {
        var besides = suggestion.Coverage.Tried.Where(t => t.Where is ["extras"]).Select(t => t.What).ToList();
        var tried = suggestion.Coverage.Tried.Where(t => t.Where is not ["extras"]).Select(t => t.Choices).Distinct(StringComparer.Ordinal)
            .ToList();
        if (besides.Count > 0)
            tried.Add($"one further pack each of {string.Join(", ", besides)}");
        yield return $"{(suggestion.Proof.Complete ? "Proved over" : "Looked among")}: "
            + $"{(tried.Count == 0 ? "nothing, as all is to be kept" : string.Join("; ", tried))}. All of it alone and together, alike "
            + $"on both sides of the vehicle.";
        yield return $"Not tried: {string.Join("; ", suggestion.Coverage.NotTried)}.";
        yield return "Parts were looked at that are for this vehicle or universal, on the factory plug's family. What was chosen for "
            + "its sound (drivers, sets, radio, converter, amplifier) stays as long as anything else helps.";
    }

    public static string Signed(Money money) => (money.Amount > 0 ? "+" : "") + money;

    /// <summary>What stands in the way, a sentence each.</summary>
    public static IEnumerable<string> Obstacles(Conflict conflict)
    {
        foreach (var obstacle in conflict.Obstacles)
        {
            var nearest = obstacle.Nearest is { } best
                ? $" The nearest that a choice comes to it is a margin of {Figures.Show(best.Margin, best.Unit)}." : "";
            if (obstacle.Findings.Count == 0)
                yield return $"What would be chosen instead does not keep `{obstacle.Rule}`: {Lower(obstacle.Title)}.{nearest}";
            foreach (var told in Told.Of(obstacle.Findings))
                yield return $"{told.Where}: {told.First.Message} ({obstacle.Rule}){nearest}";
        }
    }

    /// <summary>What it would help to give up.</summary>
    public static string Wishes(Conflict conflict) => conflict.Wishes.Count switch
    {
        0 => "No single wish of the build (what it keeps, its budget, the work it accepts) is to blame: among what was tried, giving it "
            + "up would not be enough.",
        1 => $"It would pass if one wish were given up: {conflict.Wishes[0]}.",
        _ => $"It would pass if one of these wishes were given up: {string.Join("; ", conflict.Wishes)}.",
    };

    public static string Together(Conflict conflict) =>
        conflict.Obstacles.Count == 1 ? "Nothing that was tried keeps this rule:"
            : "Each of these could be kept, but nothing that was tried keeps them together:";

    /// <summary>The readings that settle most, each in a sentence with its outcomes; those of both sides of the vehicle are one.</summary>
    public static IEnumerable<(string What, string How, string Outcome)> Readings(Suggestion suggestion)
    {
        foreach (var alike in suggestion.Readings.Where(r => r.Settles.Count > 0)
            .GroupBy(r => $"{r.How}|{r.Passing}|{r.Bearable}|{string.Join(',', r.Settles)}", StringComparer.Ordinal).Take(3))
        {
            var first = alike.First();
            var count = alike.Sum(r => r.Settles.Count);
            var each = alike.Count() > 1 ? ", each with the same readings" : "";
            var outcome =
                $"settles {Sentences.Count(count, "finding", "findings")}{each}: "
                    + $"{string.Join("; ", first.Settles.Select(Lower).Distinct(StringComparer.Ordinal))}."
                + (first.Passing is { } passing ? $" {passing}: {(first.Settles.Count == 1 ? "it passes" : "all pass")}." : "")
                + (first.Bearable is { } bearable && bearable != first.Passing ? $" It may fail unless it is {bearable}."
                : first.Bearable is not null ? " Otherwise it may fail." : "");
            yield return (Names.Joined(alike.Select(r => r.What)), first.How, outcome);
        }
    }

    private static string Move(Reason reason)
    {
        if (Figures.Margin(reason.Without) is not { } before)
            return "";
        return reason.With is { } with && Figures.Margin(with) is { } after ? $", margin {before} → {after}" : $", margin {before}";
    }

    private static string Choice(string? name, string? id) => id is null ? "none" : name is null ? id : $"{name} ({id})";

    private static string Lower(string title) =>
        title.Length > 1 && char.IsUpper(title[0]) && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;
}
