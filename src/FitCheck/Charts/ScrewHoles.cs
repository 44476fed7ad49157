using System.Collections.Concurrent;
using FitCheck.Facts;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>How many screw holes there are and how many meet.</summary>
internal readonly record struct Holes(Brief Total, Brief Meeting);

/// <summary>Lays hole patterns on each other once for all drivers, parts and places that have the same ones.</summary>
internal sealed class ScrewHoles
{
    private readonly ConcurrentDictionary<(int, int, int), Holes> _known = new();

    /// <summary>Spacer, or driver without one, on the panel.</summary>
    public Holes OnPanel(Spot spot)
    {
        var key = spot.Mount is { } mount ? (1, mount.Index, spot.Place.Pattern) : (0, spot.Driver.Pattern, spot.Place.Pattern);
        return _known.TryGetValue(key, out var known) ? known : _known[key] = Of(HoleFacts.PanelFit(spot.Mated.At(spot.Place)), f => f.Total);
    }

    /// <summary>Driver on spacer.</summary>
    public Holes OnSpacer(Spot spot)
    {
        var key = (2, spot.Mount!.Index, spot.Driver.Pattern);
        return _known.TryGetValue(key, out var known) ? known : _known[key] = Of(HoleFacts.DriverFit(spot.Mated.At(spot.Place)), f => f.Second.Angles.Count);
    }

    private static Holes Of(HoleFit? fit, Func<HoleFit, int> total) => fit is null
        ? new(Brief.Unknown, Brief.Unknown)
        : new(Brief.Of(Uncertain.Exact(total(fit)), unsure: false), Brief.Of(Uncertain.Exact(fit.Match.Meeting), fit.IsEstimated));
}
