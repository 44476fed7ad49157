using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Sheet;

// What the templates of the sheet see: text that is ready to be read, in the order in which it is worked through. Scriban names members in
// snake case.

internal sealed record SheetView(string Title, SafeHtml Style, IReadOnlyList<BuildSheet> Builds);

/// <summary>One build: what stops it, its sections in working order, its templates at full size.</summary>
internal sealed record BuildSheet
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required string Vehicle { get; init; }
    /// <summary>The program and the catalog.</summary>
    public required string MadeBy { get; init; }
    /// <summary>That it goes together only because somebody waived what does not; null when it rests on no waiver.</summary>
    public required string? Waived { get; init; }
    /// <summary>What has to change before anyone starts; empty when nothing does.</summary>
    public required IReadOnlyList<StepView> Stops { get; init; }
    public required IReadOnlyList<string> Cautions { get; init; }
    public required string LastWord { get; init; }
    public required IReadOnlyList<SectionView> Sections { get; init; }
    public required IReadOnlyList<TemplateView> Templates { get; init; }
}

internal sealed record SectionView(string Id, string Number, string Title, string? Lead, string Css, IReadOnlyList<StepView> Steps,
    TableView? Table);

/// <summary>Something to do and to tick.</summary>
/// <param name="Where">The places where it is done; null when it is done once.</param>
/// <param name="Text">A sentence or a few, in the imperative.</param>
/// <param name="Blank">What is to be filled in; null when nothing is.</param>
internal sealed record StepView(string? Where, string Text, string? Blank = null);

/// <summary>A table whose rows are ticked; the first cell names the row.</summary>
internal sealed record TableView(string Caption, IReadOnlyList<string> Heads, IReadOnlyList<RowView> Rows);

internal sealed record RowView(string Name, IReadOnlyList<string> Cells);

internal sealed record TemplateView(string Id, string Number, string Name, SafeHtml Drawing, IReadOnlyList<string> Legend);
