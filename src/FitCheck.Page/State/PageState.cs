namespace FitCheck.Page.State;

/// <summary>All that the page knows, as its form carries it from one request to the next.</summary>
internal sealed record PageState
{
    /// <summary>The build; empty before a vehicle was named. Its lines end with `\n`.</summary>
    public string Text { get; init; } = "";

    /// <summary>What takes back what was done, the last action last.</summary>
    public Steps Past { get; init; } = Steps.None;

    /// <summary>What does again what was taken back.</summary>
    public Steps Future { get; init; } = Steps.None;

    /// <summary>The place at hand: a position's id, or <see cref="Elsewhere"/>.</summary>
    public string Place { get; init; } = "";

    /// <summary>The slot at which something is being chosen, `driver@front-door-left+front-door-right`; empty for none.</summary>
    public string Slot { get; init; } = "";

    /// <summary>Which side of the page is up: one of <see cref="Sides"/>.</summary>
    public string Side { get; init; } = Sides[0];

    /// <summary>Another build that is held beside this one; empty for none.</summary>
    public string Other { get; init; } = "";

    /// <summary>The file that was opened, if one was.</summary>
    public OpenedFile File { get; init; } = OpenedFile.None;

    /// <summary>What was typed into the search for a vehicle.</summary>
    public string Sought { get; init; } = "";

    /// <summary>What a person calls a car that the catalog has not.</summary>
    public string Car { get; init; } = "";

    /// <summary>Radio, amplifiers and all that is at no place of its own.</summary>
    public const string Elsewhere = "elsewhere";

    /// <summary>The sides of the page, the first one first.</summary>
    public static IReadOnlyList<string> Sides { get; } = ["places", "measure", "ways", "buy", "beside", "text"];

    /// <summary>The text before the last action; null where there was none.</summary>
    public string? Before => Past.All.Count == 0 ? null : Past.All[^1].Of(Text);

    /// <summary>What is told as the name of the build.</summary>
    public string Name => File.Name.Length > 0 ? File.Name : "build.yaml";

    /// <summary>The state of a form; what is missing or means nothing is as in a new one.</summary>
    public static PageState Of(Func<string, string?> field) => new()
    {
        Text = Lines(field("text")),
        Past = Steps.Parse(field("past") ?? ""),
        Future = Steps.Parse(field("future") ?? ""),
        Place = field("place") ?? "",
        Slot = field("slot") ?? "",
        Side = Sides.Contains(field("side")) ? field("side")! : Sides[0],
        Other = Lines(field("other")),
        File = OpenedFile.Parse(field("file")),
        Sought = (field("sought") ?? "").Trim(),
        Car = (field("car") ?? "").Trim(),
    };

    /// <summary>With another text, of this file or of another, as one action that can be taken back.</summary>
    public PageState Changed(string text, OpenedFile? file = null) => text == Text && (file ?? File) == File ? this
        : Moved(text, file) with { Past = Past.With(Back(text, file)), Future = Steps.None };

    /// <summary>With the last action taken back; itself where there is none.</summary>
    public PageState Undone() => Past.All is [.., var step] && step.Of(Text) is { } before
        ? Moved(before, step.File) with { Past = Past.Rest, Future = Future.With(Back(before, step.File)) }
        : this with { Past = Steps.None };

    /// <summary>With what was taken back last done again; itself where there is nothing.</summary>
    public PageState Redone() => Future.All is [.., var step] && step.Of(Text) is { } after
        ? Moved(after, step.File) with { Future = Future.Rest, Past = Past.With(Back(after, step.File)) }
        : this with { Future = Steps.None };

    /// <summary>A text as forms send it, with the ends of lines that a build has.</summary>
    public static string Lines(string? text) =>
        (text ?? "").Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');

    private PageState Moved(string text, OpenedFile? file) => this with { Text = text, File = file ?? File };

    // What leads from that text and file to this.
    private Step Back(string text, OpenedFile? file) => Step.Between(text, Text) with { File = file is null || file == File ? null : File };
}
