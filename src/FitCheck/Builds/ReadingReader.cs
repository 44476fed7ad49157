using FitCheck.Catalog;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>
/// Reads what a build has measured, in `readings` or at a line of `fit`. A reading of nothing, or of something else than it says, is told.
/// </summary>
internal sealed class ReadingReader(PartsCatalog catalog, ProblemList problems)
{
    // What may be read of the parts at a position by naming it before their key; each is of the kind of that name.
    private static readonly string[] PartsThere = ["driver", "adapter", "cup", "harness"];

    // What a line of `fit` chooses and a tape tells too.
    private static readonly string[] OfLine = ["box", "port", "new_wire.length"];

    // What an entry is called is no reading.
    private static readonly string[] Names = ["id", "kind", "name", "provenance", "source", "notes", "pack", "price", "availability",
        "mirror_of", "fits", "contains", "positions", "part", "from"];

    // The words of `measured` at a line of `fit`.
    private static readonly (string Key, string Of)[] AtLine =
        [("depth", "mounting.depth"), ("cutout", "mounting.cutout"), ("grille_gap", "mounting.grille_gap")];

    private readonly Readings _readings = new(catalog, problems);

    /// <summary>The readings of a build.</summary>
    public Readings Read(Fields build, Vehicle vehicle)
    {
        var first = new Dictionary<(string At, string Of), Location>();
        foreach (var reading in Written(build).Concat(Lines(build)))
        {
            var of = Whole(reading, vehicle);
            if (first.TryAdd((reading.At.Value, of), reading.Of.At))
                Take(reading with { Of = new(of, reading.Of.At) }, build, vehicle);
            else
                problems.Error(reading.Of.At, $"`{of}` of `{reading.At.Value}` is read twice, the first time in line "
                    + $"{first[(reading.At.Value, of)].Line}");
        }
        return _readings;
    }

    private static IEnumerable<Reading> Written(Fields build)
    {
        foreach (var f in build.Each("readings"))
        {
            if (f.Text("at") is { } at && f.Text("of") is { } of && f.Map["value"] is YamlScalar value)
                yield return new(at, of, value with
                {
                    IsReading = true,
                    Text = f.Text("tolerance") is { } tolerance ? $"{value.Text} ± {tolerance.Value}" : value.Text,
                });
        }
    }

    private static IEnumerable<Reading> Lines(Fields build)
    {
        foreach (var line in build.Each("fit"))
        {
            if (line.Inner("measured") is not { } measured)
                continue;
            foreach (var at in line.Texts("at"))
            {
                foreach (var (key, of) in AtLine)
                {
                    if (measured.Map[key] is YamlScalar value)
                        yield return new(at, new(of, value.At), value with { IsReading = true });
                }
                // Of the coil that is there: the new driver's, or the factory's where that stays.
                if (measured.Map["resistance"] is YamlScalar ohms)
                    yield return new(at, new(HasDriver(build, at.Value) ? "driver.parameters.re" : "factory_driver.resistance", ohms.At),
                        ohms with { IsReading = true });
            }
        }
    }

    private static bool HasDriver(Fields build, string position) => build.Each("fit").Any(l =>
        l.Texts("at").Any(t => t.Value == position) && (l.Text("driver") is not null || l.Text("set") is not null));

    // What stands behind the panel of a position may be named without its `mounting`.
    private static string Whole(Reading reading, Vehicle vehicle) => vehicle.Find(reading.At.Value) is not null
        && reading.Of.Value.StartsWith("obstructions", StringComparison.Ordinal) ? "mounting." + reading.Of.Value : reading.Of.Value;

    private void Take(Reading reading, Fields build, Vehicle vehicle)
    {
        var at = reading.At.Value;
        if (vehicle.Find(at) is { } position)
            AtPosition(reading, position);
        else if (build.Each("devices").FirstOrDefault(d => d.Word("id") == at) is { } device)
            OfDevice(reading, device, vehicle);
        else if (at == Readings.Supply && build.Inner(Readings.Supply) is not null)
            OfSupply(reading);
        else if (catalog.KindOf(at) is { } kind && (kind != "vehicle" || at == vehicle.Id))
        {
            if (Path(reading, Keys(kind), kind) is { } path)
                _readings.AddOfEntry(reading, path);
        }
        else
            problems.Error(reading.At.At, $"`{at}` is no position of {vehicle.Id}, no device of this build and no part of the catalog"
                + Nearest.Hint(at, vehicle.Positions.Select(p => p.Id).Concat(build.Each("devices").Select(d => d.Word("id")))
                    .Concat(catalog.Ids)), ProblemKind.UnknownName);
    }

    private void AtPosition(Reading reading, Position position)
    {
        var of = reading.Of.Value;
        if (PartsThere.FirstOrDefault(w => of.StartsWith(w + ".", StringComparison.Ordinal)) is { } word)
        {
            var inPart = reading with { Of = new(of[(word.Length + 1)..], reading.Of.At) };
            if (Path(inPart, Keys(word), word) is { } ofPart)
                _readings.AddAt(reading, word, ofPart);
        }
        else if (OfLine.Contains(of, StringComparer.Ordinal))
        {
            if (IsRight(reading, of.Split('.'), "build", "fit"))
                _readings.AddOfLine(reading, of.Split('.'));
        }
        else if (Path(reading, [.. Keys("vehicle", "positions"), .. OfLine], "vehicle", position) is { } path)
            _readings.AddAt(reading, null, path);
    }

    private void OfDevice(Reading reading, Fields device, Vehicle vehicle)
    {
        var ofBuild = Keys("build", "devices");
        if (Reading.PathOf(reading.Of.Value, ofBuild) is { } own)
        {
            if (IsRight(reading, own, "build", "devices"))
                _readings.AddOfDevice(reading, own);
            return;
        }
        var part = device.Word("part") == DeviceReader.Factory ? vehicle.FactorySource?.Value : device.Word("part");
        if (part is not null && catalog.KindOf(part) is { } kind && Path(reading, [.. Keys(kind), .. ofBuild], kind) is { } path)
            _readings.AddOfDevicePart(reading, path);
    }

    private void OfSupply(Reading reading)
    {
        var before = Readings.Supply + ".";
        var keys = SchemaKeys.Of("build").Where(k => k.StartsWith(before, StringComparison.Ordinal)).Select(k => k[before.Length..])
            .ToList();
        if (Named(reading, keys, []) is { } path && IsRight(reading, [Readings.Supply, .. path], "build", null))
            _readings.AddOfDevice(reading, path);
    }

    /// <summary>What can be read of a kind, or of the items of a list of it; of what a place came with, also that it is nothing.</summary>
    internal static IReadOnlyList<string> Keys(string kind, string? list = null) =>
        [.. list == "positions" ? ["factory_driver"] : Array.Empty<string>(), .. SchemaKeys.Of(kind, list)
            .Where(k => !Names.Contains(k, StringComparer.Ordinal) && !k.EndsWith(".name", StringComparison.Ordinal))];

    // The steps to the datum; null when there is no such datum, or the value is none of its sort, which is told.
    private IReadOnlyList<string>? Path(Reading reading, IReadOnlyList<string> keys, string kind, Position? position = null) =>
        Named(reading, keys, [.. position?.Mounting.Obstructions.Select(o => o.Name) ?? []]) is { } path
            && IsRight(reading, path, kind, position is null ? null : "positions") ? path : null;

    private IReadOnlyList<string>? Named(Reading reading, IReadOnlyList<string> keys, IReadOnlyList<string> things)
    {
        var path = Reading.PathOf(reading.Of.Value, keys);
        if (path is not null && (path is not ["mounting", "obstructions", var thing, _] || things.Contains(thing, StringComparer.Ordinal)))
            return path;
        var among = $".{SchemaKeys.Name}.";
        problems.Error(reading.Of.At, $"`{reading.Of.Value}` is nothing that can be read of `{reading.At.Value}`"
            + Nearest.Hint(reading.Of.Value, keys.SelectMany(k => !k.Contains(among, StringComparison.Ordinal) ? [k]
                : things.Select(t => k.Replace(among, $".{t}.", StringComparison.Ordinal)))), ProblemKind.UnknownName);
        return null;
    }

    // What was found valid before is not looked at again.
    private bool IsRight(Reading reading, IReadOnlyList<string> path, string kind, string? list)
    {
        if (QuickProgram.IsThis || (reading.Value.Text == "none" && path[^1] == "obstructions"))
            return true;
        var told = ReadingShape.Problems(reading, path, kind, list);
        problems.AddRange(told);
        return told.Count == 0;
    }
}
