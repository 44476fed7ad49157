using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Yaml;

namespace FitCheck.QuoteImport;

/// <summary>
/// Puts spacers, cups, harness adapters and small parts to the drivers. Of several possible places those are taken at which the rules say
/// least against it; where they say the same of more places than there are pieces, that is told.
/// </summary>
internal sealed class MountPlacing(Layout layout, PartsCatalog catalog, RuleSet rules)
{
    public void Place(IReadOnlyDictionary<string, IReadOnlyList<string>> asked)
    {
        // What is made for one place comes before what fits many.
        var items = layout.Items.Where(i => !asked.ContainsKey(i.Part.Id)).ToList();
        foreach (var item in items.Where(i => i.Part is Adapter or Cup or Harness).OrderBy(i => IsUniversal(i.Part)))
            PlaceOne(item);
        foreach (var item in items.Where(i => i.Part is Sundry))
            PlaceSmall(item);
    }

    private static bool IsUniversal(Part part) => part is Adapter { Fits.Count: 0 } or Cup { Fits.Count: 0 };

    private void PlaceOne(QuoteItem item)
    {
        var options = Possible(p => Takes(item.Part, p),
            item.Part is Adapter { Handed: "left" or "right" } adapter ? adapter.Handed : null);
        if (options.Count == 0)
            layout.Tell(item,
                $"finds no driver of this list to go with in {layout.Vehicle.Name}; it stays on the quote only, unless `--at "
                    + $"{item.Part.Id}=POSITION,…` says where it goes");
        else
            Choose(item, options, item.Pieces);
    }

    private void PlaceSmall(QuoteItem item)
    {
        var type = ((Sundry)item.Part).Type;
        var options = type switch
        {
            "foam-tape" => Possible(p => p.Adapter is not null, null),
            "gasket-ring" =>
                Possible(p =>
                    p.Driver is { IsTweeter: false } && p.Position.Place == "door" && !p.With.Exists(w => w.Type == "gasket-ring"), null),
            "damping-sheet" or "moisture-guard" or "foam-wrap" =>
                Possible(p => p.Driver is { IsTweeter: false } && p.Position.Place == "door", null),
            "screws" => Possible(p => p.Adapter is not null && p.Driver is not null, null),
            "capacitor" or "l-pad" => Possible(p => p.Driver is { IsTweeter: true } && p.Set is null, null),
            _ => null,
        };
        if (options is null)
            layout.Extras.Add(item);
        else if (options.Count == 0)
            layout.Tell(item,
                $"has no use at any driver of this list; it stays on the quote only, unless `--at {item.Part.Id}=POSITION,…` says where "
                    + $"it goes");
        else
            Choose(item, options, type is "gasket-ring" or "moisture-guard" or "capacitor" or "l-pad" ? item.Pieces : int.MaxValue);
    }

    private List<Group> Possible(Func<PositionToFill, bool> takes, string? side) =>
        [.. layout.Groups.Select(g => new Group([.. g.Places.Where(p => takes(p) && (side is null || p.Position.Side == side))]))
            .Where(g => g.Places.Count > 0)];

    private bool Takes(Part part, PositionToFill place) => place.Driver is { } driver && part switch
    {
        Adapter adapter => !driver.IsTweeter && place.Adapter is null && Fit.Covers(adapter.Fits, layout.Vehicle.Id, place.Position.Id),
        Cup cup => driver.IsTweeter && place.Cup is null && Fit.Covers(cup.Fits, layout.Vehicle.Id, place.Position.Id),
        Harness => place.Harness is null,
        _ => false,
    };

    private void Choose(QuoteItem item, List<Group> options, int pieces)
    {
        var enough = options.Sum(o => o.Places.Count) <= pieces && item.Part is not Harness;
        var ranked = options.Select(o => (Option: o, Worse: enough ? 0 : Worse(item.Part, o))).OrderBy(o => o.Worse).ToList();
        var taken = new List<Group>();
        foreach (var (option, worse) in ranked)
        {
            if (taken.Sum(o => o.Places.Count) + option.Places.Count > pieces || (taken.Count > 0 && worse > ranked[0].Worse))
                continue;
            // As good as one that was taken, and not enough for both.
            taken.Add(option);
        }
        var tied = ranked.FindAll(r => r.Worse == (taken.Count > 0 ? ranked[0].Worse : r.Worse)).ConvertAll(r => r.Option);
        if (taken.Count == 0 || tied.Sum(o => o.Places.Count) > pieces)
        {
            layout.Tell(item,
                $"could go to several places, and there {(pieces == 1 ? "is 1 piece" : $"are {pieces} pieces")}; it stays on the quote "
                    + $"only, unless {Layout.Option(item.Part, tied)} decides it");
            return;
        }
        foreach (var place in taken.SelectMany(o => o.Places))
            Put(item.Part, place);
    }

    // How many findings more than pass, worse ones first, the rules have with the part there.
    private int Worse(Part part, Group option)
    {
        foreach (var place in option.Places)
            Put(part, place);
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("quote", BuildText.Of(layout, "trial")), problems);
        var places = option.Places.Select(p => p.Position.Id).ToHashSet(StringComparer.Ordinal);
        var worse = root is not null && BuildReader.Read(root, catalog, problems) is { } build && !problems.HasErrors
            ? BuildEvaluation.Judged(build, rules).Findings.Where(f => places.Contains(f.Position))
            .Sum(f => f.Status switch { Status.Fail => 10_000, Status.Warn => 100, Status.Measure => 1, _ => 0 })
            : int.MaxValue;
        foreach (var place in option.Places)
            Take(part, place);
        return worse / option.Places.Count;
    }

    private static void Put(Part part, PositionToFill place)
    {
        (place.Adapter, place.Cup, place.Harness) =
            (part as Adapter ?? place.Adapter, part as Cup ?? place.Cup, part as Harness ?? place.Harness);
        if (part is Sundry sundry)
            place.With.Add(sundry);
    }

    private static void Take(Part part, PositionToFill place)
    {
        (place.Adapter, place.Cup, place.Harness) =
            (part is Adapter ? null : place.Adapter, part is Cup ? null : place.Cup, part is Harness ? null : place.Harness);
        if (part is Sundry sundry)
            place.With.Remove(sundry);
    }
}
