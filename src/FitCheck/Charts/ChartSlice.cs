using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts;

/// <summary>The part of the chart that is asked for; an empty list asks for all.</summary>
public sealed record ChartSlice
{
    /// <summary>Ids of vehicles.</summary>
    public IReadOnlyList<string> Vehicles { get; init; } = [];
    /// <summary>Ids of positions.</summary>
    public IReadOnlyList<string> Positions { get; init; } = [];
    /// <summary>Ids of drivers.</summary>
    public IReadOnlyList<string> Drivers { get; init; } = [];
    /// <summary>Size classes as a catalog writes them, `165 mm`.</summary>
    public IReadOnlyList<string> Sizes { get; init; } = [];
    /// <summary>Statuses of which pairs are told.</summary>
    public IReadOnlyList<Status> Statuses { get; init; } = [];
    /// <summary>Also tell of drivers of a type that does not belong at the position, such as a tweeter in a woofer's place.</summary>
    public bool AnyType { get; init; }
    /// <summary>Work that is accepted; null for every kind that bears on whether a driver goes in.</summary>
    public IReadOnlyList<string>? Accepts { get; init; }

    /// <summary>Every kind of work that the rules of a chart ask about.</summary>
    public static readonly IReadOnlyList<string> Work = ["drill", "enlarge-holes", "trim-parts"];

    // Where a word of the command line is wrong there is no file to point at.
    private static Location Option(string name) => new(name, 0, 0);

    internal IReadOnlyList<(Vehicle Vehicle, Position Position)> PlacesIn(PartsCatalog catalog, ProblemList problems)
    {
        var vehicles = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().ToList();
        Known("--vehicle", "vehicle", Vehicles, vehicles.Select(v => v.Id), problems);
        var chosen = vehicles.FindAll(v => Vehicles.Count == 0 || Vehicles.Contains(v.Id));
        Known("--position", chosen.Count == 1 ? $"position of {chosen[0].Name}" : "position", Positions,
            (chosen.Count > 0 ? chosen : vehicles).SelectMany(v => v.Positions).Select(p => p.Id).Distinct(), problems);
        return [.. chosen.SelectMany(v => v.Positions.Where(p => Positions.Count == 0 || Positions.Contains(p.Id)).Select(p => (v, p)))];
    }

    internal IReadOnlyList<Driver> DriversIn(PartsCatalog catalog, ProblemList problems)
    {
        var drivers = catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().ToList();
        Known("--driver", "driver", Drivers, drivers.Select(d => d.Id), problems);
        var sizes = new List<double>();
        var all = drivers.Select(d => d.Size?.Si).OfType<double>().Select(Millimetre).Distinct().Order().ToList();
        foreach (var text in Sizes)
        {
            if (QuantityText.Parse(text) is not { } size || size.Dimension != Dimension.Metre)
                problems.Error(Option("--size"), $"expected a length with its unit, such as `165 mm`, found `{text}`");
            else if (!all.Contains(Millimetre(size.Si)))
                problems.Error(Option("--size"),
                    $"no driver of `{text}` in the catalog; there are {string.Join(", ", all.Select(s => QuantityText.Number(s, 0)))} mm");
            else
                sizes.Add(Millimetre(size.Si));
        }
        return drivers.FindAll(d => (Drivers.Count == 0 || Drivers.Contains(d.Id))
            && (Sizes.Count == 0 || (d.Size is { } size && sizes.Contains(Millimetre(size.Si)))));
    }

    internal bool Asks(Status status) => Statuses.Count == 0 || Statuses.Contains(status);

    private static double Millimetre(double si) => Math.Round(si * 1e3);

    private static void Known(string option, string what, IReadOnlyList<string> ids, IEnumerable<string> known, ProblemList problems)
    {
        var all = known.ToList();
        foreach (var id in ids.Where(i => !all.Contains(i)))
            problems.Error(Option(option),
                $"no {what} `{id}`{(Nearest.To(id, all) is { } near ? $"; did you mean `"
                    + $"{near}`?" : all.Count > 12 ? "" : $"; there are {string.Join(", ", all)}")}");
    }
}
