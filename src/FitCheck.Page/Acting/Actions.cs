using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Page.Judging;
using FitCheck.Page.State;

namespace FitCheck.Page.Acting;

/// <summary>What an action came to: the state after it, and what is to be told of it besides.</summary>
/// <param name="State">The state after it.</param>
/// <param name="Told">Sentences, such as why something can't be done.</param>
internal sealed record Outcome(PageState State, IReadOnlyList<string> Told)
{
    public Outcome(PageState state)
        : this(state, [])
    {
    }

    public Outcome(PageState state, string told)
        : this(state, [told])
    {
    }

    /// <summary>Readings that could not be taken, by their fields, with what was typed and what is wrong with it.</summary>
    public IReadOnlyDictionary<string, (string Typed, string Wrong)> WrongReadings { get; init; } =
        new Dictionary<string, (string, string)>(StringComparer.Ordinal);

    /// <summary>A seller's list that is being read in; null for none.</summary>
    public QuoteState? Quote { get; init; }
}

/// <summary>What somebody sends by a button: `take:driver@front-door-left=…`, `undo`, or nothing but the form by its Enter key.</summary>
internal sealed class Actions(Desk desk)
{
    /// <summary>What the Enter key in a field sends.</summary>
    public const string Enter = "enter";

    /// <summary>The state after the action.</summary>
    /// <param name="state">The form's.</param>
    /// <param name="action">The button's value; null or a word that means nothing changes nothing.</param>
    /// <param name="form">The fields and files.</param>
    /// <param name="cancel">Looked at between two steps.</param>
    public Outcome Of(PageState state, string? action, IForm form, CancellationToken cancel)
    {
        var (verb, about) = (action ?? "").Split(':', 2) is [var v, var rest] ? (v, rest) : (action ?? "", "");
        // Nothing that was typed into the text is lost because another button was pressed.
        if (form.Field("typed") is { } typed && PageState.Lines(typed) != state.Text && verb is not ("undo" or "redo"))
            state = state.Changed(PageState.Lines(typed));
        return verb switch
        {
            "new" => new(state.Changed("", OpenedFile.None) with { Place = "", Slot = "", Side = PageState.Sides[0] }),
            "vehicle" => new(Vehicle(state, about, "")),
            "instead" => new(Vehicle(state, about, state.Car)),
            "place" => new(state with { Place = about, Slot = "", Side = PageState.Sides[0] }),
            "slot" => new(Slot(state, about)),
            "side" => new(PageState.Sides.Contains(about) ? state with { Side = about, Slot = "" } : state),
            "take" => Take(state, about),
            "undo" => new(state.Undone()),
            "redo" => new(state.Redone()),
            "step" => Step.Parse(about)?.Of(state.Text) is { } text ? new(state.Changed(text) with { Side = PageState.Sides[0], Slot = "" })
                : new(state, "The build has changed since this was offered; look again."),
            "read" or Enter when Readings.Any(form) => Readings.Taken(state, form, desk),
            "open" => Opened(state, form, cancel),
            "quote" => new QuoteAction(desk.Checker).Of(state, form, cancel),
            "hold" => new(state with { Other = state.Text, Side = "beside" }),
            "swap" => new(state.Changed(state.Other) with { Other = state.Text, Side = "beside" }),
            "drop" => new(state with { Other = "", Side = PageState.Sides[0] }),
            _ => new(state),
        };
    }

    private PageState Vehicle(PageState state, string id, string insteadOf)
    {
        if (desk.Checker.Catalog.Find(id) is not Vehicle vehicle)
            return state;
        var name = insteadOf.Length > 0 ? insteadOf : vehicle.Name;
        var lines = insteadOf.Length > 0 ? $"instead_of: {Yaml.YamlText.Quoted(insteadOf)}\n" : "";
        return state.Changed($"kind: build\nname: {Yaml.YamlText.Quoted(name)}\nvehicle: {vehicle.Id}\n{lines}") with
        {
            Place = vehicle.Positions.Count > 0 ? vehicle.Positions[0].Id : "",
            Sought = "",
            Car = "",
        };
    }

    private static PageState Slot(PageState state, string key)
    {
        var place = SlotKey.WhereOf(key);
        return state with
        {
            Slot = key,
            Side = PageState.Sides[0],
            Place = place.Count == 0 || place.Contains(state.Place) ? state.Place : place[0],
        };
    }

    private Outcome Take(PageState state, string id) => desk.Of(state.Name, state.Text, judged =>
        judged.Choice(id) is not { } choice ? new Outcome(state, "The build has no such choice any more; look again.")
        : new Outcome(state.Changed(choice.Text) with { Slot = "" }));

    private static Outcome Opened(PageState state, IForm form, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        if (form.File("build") is not var (name, bytes) || name.Length == 0)
            return new(state, "Choose a file of a build first.");
        var problems = new ProblemList();
        return SourceText.Decode(name, bytes, problems) is { } source
            ? new(state.Changed(PageState.Lines(source.Text), OpenedFile.Of(name, source.Text)) with { Slot = "", Place = "" })
            : new(state, [.. problems.Sorted().Select(p => p.ToString())]);
    }
}

/// <summary>What was sent with an action.</summary>
internal interface IForm
{
    /// <summary>The last field of this name; null where there is none.</summary>
    string? Field(string name);

    /// <summary>All fields whose names begin so.</summary>
    IEnumerable<KeyValuePair<string, string>> Fields(string beginning);

    /// <summary>The file that was given in a field; null where none was.</summary>
    (string Name, byte[] Bytes)? File(string field);
}
