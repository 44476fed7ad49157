using FitCheck.Findings;
using FitCheck.Reports.Telling;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>For a comment under a pull request, or a mail.</summary>
public sealed class SuggestionMarkdown : ISuggestionReport
{
    public string Format => "markdown";

    public void Write(Suggestion suggestion, ReportOptions options, TextWriter output)
    {
        var before = suggestion.Before;
        Line(output, $"## {Escaped(before.Name)}");
        Line(output, "");
        Line(output, $"**{before.Verdict.Word()}**: {Escaped(Wording.Verdict(Tally.OfPoints(before.Findings)))}");
        if (suggestion.PassesAlready)
            Line(output, "\nIt passes as it is: nothing has to change.");
        for (var i = 0; i < suggestion.Proposals.Count; i++)
            Proposal(output, suggestion, i);
        if (suggestion.Conflict is { } conflict)
        {
            Line(output, "\n### Nothing from the catalog makes it pass\n");
            foreach (var told in conflict.Obstacles)
                Line(output, $"- {Escaped(told.Finding.PositionName)}: {Escaped(told.Finding.Message)} (`{told.Finding.Rule}`){(told.Nearest is { } nearest ? " " + Escaped(nearest) : "")}");
            foreach (var wish in conflict.Wishes)
                Line(output, $"- {Escaped(wish)}");
        }
        if (!suggestion.PassesAlready)
            Line(output, $"\n{Escaped(SuggestionWords.Proof(suggestion))} {Escaped(SuggestionWords.Scope)}");
    }

    private static void Proposal(TextWriter output, Suggestion suggestion, int index)
    {
        var proposal = suggestion.Proposals[index];
        Line(output, index == 0 ? $"\n### What to change ({SuggestionWords.Best(suggestion.Preference)})\n" : $"\n### Instead {Figures.Whole(index)}\n");
        foreach (var change in proposal.Changes)
        {
            Line(output, $"- {Escaped(SuggestionWords.Change(change))}");
            foreach (var reason in SuggestionWords.Reasons(change))
                Line(output, $"  - because {Escaped(reason)}");
        }
        if (proposal.Changes.Count == 0)
            Line(output, "- The seller's list: written anew, with all that the build needs.");
        Line(output, $"\nTotal {SuggestionWords.Price(proposal)}; work on the vehicle: {SuggestionWords.Work(proposal.Work)}. Then **{proposal.After.Verdict.Word()}**: {Escaped(Wording.Verdict(Tally.OfPoints(proposal.After.Findings)))}");
        foreach (var told in Told.Of(proposal.New))
            Line(output, $"- new {told.First.Status.Word()}: {Escaped(told.Where)}: {Escaped(told.First.Message)}");
    }

    private static void Line(TextWriter output, string line) => output.Write(line + "\n");

    // Names come from a catalog that anyone may have written.
    private static string Escaped(string text)
    {
        var escaped = new System.Text.StringBuilder(text.Length + 8);
        foreach (var c in text)
        {
            if (c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' or '&' or '!')
                escaped.Append('\\');
            escaped.Append(char.IsControl(c) ? ' ' : c);
        }
        return escaped.ToString();
    }
}
