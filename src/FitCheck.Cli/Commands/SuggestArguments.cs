using System.CommandLine;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Suggestions;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;

namespace FitCheck.Cli.Commands;

/// <summary>The build and the options that `fitcheck suggest` takes.</summary>
internal sealed class SuggestArguments
{
    public SuggestArguments()
    {
        Format.AcceptOnlyFromAmong(SuggestionReports.Formats);
        FailOn.AcceptOnlyFromAmong("fail", "measure", "warn");
        Prefer.AcceptOnlyFromAmong("price", "changes", "work", "margin");
    }

    public Argument<string> Build { get; } = new("BUILD")
    {
        HelpName = "BUILD",
        Description = "The build to change; with --vehicle, a seller's list"
    };

    public QuoteOptions Quote { get; } = new("The file is a seller's list for this vehicle");

    public Option<string> Format { get; } = new("--format", "-f")
    {
        Description = "Format of the result",
        DefaultValueFactory = _ => "text",
        HelpName = string.Join('|', SuggestionReports.Formats)
    };

    public Option<string?> Output { get; } = new("--output", "-o")
    {
        Description = "Write to this file instead of standard output",
        HelpName = "FILE"
    };

    public Option<string> FailOn { get; } = new("--fail-on")
    {
        Description = "Remove findings of this status and worse ones",
        DefaultValueFactory = _ => "fail"
    };

    public Option<string> Prefer { get; } = new("--prefer")
    {
        Description = "What makes one answer better than another",
        DefaultValueFactory = _ => "price"
    };

    public Option<string[]> Keep { get; } = new("--keep")
    {
        Description = "A part, position, device or output that stays as it is; give it again for more",
        HelpName = "ID"
    };

    public Option<bool> Stock { get; } = new("--in-stock") { Description = "Only parts that need not be ordered" };

    public Option<string?> Write { get; } = new("--write", "-w")
    {
        Description = "Write the changed build to this file; an existing file is kept",
        HelpName = "FILE"
    };

    public Option<bool> Force { get; } = new("--force") { Description = "Let --write replace an existing file" };

    public Option<int> Time { get; } = new("--time")
    {
        Description = "Search for at most so many seconds",
        DefaultValueFactory = _ => 60,
        HelpName = "SECONDS"
    };

    public CommonOptions Common { get; } = new();

    /// <summary>What the search is told of them.</summary>
    public SuggestOptions Wanted(ParseResult parsed) => new()
    {
        FailOn = StatusWords.Parse(parsed.GetValue(FailOn)!)!.Value,
        Prefer = Enum.Parse<Preference>(parsed.GetValue(Prefer)!, ignoreCase: true),
        Keep = parsed.GetValue(Keep) ?? [],
        CurrentOnly = parsed.GetValue(Stock),
        Time = TimeSpan.FromSeconds(Math.Max(1, parsed.GetValue(Time))),
    };
}
