using FitCheck.Builds;
using FitCheck.Catalog;

namespace FitCheck.Suggestions.Choices;

/// <summary>Names of the smallest things that a change touches and a fact rests on.</summary>
internal static class BuildInputs
{
    /// <summary>Something that rests on everything, such as the price.</summary>
    public const string All = "*";

    /// <summary>Something of this type that is bought besides.</summary>
    public static string Extra(string type) => At("extra", type);

    public static string At(string what, string place) => $"{what}@{place}";

    public static IEnumerable<string> At(string what, IEnumerable<string> places) => places.Select(p => At(what, p));

    /// <summary>The word for a sundry fitted at a position.</summary>
    public static string Of(string sundryType) => sundryType switch
    {
        "gasket-ring" => "gasket",
        "foam-tape" or "damping-sheet" => "tape",
        "capacitor" or "resistor" or "l-pad" => "inline",
        _ => sundryType,
    };

    /// <summary>The position on the other side of the vehicle, by its name.</summary>
    public static string? Mirror(Vehicle vehicle, string position) => Sides.Other(vehicle, position)?.Id;

    /// <summary>True when one set of positions is the other on the other side of the vehicle.</summary>
    public static bool AreMirrored(Vehicle vehicle, IReadOnlyCollection<string> one, IReadOnlyCollection<string> other) =>
        one.Count == other.Count && one.All(p => Mirror(vehicle, p) is { } m && other.Contains(m));

    /// <summary>What an output's load and what reaches each driver rest on, without the electronic filters.</summary>
    public static IEnumerable<string> OfNetwork(Build build, Channel channel)
    {
        foreach (var word in new[] { "crossover", "setting", "channel-inline" })
            yield return At(word, channel.Id);
        foreach (var fed in channel.Feeds)
        {
            foreach (var word in new[] { "driver", "wire", "inline" })
                yield return At(word, fed.Position.Id);
            foreach (var sharing in build.Vehicle.Positions.Where(
                p => p.FactoryChannel is not null && p.FactoryChannel.Value == fed.Position.FactoryChannel?.Value))
                yield return At("plug", sharing.Id);
        }
    }

    /// <summary>What the voltage of an output rests on besides its load.</summary>
    public static IEnumerable<string> OfSource(Channel channel) =>
        [At("limit", channel.Id), At("output", channel.Id), At("part", channel.Device.Id)];

    /// <summary>The electronic filters of an output.</summary>
    public static IEnumerable<string> OfFilters(Channel channel) => [At("highpass", channel.Id), At("lowpass", channel.Id)];

    /// <summary>All of it.</summary>
    public static IEnumerable<string> OfChannel(Build build, Channel channel) =>
        [.. OfNetwork(build, channel), .. OfSource(channel), .. OfFilters(channel)];
}
