using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>For a terminal: what to change, why, and what it costs.</summary>
internal sealed class SuggestionText : ISuggestionReport
{
    private const int Indent = 9;

    public string Format => "text";

    public void Write(Suggestion suggestion, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        var before = suggestion.Before;
        page.Heading(before.Name);
        page.Line(0, VehicleWords.Of(before));
        page.Marked(before.Verdict, Indent, Headline.Of(before));
        page.Gap();
        if (suggestion.PassesAlready)
            page.Line(0, SuggestionWords.NothingToChange(suggestion));
        if (SuggestionWords.Warnings(suggestion) is { } warnings)
        {
            page.Line(0, warnings);
            page.Gap();
        }
        for (var i = 0; i < suggestion.Proposals.Count; i++)
            Proposal(page, suggestion, i);
        if (suggestion.Conflict is { } conflict)
            Conflict(page, conflict);
        page.Gap();
        Readings(page, suggestion);
        if (!suggestion.PassesAlready)
        {
            page.Line(0, SuggestionWords.Proof(suggestion));
            foreach (var line in SuggestionWords.Scope(suggestion))
                page.Line(0, line, TextStyle.Faint);
        }
    }

    private static void Readings(TextPage page, Suggestion suggestion)
    {
        var readings = SuggestionWords.Readings(suggestion).ToList();
        if (readings.Count > 0)
            page.Heading("Measure first: what settles most, for the build as it is");
        foreach (var (what, how, outcome) in readings)
        {
            page.Hanging(2, "- ", $"{what}: {outcome}");
            page.Line(4, how, TextStyle.Faint);
        }
        page.Gap();
    }

    private static void Proposal(TextPage page, Suggestion suggestion, int index)
    {
        var proposal = suggestion.Proposals[index];
        page.Heading(index == 0 ? $"What to change ({SuggestionWords.Best(suggestion.Preference)})" : $"Instead {Figures.Whole(index)}");
        foreach (var change in proposal.Changes)
        {
            page.Hanging(2, "- ", SuggestionWords.Change(change));
            foreach (var reason in SuggestionWords.Reasons(change))
                page.Hanging(4, "because  ", reason);
        }
        if (proposal.Changes.Count == 0)
            page.Hanging(2, "- ", "The seller's list: written anew, with all that the build needs.");
        page.Line(2, $"Total {SuggestionWords.Price(proposal)}; work on the vehicle: {SuggestionWords.Work(proposal.Work)}"
            + (SuggestionWords.Clearance(proposal.LeastClearance) is { } clearance ? $"; least clearance {clearance}" : "") + ".");
        page.Marked(proposal.After.Verdict, Indent, Headline.Of(proposal.After));
        foreach (var told in Told.Of(proposal.New))
            page.Hanging(Indent, $"new: {told.First.Status.Word()}  ", $"{told.Where}: {told.First.Message}");
        page.Gap();
    }

    private static void Conflict(TextPage page, Conflict conflict)
    {
        page.Heading(conflict.Obstacles.Count > 0 ? "Nothing that was tried makes it pass" : "Nothing was found in time");
        if (conflict.Obstacles.Count == 0)
            return;
        page.Line(0, SuggestionWords.Together(conflict));
        foreach (var obstacle in SuggestionWords.Obstacles(conflict))
            page.Hanging(2, "- ", obstacle);
        page.Line(0, SuggestionWords.Wishes(conflict));
    }
}
