using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>Which of several passing builds is the better one.</summary>
public enum Preference
{
    /// <summary>The least total price.</summary>
    Price,
    /// <summary>The fewest changes.</summary>
    Changes,
    /// <summary>The least work on vehicle and parts.</summary>
    Work,
    /// <summary>The largest of the least clearances.</summary>
    Margin,
}

/// <summary>What a search is after.</summary>
internal sealed record Goal
{
    /// <summary>Findings of this status and worse must go.</summary>
    public Status FailOn { get; init; } = Status.Fail;
    public Preference Prefer { get; init; }
    /// <summary>
    /// Findings that were open for want of data before; of equal answers those that open no others come first. Null when that does not
    /// matter.
    /// </summary>
    public IReadOnlySet<(string Rule, string Key)>? OpenBefore { get; init; }
    /// <summary>What was found of the build as it stands; by it is known what an answer adds. Null where that does not matter.</summary>
    public IReadOnlyDictionary<(string Rule, string Key), Status>? Before { get; init; }
    /// <summary>True when what an answer adds stands in its way too.</summary>
    public bool AddsNothing { get; init; }
    /// <summary>How many things that were chosen for their sound may be exchanged.</summary>
    public int Voices { get; init; }
    /// <summary>Only these rules count; null for all.</summary>
    public IReadOnlySet<string>? Rules { get; init; }

    public bool IsBad(RuleVerdict issue) => (issue.Status >= FailOn || (AddsNothing && IsNew(issue.Id, issue.Status))) && Counts(issue);

    /// <summary>
    /// Whether a person has to look at more than before: something that is no pass where nothing as bad was. What had to go does not count
    /// as having been there.
    /// </summary>
    public bool IsNew((string Rule, string Key) finding, Status status) =>
        status != Status.Pass && Before is not null && !(Before.TryGetValue(finding, out var was) && was >= status && was < FailOn);

    /// <summary>Whether an answer adds something to be looked at.</summary>
    public bool IsAddedTo(ProposalVerdict assessment) => assessment.Issues.Any(i => IsNew(i.Id, i.Status) && Counts(i));

    private bool Counts(RuleVerdict issue) => !issue.IsWaived && (Rules is null || Rules.Contains(issue.Rule.Id))
        // The seller's list is written anew with every answer.
        && !issue.Rule.Names.Any(n => n == BuildFacts.QuoteLacksCount.Name || n == BuildFacts.QuoteUnusedCount.Name
            || n == BuildFacts.QuoteSurplusCount.Name);

    /// <summary>How many findings an answer leaves to be measured that were not open before.</summary>
    public int Opened(ProposalVerdict assessment) =>
        OpenBefore is null ? 0 : assessment.Issues.Count(i => i.Status == Status.Measure && !i.IsWaived && !OpenBefore.Contains(i.Id));
}
