using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions.Searching;

namespace FitCheck.Suggestions;

/// <summary>What `suggest` found: a result, or the reasons why there is none.</summary>
public sealed record SuggestOutcome(Suggestion? Result, IReadOnlyList<Problem> Problems);

/// <summary>The answer to `suggest`: everything a report may tell of it.</summary>
public sealed record Suggestion
{
    /// <summary>Name and version of what looked.</summary>
    public required string Program { get; init; }
    /// <summary>SHA-256 over the files of the catalogs, hexadecimal.</summary>
    public required string CatalogDigest { get; init; }
    /// <summary>Which of several answers was to be the best.</summary>
    public required Preference Preference { get; init; }
    /// <summary>Findings of this status and worse had to go.</summary>
    public required Status FailOn { get; init; }
    /// <summary>The build as it was given.</summary>
    public required BuildResult Before { get; init; }
    /// <summary>True when nothing has to change.</summary>
    public bool PassesAlready { get; init; }
    /// <summary>Changes with which it passes, best first; empty when there are none.</summary>
    public IReadOnlyList<Proposal> Proposals { get; init; } = [];
    /// <summary>
    /// True when the proposals add nothing to be looked at or measured; false when it is proved that nothing that was tried passes without;
    /// null when that is not known, or nothing was proposed.
    /// </summary>
    public bool? WithoutNewWarning { get; init; }
    /// <summary>Why nothing passes; null when something does.</summary>
    public Conflict? Conflict { get; init; }
    /// <summary>How sure the answer is.</summary>
    public required Proof Proof { get; init; }
    /// <summary>Over what the proof holds; nothing was tried when nothing has to change.</summary>
    public Coverage Coverage { get; init; } = new([], []);
    /// <summary>What to measure on the vehicle for the build as given, the reading that settles most first.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>True when it passes already or a change makes it pass.</summary>
    public bool Passes => PassesAlready || Proposals.Count > 0;
}

/// <summary>Changes that make the build pass, and what they bring about.</summary>
public sealed record Proposal
{
    /// <summary>What is chosen otherwise.</summary>
    public required IReadOnlyList<ProposedChange> Changes { get; init; }
    /// <summary>The changed build, checked in full.</summary>
    public required BuildResult After { get; init; }
    /// <summary>The changed build as YAML.</summary>
    public required string Yaml { get; init; }
    /// <summary>What it costs more than before; negative when it costs less.</summary>
    public required IReadOnlyList<Money> Difference { get; init; }
    /// <summary>Findings that warn of work on vehicle or parts.</summary>
    public required int Work { get; init; }
    /// <summary>What is left of any length before it fails, the least anywhere, m; null when none is known.</summary>
    public double? LeastClearance { get; init; }
    /// <summary>Findings that are no pass where the build had none as bad before, but for what had to go.</summary>
    public IReadOnlyList<Finding> New { get; init; } = [];
    /// <summary>True when it leaves open what was settled before, for want of data.</summary>
    public bool InDoubt { get; init; }
}

/// <summary>One thing that is chosen otherwise.</summary>
/// <param name="What">As a person calls it: `spacer`.</param>
/// <param name="Where">Names of positions, outputs or devices.</param>
/// <param name="From">A part's id or a setting; null for nothing.</param>
/// <param name="To">The part's id or the setting that comes instead; null for nothing.</param>
public sealed record ProposedChange(string What, IReadOnlyList<string> Where, string? From, string? To)
{
    /// <summary>The name of the part that goes, where it is one.</summary>
    public string? FromName { get; init; }
    /// <summary>The name of the part that comes, where it is one.</summary>
    public string? ToName { get; init; }
    /// <summary>What it adds to the price, in the build's currency.</summary>
    public Money? Difference { get; init; }
    /// <summary>What would stand in the way without it, before and with it.</summary>
    public IReadOnlyList<Reason> Because { get; init; } = [];
}

/// <summary>A finding that a change removes: without it, and with it (null when the rule no longer applies).</summary>
public sealed record Reason(Finding Without, Finding? With);

/// <summary>Why nothing passes.</summary>
public sealed record Conflict
{
    /// <summary>The smallest set of rules that nothing that was tried keeps together: each could be kept without the others.</summary>
    public IReadOnlyList<Obstacle> Obstacles { get; init; } = [];
    /// <summary>
    /// Wishes (kept parts, budget, work that is not accepted, parts to order) of which giving up any single one would be enough.
    /// </summary>
    public IReadOnlyList<string> Wishes { get; init; } = [];
}

/// <summary>A rule of the conflict.</summary>
/// <param name="Rule">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Findings">What it finds in the build as given; empty when it fails only what would be chosen instead.</param>
/// <param name="Nearest">The best that any tried choice reached without keeping it.</param>
public sealed record Obstacle(string Rule, string Title, IReadOnlyList<Finding> Findings, Approach? Nearest);

/// <summary>A margin in the rule's unit.</summary>
public sealed record Approach(double Margin, string Unit);
