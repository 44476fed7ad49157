using System.Collections.Concurrent;
using FitCheck.Facts;

namespace FitCheck.Charts;

/// <summary>How many screw holes there are and how many meet; not known where a pattern is missing.</summary>
internal readonly record struct Holes(bool AreKnown, bool AreGuess, int Count, int CountMeeting)
{
    public Term Total => AreKnown ? Term.Exactly(Count) : Term.Missing;

    public Term Meeting => AreKnown ? new Term(CountMeeting, 0, AreGuess) : Term.Missing;
}

/// <summary>Lays hole patterns on each other once for all drivers, parts and places that have the same ones.</summary>
internal sealed class ScrewHoles
{
    private readonly ConcurrentDictionary<(int, int, int), Holes> _known = new();

    /// <summary>Spacer, or driver without one, on the panel.</summary>
    public Holes OnPanel(Spot spot)
    {
        var key = spot.Mount is { } mount ? (1, mount.Index, spot.Place.Pattern) : (0, spot.Driver.Pattern, spot.Place.Pattern);
        return _known.TryGetValue(key, out var known) ? known : _known[key] = HoleFacts.PanelFit(spot.Place.Position, spot.Mount?.Adapter, spot.Driver.Driver) is { } fit ? Of(fit, fit.Total) : default;
    }

    /// <summary>Driver on spacer.</summary>
    public Holes OnSpacer(Spot spot)
    {
        var key = (2, spot.Mount!.Index, spot.Driver.Pattern);
        return _known.TryGetValue(key, out var known) ? known : _known[key] = HoleFacts.DriverFit(spot.Mount.Adapter, spot.Driver.Driver) is { } fit ? Of(fit, fit.Second.Angles.Count) : default;
    }

    private static Holes Of(HoleFit fit, int total) => new(AreKnown: true, fit.IsEstimated, total, fit.Meeting);
}
