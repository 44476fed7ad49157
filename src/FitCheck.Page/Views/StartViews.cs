using FitCheck.Catalog;
using FitCheck.Finds;
using FitCheck.Page.State;
using FitCheck.Reports.Wording;

namespace FitCheck.Page.Views;

/// <summary>Which car it is for: one field, and the cars that its words mean.</summary>
internal static class StartViews
{
    private const int Most = 24;

    public static StartView Of(PageState state, PartsCatalog catalog)
    {
        IReadOnlyList<Vehicle> all = [.. catalog.IdsOf("vehicle").Order(StringComparer.Ordinal).Select(catalog.Find).OfType<Vehicle>()];
        var found = state.Sought.Length == 0 ? all : NearestVehicles.Of(state.Sought, all);
        var lead = (state.Sought.Length, found.Count) switch
        {
            (0, > Most) => $"{Figures.Whole(found.Count)} cars are in the catalog; type a part of a name.",
            (0, _) => "Every car of the catalog:",
            (_, 0) => $"No car of the catalog is called `{state.Sought}`. Type less of its name, or take over the nearest one below.",
            (_, > Most) => $"{Figures.Whole(found.Count)} cars; type more of the name.",
            (_, 1) => "One car:",
            _ => $"{Figures.Whole(found.Count)} cars:",
        };
        // Where nothing is called so, any of them may be the nearest.
        return new StartView(state.Sought, state.Car, lead, Shown(found), Shown(found.Count > 0 ? found : all));
    }

    private static List<VehicleView> Shown(IEnumerable<Vehicle> vehicles) => [.. vehicles.Take(Most).Select(View)];

    private static VehicleView View(Vehicle vehicle) => new(vehicle.Id, vehicle.Name,
        $"{Sentences.Count(vehicle.Positions.Count, "place", "places")}; {vehicle.Provenance}");
}
