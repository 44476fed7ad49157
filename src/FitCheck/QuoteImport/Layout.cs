using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>
/// What becomes of a seller's list in one vehicle: places with what goes there, devices, what is only bought, and what must be told of it.
/// </summary>
internal sealed class Layout
{
    public Layout(string file, Vehicle vehicle, IReadOnlyList<QuoteItem> items)
    {
        (File, Vehicle, Items) = (file, vehicle, items);
        Places = [.. vehicle.Positions.Select(p => new PositionToFill(p))];
        Groups = Group.Of(Places);
    }

    /// <summary>The list's file, as it is reported.</summary>
    public string File { get; }
    public Vehicle Vehicle { get; }
    public IReadOnlyList<QuoteItem> Items { get; }
    public IReadOnlyList<PositionToFill> Places { get; }
    public IReadOnlyList<Group> Groups { get; }
    public List<(string Id, Part? Part, string? From)> Devices { get; } = [];
    public List<(string Id, string Output, IReadOnlyList<string> Feeds)> Channels { get; } = [];
    public List<QuoteItem> Extras { get; } = [];
    /// <summary>Lines of the list that are not among its parts, with what stands there.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
    /// <summary>What could not be placed, or only by a guess, each at its line of the list.</summary>
    public ProblemList Told { get; } = new(ProblemKind.Contradiction);

    /// <summary>What could go to several places, and is nowhere yet.</summary>
    public List<OpenPlace> Open { get; } = [];

    /// <summary>Says that something of the list is not in the build, and which option decides it.</summary>
    public void Tell(QuoteItem item, string why) => Told.Warn(item.At, $"{item.Part.Name} {why}");

    /// <summary>The option that puts a part somewhere.</summary>
    public static string Option(Part part, IEnumerable<Group> groups) =>
        string.Join(" or ", groups.Select(g => $"`--at {part.Id}={g.Ids}`"));
}
