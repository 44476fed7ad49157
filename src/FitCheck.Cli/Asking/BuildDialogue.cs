using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Finds;

namespace FitCheck.Cli.Asking;

/// <summary>
/// The questions from which a build is made, in their order. Every offer is judged as the whole build would be with it, the places that are
/// still to come at their best, and those that go together are offered first.
/// </summary>
internal sealed partial class BuildDialogue(PartsCatalog catalog, Func<ChartSlice, ChartResult?> chart, DraftJudge judge, IQuestions ask)
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
    /// <param name="named">The id of the vehicle, or words that name it; null to ask for it.</param>
    public BuildDraft? Ask(string? named = null)
    {
        NothingToChoose = null;
        var vehicles = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().ToList();
        if (vehicles.Count == 0)
            return Nothing("the catalog has no vehicle");
        if (Vehicle(named, vehicles) is not { } vehicle)
            return null;
        var groups = PlaceGroup.Of(vehicle);
        var work = (IReadOnlyList<string> accepts) =>
            chart(new ChartSlice { Vehicles = [vehicle.Id], Accepts = [.. accepts.Where(ChartSlice.Work.Contains)] });
        if (work([]) is not { } first)
            return null;
        if (first.Rows.Count == 0)
            return Nothing($"the catalog has no driver for any place of {vehicle.Name}");
        var chosen = Places(groups.Where(g => first.Rows.Any(r => g.Holds(r.Position))).ToList());
        IReadOnlyList<string> accepts = [.. ask.Several("Which work do you accept?", Work, [], atLeastOne: false).Select(c => c.Id)];
        if (work(accepts) is not { } charted)
            return null;
        var rest = groups.Where(g => !chosen.Contains(g) && chosen.Exists(g.SharesOutputWith)).ToList();
        var draft = new BuildDraft { Vehicle = vehicle, Accepts = accepts, Unplugged = rest };
        var parts = new PartQuestions(catalog, vehicle, charted, judge, ask);
        // A set is chosen where its woofer goes, and its tweeter follows.
        List<PlaceGroup> order = [.. chosen.OrderBy(g => g.IsTweeter)];
        for (var i = 0; i < order.Count; i++)
            draft = parts.Place(order[i], draft, order[(i + 1)..]);
        var kept = rest.Where(
            g => ask.One($"What becomes of the factory drivers on the same wires: {g.Name}?",
                [new("unplug", "they are unplugged", ShowsId: false), new("keep", "they play on", ShowsId: false)]).Id == "keep").ToList();
        draft = draft with { Kept = kept, Unplugged = [.. rest.Except(kept)] };
        draft = new DriveQuestions(catalog, judge, ask).Ask(draft);
        return draft with { Budget = ask.Text("What may it cost, such as 180.00 EUR? Empty: money does not matter.", "", WrongBudget) };
    }

    /// <summary>What is wrong with an amount of money; nothing is with none.</summary>
    public static string? WrongBudget(string text) =>
        text.Length == 0 || Amount().IsMatch(text) ? null : $"`{text}` is no amount with its currency, such as 180.00 EUR";

    private BuildDraft? Nothing(string why)
    {
        NothingToChoose = why;
        return null;
    }

    // Words that are no id stand for what they are found by: one vehicle is taken, of several one is asked for.
    private Vehicle? Vehicle(string? named, List<Vehicle> vehicles)
    {
        if (named is not null && vehicles.Find(v => v.Id == named) is { } known)
            return known;
        var near = named is null ? vehicles : NearestVehicles.Of(named, vehicles);
        if (near.Count == 0)
        {
            Nothing($"no vehicle `{named}` in the catalog; there are {string.Join(", ", vehicles.Take(12).Select(v => v.Id))}"
                + (vehicles.Count > 12 ? " and more: `fitcheck find --kind vehicle`" : ""));
            return null;
        }
        var question = named is null ? "Which vehicle?" : $"No vehicle has the id `{named}`. Do you mean this one?";
        var id = ask.One(question, [.. near.Select(e => new Choice(e.Id, e.Name))]).Id;
        return near.First(e => e.Id == id);
    }

    // Usually the first place, and where that is a woofer's the tweeter on the same wires; a driver of full range does without.
    private List<PlaceGroup> Places(List<PlaceGroup> groups)
    {
        List<Choice> choices = [.. groups.Select(g => new Choice(g.Ids, g.Name))];
        var usual =
            choices.Where((_, i) => i == 0 || (groups[0].Positions[0].Role != "full-range" && groups[i].SharesOutputWith(groups[0])))
                .ToList();
        var ids = ask.Several("Which places get new drivers?", choices, usual, atLeastOne: true).Select(c => c.Id).ToList();
        return groups.FindAll(g => ids.Contains(g.Ids));
    }

    // As the schema has it.
    [GeneratedRegex(@"^\d+(\.\d{1,2})? [A-Z]{3}$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amount();
}
