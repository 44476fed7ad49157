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

    /// <summary>How many drivers are in memory at once.</summary>
    internal const int AtOnce = 2048;

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

    /// <summary>The ids of the drivers, in ordinal order.</summary>
    internal IReadOnlyList<string> DriversIn(PartsCatalog catalog, ProblemList problems)
    {
        IReadOnlyList<string> drivers = [.. catalog.IdsOf("driver")];
        Known("--driver", "driver", Drivers, drivers, problems);
        var named = Drivers.ToHashSet(StringComparer.Ordinal);
        if (Sizes.Count == 0)
            return [.. drivers.Where(d => named.Count == 0 || named.Contains(d))];
        var each = drivers.Chunk(AtOnce).SelectMany(some => catalog.InPassing(some)).OfType<Driver>()
            .Select(d => (d.Id, Size: d.Size is { } size ? Millimetre(size.Si) : (double?)null)).ToList();
        var sizes = SizesAmong([.. each.Select(d => d.Size).OfType<double>().Distinct().Order()], problems);
        return [.. each.Where(d => (named.Count == 0 || named.Contains(d.Id)) && d.Size is { } size && sizes.Contains(size))
            .Select(d => d.Id)];
    }

    private List<double> SizesAmong(List<double> all, ProblemList problems)
    {
        var sizes = new List<double>();
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
        return sizes;
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
