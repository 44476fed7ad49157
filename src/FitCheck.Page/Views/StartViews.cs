using FitCheck.Catalog;
using FitCheck.Finds;
using FitCheck.Page.State;
using FitCheck.Reports.Wording;
using FitCheck.Rules;

namespace FitCheck.Page.Views;

/// <summary>Which car it is for: one field, and the cars that its words mean.</summary>
internal static class StartViews
{
    private const int Most = 24;

    public static StartView Of(PageState state, PartsCatalog catalog, RuleSet rules)
    {
        var words = state.Sought.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var ids = words.Length == 0 ? [.. catalog.Ids.Where(i => catalog.KindOf(i) == "vehicle").Order(StringComparer.Ordinal)]
            : Things.Found(words, "vehicle", null, catalog, rules).Select(t => t.Id).ToList();
        List<VehicleView> shown = [.. ids.Take(Most).Select(catalog.Find).OfType<Vehicle>().Select(View)];
        var lead = (words.Length, ids.Count) switch
        {
            (0, > Most) => $"{Figures.Whole(ids.Count)} cars are in the catalog; type a part of a name.",
            (0, _) => "Every car of the catalog:",
            (_, 0) => $"No car of the catalog is called `{state.Sought}`. Type less of its name, or take over the nearest one below.",
            (_, > Most) => $"{Figures.Whole(ids.Count)} cars; type more of the name.",
            (_, 1) => "One car:",
            _ => $"{Figures.Whole(ids.Count)} cars:",
        };
        return new StartView(state.Sought, state.Car, lead, shown);
    }

    private static VehicleView View(Vehicle vehicle) => new(vehicle.Id, vehicle.Name,
        $"{Sentences.Count(vehicle.Positions.Count, "place", "places")}; {vehicle.Provenance}");
}
