using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>An entry of `fit` or `channels` as it is written, and the positions that it is about.</summary>
internal sealed record FitLine(YamlMap Map, IReadOnlyList<string> Positions)
{
    public string? this[string key] => (Map[key] as YamlScalar)?.Text;

    public static IReadOnlyList<FitLine> Of(YamlMap root, string list, string positions) =>
        [.. Maps(root, list)
            .Select(m => new FitLine(m, [.. ((m[positions] as YamlList)?.Items ?? []).OfType<YamlScalar>().Select(s => s.Text)]))];

    public static IEnumerable<YamlMap> Maps(YamlMap root, string list) => ((root[list] as YamlList)?.Items ?? []).OfType<YamlMap>();
}

/// <summary>What the finders of slots work with.</summary>
internal sealed record SlotContext(Build Build, YamlMap Root, YamlEditor Editor, Stock Stock)
{
    public Vehicle Vehicle => Build.Vehicle;

    public IReadOnlyList<FitLine> Fit { get; } = FitLine.Of(Root, "fit", "at");

    public IReadOnlyList<FitLine> Channels { get; } = FitLine.Of(Root, "channels", "feeds");

    /// <summary>Sites that choose the same for mirrored places, together: both sides of a vehicle are one choice.</summary>
    public IEnumerable<IReadOnlyList<FitLine>> Paired(IEnumerable<FitLine> sites, Func<FitLine, string?> value)
    {
        var rest = sites.ToList();
        while (rest.Count > 0)
        {
            var first = rest[0];
            var other = rest.Skip(1)
                .FirstOrDefault(s => value(s) == value(first) && BuildInputs.AreMirrored(Vehicle, first.Positions, s.Positions));
            rest.Remove(first);
            if (other is not null)
                rest.Remove(other);
            yield return other is null ? [first] : [first, other];
        }
    }

    /// <summary>Positions in pairs of left and right where both are among them.</summary>
    public IEnumerable<IReadOnlyList<string>> Pairs(IEnumerable<string> positions)
    {
        var rest = positions.ToList();
        while (rest.Count > 0)
        {
            var first = rest[0];
            var other = BuildInputs.Mirror(Vehicle, first) is { } mirror && rest.Contains(mirror) ? mirror : null;
            rest.Remove(first);
            if (other is not null)
                rest.Remove(other);
            yield return other is null ? [first] : [first, other];
        }
    }
}
