using FitCheck.Facts.Fitting;

namespace FitCheck.Charts;

/// <summary>How many screw holes there are and how many meet; not known where a pattern is missing.</summary>
internal readonly record struct Holes(bool AreKnown, bool AreGuess, int Count, int CountMeeting)
{
    public Term Total => AreKnown ? Term.Exactly(Count) : Term.Missing;

    public Term Meeting => AreKnown ? new Term(CountMeeting, 0, AreGuess) : Term.Missing;
}

/// <summary>Lays hole patterns on each other once for all parts and places that have the same ones. Not to be used on several threads at once.</summary>
internal sealed class ScrewHoles
{
    private readonly Dictionary<(int Mount, int Pattern), Holes> _mountOnPanel = [];
    private readonly Dictionary<(int Mount, int Pattern), Holes> _onSpacer = [];
    private readonly Dictionary<int, Holes> _driverOnPanel = [];
    private int _driver = -1;

    /// <summary>Spacer, or driver without one, on the panel.</summary>
    public Holes OnPanel(Spot spot)
    {
        if (spot.Mount is { } mount)
            return _mountOnPanel.TryGetValue((mount.Index, spot.Place.Pattern), out var laid) ? laid : _mountOnPanel[(mount.Index, spot.Place.Pattern)] = OnPanelOnce(spot);
        // Drivers come one after the other; the next hardly has the same holes.
        if (_driver != spot.Driver.Pattern)
            _driverOnPanel.Clear();
        _driver = spot.Driver.Pattern;
        return _driverOnPanel.TryGetValue(spot.Place.Pattern, out var known) ? known : _driverOnPanel[spot.Place.Pattern] = OnPanelOnce(spot);
    }

    /// <summary>Driver on spacer.</summary>
    public Holes OnSpacer(Spot spot)
    {
        var key = (spot.Mount!.Index, spot.Driver.Pattern);
        return _onSpacer.TryGetValue(key, out var known) ? known : _onSpacer[key] = HoleFacts.DriverFit(spot.Mount.Adapter, spot.Driver.Driver) is { } fit ? Of(fit, fit.Second.Angles.Count) : default;
    }

    private static Holes OnPanelOnce(Spot spot) => HoleFacts.PanelFit(spot.Place.Position, spot.Mount?.Adapter, spot.Driver.Driver) is { } fit ? Of(fit, fit.Total) : default;

    private static Holes Of(HoleFit fit, int total) => new(AreKnown: true, fit.IsEstimated, total, fit.Meeting);
}
