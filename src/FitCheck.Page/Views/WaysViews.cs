using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Page.State;
using FitCheck.Reports.Html;
using FitCheck.Reports.Suggestions;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;

namespace FitCheck.Page.Views;

/// <summary>The changes that make the build pass, side by side with the build.</summary>
internal static class WaysViews
{
    /// <summary>Before anybody has asked.</summary>
    public static WaysView Asked(string? wish, BuildResult build) => new()
    {
        IsAsked = false,
        Lead = build.Verdict < Status.Fail ? "Nothing has to change by what is known."
            : "FitCheck tries what the catalog has, alone and together, and proves which change is the best.",
        Wishes = Wishes(wish),
    };

    public static WaysView Of(Suggestion suggestion, string text, string? wish)
    {
        var why = suggestion.Conflict is { } conflict
            ? conflict.Obstacles.Count == 0 ? (IReadOnlyList<string>)["Nothing was found in time."]
                : [SuggestionWords.Together(conflict), .. SuggestionWords.Obstacles(conflict), SuggestionWords.Wishes(conflict)]
            : [];
        return new WaysView
        {
            IsAsked = true,
            Lead = suggestion.PassesAlready ? SuggestionWords.NothingToChange(suggestion)
                : SuggestionWords.Warnings(suggestion)
                    ?? (suggestion.Proposals.Count > 0 ? "Each of these makes the build pass." : "Nothing that was tried makes it pass."),
            Wishes = Wishes(wish),
            Now = Now(suggestion.Before),
            Answers = [.. suggestion.Proposals.Select((p, i) => Way(p, i, text))],
            Why = why,
            Proof = suggestion.PassesAlready ? [] : [SuggestionWords.Proof(suggestion), .. SuggestionWords.Scope(suggestion)],
        };
    }

    private static IReadOnlyList<WishView> Wishes(string? wish) =>
        [.. Enum.GetValues<Preference>().Select(p => (Value: p.ToString().ToLowerInvariant(), p))
            .Select(x => new WishView(x.Value, SuggestionWords.Best(x.p), x.Value == (wish ?? "price")))];

    private static WayView Now(BuildResult build) => new("As it is", null, FindingViews.Status(build.Verdict), Headline.Of(build),
        build.Totals.Count == 0 ? "nothing to buy" : string.Join(" + ", build.Totals), "", "", [], []);

    private static WayView Way(Proposal proposal, int index, string text) => new(
        index == 0 ? "The best" : $"Instead, {Figures.Whole(index)}", Step.Between(text, PageState.Lines(proposal.Yaml)).ToString(),
        FindingViews.Status(proposal.After.Verdict), Headline.Of(proposal.After), SuggestionWords.Price(proposal),
        SuggestionWords.Work(proposal.Work), SuggestionWords.Clearance(proposal.LeastClearance) ?? "not known",
        [.. proposal.Changes.Select(c => new ChangeView(SuggestionWords.Change(c), [.. SuggestionWords.Reasons(c)]))],
        [.. Told.Of(proposal.New).Select(t => $"{t.First.Status.Word()}: {t.Where}: {t.First.Message}")]);
}
