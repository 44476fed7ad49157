using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>Turns a document into the entry of its kind.</summary>
internal static class EntryReader
{
    /// <summary>The entry of a text; null when there is none that can be used, which problems tell.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id under which it is known: for a file of its own, the file's name.</param>
    /// <param name="schemas">Null for a text that is known to be valid.</param>
    /// <param name="problems">Where mistakes are told.</param>
    public static Entry? Read(EntryText text, string id, SchemaCheck? schemas, ProblemList problems)
    {
        if (text.Parse(problems) is not { } root)
            return null;
        schemas?.Check(text.Kind, root, problems);
        var entry = Read(text.Kind, root, problems);
        if (entry is null || entry.Id == id || text.InList)
            return entry;
        problems.Error(entry.At, $"the id is `{entry.Id}`, but the file is named `{id}`; they must agree");
        return null;
    }

    /// <summary>The entry of a node; null when that is no mapping or of no known kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="root">The node.</param>
    /// <param name="problems">Where mistakes are told.</param>
    /// <param name="asRead">Of a vehicle: what a build has read at its positions; see <see cref="PositionReader.Read"/>.</param>
    internal static Entry? Read(string kind, YamlNode root, ProblemList problems, Func<string, YamlMap, YamlMap>? asRead = null)
    {
        if (root is not YamlMap map)
            return null;
        var provenance = (map["provenance"] as YamlScalar)?.Text switch
        {
            "measured" => Provenance.Measured,
            "datasheet" => Provenance.Datasheet,
            _ => Provenance.Estimated,
        };
        var f = new Fields(map, provenance, problems);
        return kind switch
        {
            "adapter" => new Adapter(f),
            "amplifier" => new Amplifier(f),
            "component-set" => new ComponentSet(f),
            "crossover" => new Crossover(f),
            "cup" => new Cup(f),
            "driver" => new Driver(f),
            "harness" => new Harness(f),
            "line-converter" => new LineConverter(f),
            "source-unit" => new SourceUnit(f),
            "sundry" => new Sundry(f),
            "vehicle" => new Vehicle(f, asRead),
            "wiring" => new WiringPart(f),
            _ => null,
        };
    }
}
