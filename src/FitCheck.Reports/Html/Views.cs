using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Html;

// What the templates see: text that is ready to be read, in the order in which it is read. Scriban names members in snake case.

internal sealed record PageView(string Title, string Program, string Digest, SafeHtml Style, IReadOnlyList<BuildView> Builds, bool Several)
{
    /// <summary>Null for a single build and for many.</summary>
    public required ComparisonView? Comparison { get; init; }
    /// <summary>For whom it is; null leaves that to be filled in on paper.</summary>
    public required string? Customer { get; init; }
}

internal sealed record ComparisonView(string Title, IReadOnlyList<ComparedView> Builds, IReadOnlyList<ComparisonRowView> Rows,
    IReadOnlyList<string> Sentences);

internal sealed record ComparedView(string Letter, string Name, string Href, StatusView Verdict);

internal sealed record ComparisonRowView(string Label, IReadOnlyList<ComparisonCellView> Cells);

/// <summary>A cell with the mark of what rules say of it; null where none is about it.</summary>
internal sealed record ComparisonCellView(string Letter, string Text, StatusView? Status);

internal sealed record BuildView
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string Vehicle { get; init; }
    public required string File { get; init; }
    public required string? Notes { get; init; }
    public required StatusView Verdict { get; init; }
    public required string Sentence { get; init; }
    public required string WaivedChecks { get; init; }
    public required IReadOnlyList<CountView> Counts { get; init; }
    public required IReadOnlyList<TaskView> Tasks { get; init; }
    /// <summary>What fails: the headline speaks of it first.</summary>
    public required IReadOnlyList<FindingView> Changes { get; init; }
    /// <summary>What warns.</summary>
    public required IReadOnlyList<FindingView> Looks { get; init; }
    public required IReadOnlyList<CardView> Positions { get; init; }
    public required IReadOnlyList<CardView> Channels { get; init; }
    public required CardView? Supply { get; init; }
    public required CardView? Whole { get; init; }
    public required IReadOnlyList<SettingView> Settings { get; init; }
    public required ListView? List { get; init; }
    public required IReadOnlyList<string> Cautions { get; init; }
    public required string LastWord { get; init; }
    /// <summary>What passes, for paper: on the screen it folds under each card.</summary>
    public required IReadOnlyList<ProofView> Proof { get; init; }
    public required string ProofTitle { get; init; }
    /// <summary>The places of which no rule says anything; null without.</summary>
    public required string? Unjudged { get; init; }
    public required IReadOnlyList<SourceView> Sources { get; init; }
    public required IReadOnlyList<FindingView> Waived { get; init; }
    public required IReadOnlyList<string> RuleChanges { get; init; }
    public required string RuleChangesTitle { get; init; }
    public required string RuleChangesLead { get; init; }
    public required IReadOnlyList<UnjudgedView> NotJudged { get; init; }
    public required string NotJudgedTitle { get; init; }
    public required string NotJudgedLead { get; init; }
    public required IReadOnlyList<string> Remarks { get; init; }
}

/// <summary>A status as word and as shape.</summary>
internal sealed record StatusView(string Word, SafeHtml Icon);

internal sealed record CountView(StatusView Status, string Number);

internal sealed record TaskView(string What, string How, IReadOnlyList<OutcomeView> Outcomes, IReadOnlyList<string> Lines);

internal sealed record OutcomeView(string? Passing, string Title, string Position, string Href);

internal sealed record FindingView
{
    public required string Id { get; init; }
    public required StatusView Status { get; init; }
    public required string Title { get; init; }
    public required string Position { get; init; }
    /// <summary>The position's name where no card says it; else null.</summary>
    public string? Where { get; init; }
    /// <summary>The element of its title, one below the heading it stands under.</summary>
    public required string Heading { get; init; }
    public required string? Message { get; init; }
    public required string? Advice { get; init; }
    /// <summary>Null, as what follows, where numbers say no more than the message.</summary>
    public required string? Value { get; init; }
    public required string? Range { get; init; }
    public required string? Limit { get; init; }
    public required string? Margin { get; init; }
    public required SafeHtml? Bar { get; init; }
    public required string Rule { get; init; }
    public required IReadOnlyList<string> At { get; init; }
    public required IReadOnlyList<DatumView> Related { get; init; }
    public required string? Waived { get; init; }
}

internal sealed record DatumView(string What, string Place);

/// <summary>A position or mirrored ones, an output or equal ones, or the build as a whole, with its drawing and its findings.</summary>
internal sealed record CardView
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string? Subtitle { get; init; }
    /// <summary>Null when no rule said anything of it.</summary>
    public required StatusView? Status { get; init; }
    public required IReadOnlyList<SafeHtml> Drawings { get; init; }
    public required IReadOnlyList<FindingView> Findings { get; init; }
    public required IReadOnlyList<FindingView> Passes { get; init; }
    public required string PassesTitle { get; init; }
    /// <summary>A place at which the build puts nothing.</summary>
    public bool IsAsBefore { get; init; }
    /// <summary>On paper a card without a finding needs a drawing of something new that was judged.</summary>
    public bool Printed => Findings.Count > 0 || (Status is not null && Drawings.Count > 0 && !IsAsBefore);
}

internal sealed record ListView(IReadOnlyList<LineView> Lines, IReadOnlyList<string> Totals, string? Budget, string? Counted);

internal sealed record LineView(string Name, string Part, string Buy, string Needed, string Price, string Sum, string? Note,
    string? Quoted);

/// <summary>What passes at these places.</summary>
internal sealed record ProofView(string Where, IReadOnlyList<ProofLineView> Lines);

internal sealed record ProofLineView(string Text, string? Numbers, string Rule);

internal sealed record SourceView(string Source, string Rules);

internal sealed record SettingView(string Where, string What, string Value);

/// <summary>Rules that did not apply for one reason.</summary>
internal sealed record UnjudgedView(string Reason, string Where, string Rules);
