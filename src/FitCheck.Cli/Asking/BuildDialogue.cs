using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Charts;

namespace FitCheck.Cli.Asking;

/// <summary>The questions from which a build is made, in their order. What fits best, by the rules, is offered first.</summary>
internal sealed partial class BuildDialogue(PartsCatalog catalog, Func<ChartSlice, ChartResult?> chart, IQuestions ask)
{
    private static readonly Choice[] Work =
    [
        new("cut-wires", "cut factory wires"), new("drill", "drill holes"), new("enlarge-holes", "enlarge holes"),
        new("trim-parts", "trim spacers and cups"),
    ];

    /// <summary>Why the catalog leaves nothing to choose from; null when it does not.</summary>
    public string? NothingToChoose { get; private set; }

    /// <summary>
    /// The build that was described; null when there is nothing to choose from, or the catalog can't be charted, of which the chart has
    /// told.
    /// </summary>
    public BuildDraft? Ask(string? named = null)
    {
        var vehicles = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().ToList();
        if (vehicles.Count == 0)
            return Nothing("the catalog has no vehicle");
        if (named is not null && !vehicles.Exists(v => v.Id == named))
            return Nothing($"no vehicle `{named}` in the catalog{Foundation.Problems.Nearest.Hint(named, vehicles.Select(v => v.Id))}");
        var vehicle = vehicles.Find(v => v.Id == named) ?? Pick("Which vehicle?", vehicles, v => v.Name);
        IReadOnlyList<string> accepts = [.. ask.Several("Which work do you accept?", Work, atLeastOne: false).Select(c => c.Id)];
        if (chart(new ChartSlice { Vehicles = [vehicle.Id], Accepts = [.. accepts.Where(ChartSlice.Work.Contains)] }) is not { } charted)
            return null;
        var groups = PlaceGroup.Of(vehicle);
        if (charted.Rows.Count == 0)
            return Nothing($"the catalog has no driver for any place of {vehicle.Name}");
        var chosen = Places(groups.Where(g => charted.Rows.Any(r => g.Holds(r.Position))).ToList());
        var parts = new PartQuestions(catalog, vehicle, charted, ask);
        var places = new List<PlaceDraft>();
        // A set is chosen where its woofer goes, and its tweeter follows.
        foreach (var group in chosen.OrderBy(g => g.IsTweeter))
            places.Add(parts.Place(group, places, chosen));
        var rest = groups.Where(g => !chosen.Contains(g) && chosen.Exists(g.SharesOutputWith)).ToList();
        var kept = rest.Where(
            g => ask.One($"What becomes of the factory drivers on the same wires: {g.Name}?",
                [new("unplug", "they are unplugged"), new("keep", "they play on")]).Id == "keep").ToList();
        return new BuildDraft
        {
            Vehicle = vehicle,
            Accepts = accepts,
            Places = places,
            Kept = kept,
            Unplugged = [.. rest.Except(kept)],
            Budget = ask.Text("What may it cost, such as 180.00 EUR? Leave it empty when money does not matter.", "", WrongBudget),
        };
    }

    /// <summary>What is wrong with an amount of money; nothing is with none.</summary>
    public static string? WrongBudget(string text) =>
        text.Length == 0 || Amount().IsMatch(text) ? null : $"`{text}` is no amount with its currency, such as 180.00 EUR";

    private BuildDraft? Nothing(string why)
    {
        NothingToChoose = why;
        return null;
    }

    private List<PlaceGroup> Places(List<PlaceGroup> groups)
    {
        var ids = ask.Several("Which places get new drivers?", [.. groups.Select(g => new Choice(g.Ids, g.Name))], atLeastOne: true)
            .Select(c => c.Id).ToList();
        return groups.FindAll(g => ids.Contains(g.Ids));
    }

    private T Pick<T>(string question, IReadOnlyList<T> entries, Func<T, string> label) where T : Entry
    {
        var id = ask.One(question, [.. entries.Select(e => new Choice(e.Id, label(e)))]).Id;
        return entries.First(e => e.Id == id);
    }

    // As the schema has it.
    [GeneratedRegex(@"^\d+(\.\d{1,2})? [A-Z]{3}$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amount();
}
