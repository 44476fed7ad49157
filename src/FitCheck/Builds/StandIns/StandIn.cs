using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Builds.StandIns;

/// <summary>
/// The nearest vehicle of the catalog in the place of one that the catalog does not have. Its layout stays: which positions there are, on
/// which side, for what. Its figures are guesses. Its words and truths are not known, nor is what a figure tells by being there, since a
/// guess at one of those would read like knowledge.
/// </summary>
internal static class StandIn
{
    private static readonly string[] Layout =
        ["id", "kind", "name", "provenance", "source", "notes", "mirror_of", "side", "role", "place"];

    // A capacitor that is there and a network in the wire are facts of one car.
    private static readonly string[] Telling = ["own_capacitor", "network"];

    /// <summary>The entry's data under the name that is meant.</summary>
    public static YamlMap Of(YamlMap entry, Located<string> meant)
    {
        var guessed = Guessed(entry) is YamlMap map ? map.Entries : [];
        return entry with
        {
            Entries =
            [
                .. guessed.Where(e => e.Key is not ("name" or "provenance")), Text("name", meant.Value), Text("provenance", "estimated"),
            ],
        };

        YamlEntry Text(string key, string text) => new(key, meant.At, new YamlScalar(meant.At, text, Quoted: true));
    }

    /// <summary>Tells a name that is none, or that of the vehicle itself.</summary>
    public static Located<string>? Meant(Fields build, Vehicle vehicle)
    {
        if (build.Text("instead_of") is not { } meant)
            return null;
        var name = meant.Value.Trim();
        if (name.Length == 0)
            build.Problems.Error(meant.At, "expected the name of the car that is meant, found nothing", ProblemKind.WrongShape);
        else if (string.Equals(name, vehicle.Name, StringComparison.OrdinalIgnoreCase)
            || string.Equals(name, vehicle.Id, StringComparison.OrdinalIgnoreCase))
            build.Problems.Error(meant.At, $"`{name}` is the vehicle of the catalog itself; leave `instead_of` out, or name the car that "
                + "is meant", ProblemKind.WrongShape);
        else
            return meant with { Value = name };
        return null;
    }

    private static YamlNode? Guessed(YamlNode node) => node switch
    {
        YamlMap map => map with { Entries = [.. map.Entries.Select(Guessed).OfType<YamlEntry>()] },
        // That there is nothing was seen in another car.
        YamlList list => list.Items.Select(Guessed).OfType<YamlNode>().ToList() is { Count: > 0 } items ? list with { Items = items }
            : null,
        YamlScalar scalar => IsFigure(scalar) ? Marked(scalar) : null,
        _ => null,
    };

    private static YamlEntry? Guessed(YamlEntry entry) => entry is { Key: "angles", Value: YamlList angles }
        ? entry with { Value = angles with { Items = [.. angles.Items.Select(Marked)] } }
        : Layout.Contains(entry.Key, StringComparer.Ordinal) ? entry
        : Telling.Contains(entry.Key, StringComparer.Ordinal) ? null
        : Guessed(entry.Value) is { } value ? entry with { Value = value } : null;

    private static YamlNode Marked(YamlNode node) => node is YamlScalar scalar ? scalar with { IsTakenOver = true } : node;

    // What has a unit; a bare number is an hour or a count, which says nothing of how sure it is.
    private static bool IsFigure(YamlScalar scalar) =>
        QuantityText.ParseNumber(scalar.Text) is null && QuantityText.Parse(scalar.Text.Split(" @ ", 2)[0]) is not null;
}
