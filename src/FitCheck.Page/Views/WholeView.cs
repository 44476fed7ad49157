using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;

namespace FitCheck.Page.Views;

// What the templates see, in the order in which it is read. Scriban names members in snake case.

/// <summary>All of the page.</summary>
internal sealed record WholeView
{
    public required string Title { get; init; }
    public required FormView Form { get; init; }
    public required StripView Strip { get; init; }
    /// <summary>What is wrong with the catalog on the disk; null for nothing.</summary>
    public required string? Trouble { get; init; }
    /// <summary>What is to be told of the last action.</summary>
    public required IReadOnlyList<string> Told { get; init; }
    public required IReadOnlyList<SideView> Sides { get; init; }
    /// <summary>Before a vehicle is named; null later.</summary>
    public StartView? Start { get; init; }
    /// <summary>What is wrong with the text; empty where it can be judged.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];
    public QuoteView? Quote { get; init; }
    public PlacesView? Places { get; init; }
    public MeasureView? Measure { get; init; }
    public WaysView? Ways { get; init; }
    public BuyView? Buy { get; init; }
    public BesideView? Beside { get; init; }
    public TextView? Text { get; init; }
    public IReadOnlyList<string> Cautions { get; init; } = [];
    public required string LastWord { get; init; }
}

/// <summary>The fields that carry the state.</summary>
internal sealed record FormView(string Text, string Past, string Future, string Place, string Slot, string Side, string Other, string File)
{
    public bool CanUndo => Past.Length > 0;
    public bool CanRedo => Future.Length > 0;
}

/// <summary>The verdict, always in sight.</summary>
internal sealed record StripView
{
    public string? Name { get; init; }
    public string? Vehicle { get; init; }
    /// <summary>Null before there is anything to judge.</summary>
    public StatusView? Status { get; init; }
    public required string Sentence { get; init; }
    public string? Total { get; init; }
    public string? Budget { get; init; }
    /// <summary>What the last action changed; null for nothing.</summary>
    public string? Moved { get; init; }
    public bool IsBuild { get; init; }
}

/// <summary>A side of the page that can be turned up.</summary>
internal sealed record SideView(string Id, string Name, string? Count, bool IsCurrent);

internal sealed record StartView(string Sought, string Car, string Lead, IReadOnlyList<VehicleView> Vehicles,
    IReadOnlyList<VehicleView> Nearest);

internal sealed record VehicleView(string Id, string Name, string What);

/// <summary>The car, the place at hand, and what is being chosen there.</summary>
internal sealed record PlacesView(SafeHtml Plan, IReadOnlyList<PlaceRowView> Rows, PlaceView? Here, ChoosingView? Choosing);

internal sealed record PlaceRowView(string Id, string Name, string State, StatusView? Status, string? Fitted, bool IsCurrent,
    bool IsChanged);

internal sealed record PlaceView
{
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required StatusView? Status { get; init; }
    public required string State { get; init; }
    public required IReadOnlyList<SafeHtml> Drawings { get; init; }
    public required IReadOnlyList<SlotView> Slots { get; init; }
    public required IReadOnlyList<JudgementView> Open { get; init; }
    public required IReadOnlyList<JudgementView> Passes { get; init; }
    public required string PassesTitle { get; init; }
}

internal sealed record SlotView(string Key, string Id, string What, string? Where, string Now, string? NowId, string Button, int Choices,
    bool IsCurrent);

/// <summary>A finding, with the rule behind it.</summary>
internal sealed record JudgementView(FindingView Finding, string Why, string? Caution, string Source, string? Url, bool IsNew);

internal sealed record ChoosingView
{
    public required string Key { get; init; }
    /// <summary>A word that changes with the text, so that an old answer is not taken for a new one.</summary>
    public required string Id { get; init; }
    public required string What { get; init; }
    public required string Where { get; init; }
    public required string Now { get; init; }
    public required IReadOnlyList<OfferView> Offers { get; init; }
    /// <summary>How many are judged after the next request; null where all are.</summary>
    public required string? Next { get; init; }
    public required string Progress { get; init; }
}

internal sealed record OfferView
{
    /// <summary>What its button sends.</summary>
    public required string Action { get; init; }
    public required string Id { get; init; }
    public required string Name { get; init; }
    /// <summary>What comes with it; null for nothing.</summary>
    public required string? With { get; init; }
    public required StatusView? Status { get; init; }
    public required string? Because { get; init; }
    public required string? Elsewhere { get; init; }
    public required SafeHtml? Bar { get; init; }
    public required string? Room { get; init; }
    public required string? Work { get; init; }
    public required string Price { get; init; }
    public required string? Note { get; init; }
    public required bool IsPossible { get; init; }
    public required bool IsNow { get; init; }
}

internal sealed record MeasureView(string Lead, IReadOnlyList<MeasurePlaceView> Places, IReadOnlyList<string> InEntries);

internal sealed record MeasurePlaceView(string Name, IReadOnlyList<ReadingView> Readings);

internal sealed record ReadingView
{
    public required string Field { get; init; }
    public required string Id { get; init; }
    public required string What { get; init; }
    public required string How { get; init; }
    public required string? Unit { get; init; }
    /// <summary>Words that are answers too.</summary>
    public required IReadOnlyList<string> Words { get; init; }
    public required bool IsNumber { get; init; }
    public required string Typed { get; init; }
    public required string? Wrong { get; init; }
    public required IReadOnlyList<string> Decides { get; init; }
}

internal sealed record WaysView
{
    public required bool IsAsked { get; init; }
    public required string Lead { get; init; }
    public required IReadOnlyList<WishView> Wishes { get; init; }
    public WayView? Now { get; init; }
    public IReadOnlyList<WayView> Answers { get; init; } = [];
    public IReadOnlyList<string> Why { get; init; } = [];
    public IReadOnlyList<string> Proof { get; init; } = [];
}

internal sealed record WishView(string Value, string Name, bool IsChosen);

internal sealed record WayView(string Name, string? Step, StatusView Status, string Sentence, string Price, string Work, string Room,
    IReadOnlyList<ChangeView> Changes, IReadOnlyList<string> New);

internal sealed record ChangeView(string What, IReadOnlyList<string> Because);

internal sealed record BuyView(BuildListView It, IReadOnlyList<AskedView> Asked, IReadOnlyList<string> Missing);

/// <summary>As the report's template of the list wants it.</summary>
internal sealed record BuildListView(string Id, ListView? List);

internal sealed record AskedView(string Name, string Buy, string Price, string By);

internal sealed record BesideView(bool IsHeld, ComparisonView? Comparison, string? Problem);

internal sealed record TextView(string Id, string Text, IReadOnlyList<TextLineView> Lines, string Place);

internal sealed record TextLineView(string Number, string Text, string Class, string? Said);

internal sealed record QuoteView(string Name, string Bytes, IReadOnlyList<QuoteKeptView> Kept, IReadOnlyList<QuoteLineView> Lines,
    IReadOnlyList<QuotePlaceView> Places);

internal sealed record QuoteKeptView(string Field, string Value);

internal sealed record QuoteLineView(string Field, string Line, string Text, IReadOnlyList<ChosenView> Near);

internal sealed record QuotePlaceView(string Field, string Part, IReadOnlyList<ChosenView> Places);

internal sealed record ChosenView(string Value, string Name);
