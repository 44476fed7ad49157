using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>Puts parts where the caller says: `--at ID=POSITION,POSITION`.</summary>
internal static class AskedPlaces
{
    /// <summary>Reads the options. Ids that are not on the list and positions that the vehicle does not have are told.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Read(IReadOnlyList<string> options, Vehicle vehicle,
        IReadOnlyList<QuoteItem> items, ProblemList problems)
    {
        var asked = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        var here = new Location("--at", 0, 0);
        foreach (var option in options)
        {
            var cut = option.IndexOf('=', StringComparison.Ordinal);
            if (cut <= 0)
            {
                problems.Error(here,
                    $"expected `ID=POSITION,POSITION`, such as `orrin-c165=front-door-left,front-door-right`, found `{option}`");
                continue;
            }
            var (id, positions) =
                (option[..cut].Trim(),
                    option[(cut + 1)..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
            if (items.All(i => i.Part.Id != id))
                problems.Error(here, $"no `{id}` on the list{Nearest.Hint(id, items.Select(i => i.Part.Id))}", ProblemKind.UnknownName);
            foreach (var position in positions.Where(p => vehicle.Find(p) is null))
                problems.Error(here with { Line = 0 }, Builds.BuildReader.NoPosition(position, vehicle), ProblemKind.UnknownName);
            asked[id] = [.. asked.GetValueOrDefault(id) ?? [], .. positions];
        }
        return asked;
    }

    /// <summary>Puts them there, as far as the kind of part goes to a position at all.</summary>
    public static void Put(Layout layout, PartsCatalog catalog, IReadOnlyDictionary<string, IReadOnlyList<string>> asked,
        ProblemList problems)
    {
        foreach (var item in layout.Items.Where(i => asked.ContainsKey(i.Part.Id)))
        {
            foreach (var place in layout.Places.Where(p => asked[item.Part.Id].Contains(p.Position.Id)))
            {
                if (!Put(item.Part, place, catalog))
                    problems.Error(new Location("--at", 0, 0),
                        $"`{item.Part.Id}` can't go to `{place.Position.Id}`: "
                            + $"{(item.Part is Driver or ComponentSet ? "another driver of the list was put there" : $"a "
                            + $"{item.Part.Kind} goes to no position")}");
            }
        }
    }

    private static bool Put(Part part, PositionToFill place, PartsCatalog catalog)
    {
        switch (part)
        {
            case Driver driver when !place.IsTaken:
                place.Driver = driver;
                return true;
            case ComponentSet set when !place.IsTaken:
                place.Set = set;
                place.Driver = catalog.Find((place.IsTweeter ? set.Tweeter : set.Woofer)?.Value ?? "") as Driver;
                return true;
            case Adapter adapter:
                place.Adapter = adapter;
                return true;
            case Cup cup:
                place.Cup = cup;
                return true;
            case Harness harness:
                place.Harness = harness;
                return true;
            case Sundry sundry:
                place.With.Add(sundry);
                return true;
            default:
                return false;
        }
    }
}
