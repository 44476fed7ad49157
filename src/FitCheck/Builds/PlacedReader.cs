using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Builds;

/// <summary>Reads `fit`: entries add up for a position, so a set may cover four positions and an adapter two of them.</summary>
internal sealed class PlacedReader(PartsCatalog catalog, Vehicle vehicle, Readings readings, ProblemList problems)
{
    private readonly Dictionary<string, FittedPosition> _byId = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Located<string>> _coils = new(StringComparer.Ordinal);

    public IReadOnlyList<FittedPosition> Read(Fields build)
    {
        foreach (var entry in build.Each("fit"))
        {
            foreach (var at in entry.Texts("at"))
            {
                if (vehicle.Find(at.Value) is not { } position)
                {
                    problems.Error(at.At, BuildReader.NoPosition(at.Value, vehicle), ProblemKind.UnknownName);
                    continue;
                }
                if (!_byId.TryGetValue(at.Value, out var placed))
                    _byId[at.Value] = placed = new FittedPosition(position, at.At);
                Add(entry, placed);
            }
        }
        foreach (var (id, placed) in readings.IsEmpty ? [] : _byId)
        {
            placed.Driver = readings.At(id, "driver", placed.Driver);
            placed.Adapter = readings.At(id, "adapter", placed.Adapter);
            placed.Cup = readings.At(id, "cup", placed.Cup);
            placed.Harness = readings.At(id, "harness", placed.Harness);
            placed.Box = readings.OfLineAt(id)?.Figure("box", Dimension.CubicMetre) ?? placed.Box;
            placed.Port = readings.OfLineAt(id)?.Figure("port", Dimension.Hertz) ?? placed.Port;
            placed.NewWireLength = readings.OfLineAt(id)?.Inner("new_wire")?.Length("length") ?? placed.NewWireLength;
        }
        foreach (var wired in _byId.Values)
            WireCoils(wired);
        return [.. vehicle.Positions.Where(p => _byId.ContainsKey(p.Id)).Select(p => _byId[p.Id])];
    }

    private void Add(Fields entry, FittedPosition placed)
    {
        AddDriver(entry, placed);
        if (Choose<Adapter>(entry.Text("adapter"), "adapter", placed.Adapter?.At) is { } adapter)
            placed.Adapter = adapter;
        if (Choose<Cup>(entry.Text("cup"), "cup", placed.Cup?.At) is { } cup)
            placed.Cup = cup;
        if (Choose<Harness>(entry.Text("harness"), "harness", placed.Harness?.At) is { } harness)
            placed.Harness = harness;
        if (Choose<Crossover>(entry.Text("module"), "crossover", placed.Module?.At) is { } module)
            placed.Module = module;
        foreach (var id in entry.Texts("with"))
        {
            if (catalog.Resolve<Sundry>(id, "sundry", problems) is { } sundry)
                placed.Sundries.Add(new Chosen<Sundry>(sundry, id.At));
        }
        if (entry.Inner("new_wire") is { } wire)
        {
            placed.NewWire =
                SupplyReader.OfType(Choose<WiringPart>(wire.Text("cable"), "wiring", placed.NewWire?.At), problems, "speaker-cable");
            placed.NewWireLength = wire.Length("length");
        }
        placed.Box = entry.Figure("box", Dimension.CubicMetre) ?? placed.Box;
        placed.Port = entry.Figure("port", Dimension.Hertz) ?? placed.Port;
        placed.Disconnected |= entry.Truth("disconnected") ?? false;
        placed.KeepsFactoryDriver |= entry.Truth("keeps_factory_driver") ?? false;
        placed.Reversed |= entry.Word("polarity") == "reversed";
        if (entry.Text("coils") is { } coils)
            _coils[placed.Position.Id] = coils;
        placed.OpenedWaterShed |= entry.Truth("opened_water_shed") ?? false;
    }

    // From here on the driver is what its terminals show; with one coil, or an unknown number, there is nothing to wire.
    private void WireCoils(FittedPosition placed)
    {
        if (!_coils.TryGetValue(placed.Position.Id, out var coils) || placed.Driver is not { } chosen)
            return;
        if (chosen.Part.Coils != 2)
        {
            problems.Error(coils.At, chosen.Part.Coils is 1 || chosen.Part.Type != "subwoofer"
                ? $"{chosen.Part.Name} has one voice coil: there is nothing to wire in {coils.Value}"
                : $"how many voice coils {chosen.Part.Name} has is not recorded; write `coils` into its entry");
            return;
        }
        placed.CoilsInSeries = coils.Value == "series";
        placed.Driver = chosen with { Part = chosen.Part.Wired(coils.Value == "series") };
    }

    private void AddDriver(Fields entry, FittedPosition placed)
    {
        if (Choose<Driver>(entry.Text("driver"), "driver", placed.Driver?.At) is { } driver)
            placed.Driver = driver;
        if (Choose<ComponentSet>(entry.Text("set"), "component-set", placed.Driver?.At) is not { } set)
            return;
        placed.Set = set;
        var member = placed.Position.Role == "tweeter" ? set.Part.Tweeter : set.Part.Woofer;
        if (member is not null && catalog.Resolve<Driver>(member, "driver", problems) is { } inSet)
            placed.Driver = new Chosen<Driver>(inSet, set.At);
    }

    private Chosen<T>? Choose<T>(Located<string>? id, string kind, Location? already) where T : Part
    {
        if (id is null || catalog.Resolve<T>(id, kind, problems) is not { } part)
            return null;
        if (already is { } first)
        {
            problems.Error(id.At, $"this position has its {kind} already, in line {first.Line}");
            return null;
        }
        return new Chosen<T>(part, id.At);
    }
}
