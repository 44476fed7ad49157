using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>Turns a document into the entry of its kind.</summary>
internal static class EntryReader
{
    public static Entry? Read(string kind, YamlNode root, ProblemList problems)
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
            "vehicle" => new Vehicle(f),
            "wiring" => new WiringPart(f),
            _ => null,
        };
    }
}
