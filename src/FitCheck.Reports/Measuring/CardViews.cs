using FitCheck.Reports.Markup;

namespace FitCheck.Reports.Measuring;

/// <summary>What the template of the card shows.</summary>
internal sealed record CardView(string Title, string Subject, string Lead, SafeHtml Style, IReadOnlyList<SafeHtml> Figures,
    IReadOnlyList<CardTable> Tables, IReadOnlyList<CardNote> Notes, string Ending);

/// <summary>What is read at places beside each other.</summary>
internal sealed record CardTable(string Title, IReadOnlyList<string> Places, IReadOnlyList<CardRow> Rows);

/// <summary>One datum, with a cell for each place.</summary>
internal sealed record CardRow(string? Letter, string What, string? How, IReadOnlyList<CardCell> Cells);

/// <summary>A field for a pen, with the unit or the words to choose from and what passes; or what is known already.</summary>
internal sealed record CardCell(bool IsField, string? Unit, string? Words, string? Passes, string? Known)
{
    /// <summary>One of the words is circled, and nothing is written.</summary>
    public bool IsChoice { get; init; }
}

/// <summary>What belongs into an entry.</summary>
internal sealed record CardNote(string What, string How);
