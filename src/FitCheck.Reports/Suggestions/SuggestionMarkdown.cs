using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>For a comment under a pull request, or a mail.</summary>
internal sealed class SuggestionMarkdown : ISuggestionReport
{
    public string Format => "markdown";

    public void Write(Suggestion suggestion, ReportOptions options, TextWriter output)
    {
        var before = suggestion.Before;
        Line(output, $"## {Escaped(before.Name)}");
        Line(output, "");
        if (VehicleWords.Note(before.StandIn) is { } note)
            Line(output, $"{Escaped($"{before.VehicleName}. {note}")}\n");
        Line(output, $"**{before.Verdict.Word()}**: {Escaped(Headline.Of(before))}");
        if (suggestion.PassesAlready)
            Line(output, "\n" + SuggestionWords.NothingToChange(suggestion));
        if (SuggestionWords.Warnings(suggestion) is { } warnings)
            Line(output, "\n" + warnings);
        for (var i = 0; i < suggestion.Proposals.Count; i++)
            Proposal(output, suggestion, i);
        if (suggestion.Conflict is { } conflict)
        {
            Line(output, conflict.Obstacles.Count > 0 ? "\n### Nothing that was tried makes it pass\n" : "\n### Nothing was found in time");
            if (conflict.Obstacles.Count > 0)
                Line(output, SuggestionWords.Together(conflict) + "\n");
            foreach (var obstacle in SuggestionWords.Obstacles(conflict))
                Line(output, $"- {Escaped(obstacle)}");
            if (conflict.Obstacles.Count > 0)
                Line(output, $"\n{Escaped(SuggestionWords.Wishes(conflict))}");
        }
        var readings = SuggestionWords.Readings(suggestion).ToList();
        if (readings.Count > 0)
            Line(output, "\n### Measure first\n");
        foreach (var (what, how, outcome) in readings)
            Line(output, $"- {Escaped(what)}: {Escaped(outcome)} {Escaped(how)}");
        if (!suggestion.PassesAlready)
        {
            Line(output, $"\n{Escaped(SuggestionWords.Proof(suggestion))}");
            foreach (var line in SuggestionWords.Scope(suggestion))
                Line(output, $"\n{Escaped(line)}");
        }
    }

    private static void Proposal(TextWriter output, Suggestion suggestion, int index)
    {
        var proposal = suggestion.Proposals[index];
        Line(output,
            index == 0 ? $"\n### What to change ({SuggestionWords.Best(suggestion.Preference)})\n"
                : $"\n### Instead {Figures.Whole(index)}\n");
        foreach (var change in proposal.Changes)
        {
            Line(output, $"- {Escaped(SuggestionWords.Change(change))}");
            foreach (var reason in SuggestionWords.Reasons(change))
                Line(output, $"  - because {Escaped(reason)}");
        }
        if (proposal.Changes.Count == 0)
            Line(output, "- The seller's list: written anew, with all that the build needs.");
        Line(output,
            $"\nTotal {SuggestionWords.Price(proposal)}; work on the vehicle: {SuggestionWords.Work(proposal.Work)}. Then **"
                + $"{proposal.After.Verdict.Word()}**: {Escaped(Headline.Of(proposal.After))}");
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
