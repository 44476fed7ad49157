using FitCheck.Facts.Fitting;

namespace FitCheck.Charts.BestMount;

/// <summary>How many screw holes there are and how many meet; not known where a pattern is missing.</summary>
internal readonly record struct Holes(bool AreKnown, bool AreGuess, int Count, int CountMeeting)
{
    public LengthTerm Total => AreKnown ? LengthTerm.Exactly(Count) : LengthTerm.Missing;

    public LengthTerm Meeting => AreKnown ? new LengthTerm(CountMeeting, 0, AreGuess) : LengthTerm.Missing;
}

/// <summary>
/// Lays hole patterns on each other once for all parts and places that have the same ones. Not to be used on several threads at once.
/// </summary>
internal sealed class ScrewHoles
{
    private readonly Dictionary<(int Mount, int Pattern), Holes> _mountOnPanel = [];
    private readonly Dictionary<(int Alike, int Pattern), Holes> _onSpacer = [];
    private readonly Dictionary<int, Holes> _driverOnPanel = [];
    private int _driver = -1;

    /// <summary>Spacer, or driver without one, on the panel.</summary>
    public Holes OnPanel(PlacedPairFacts pair)
    {
        if (pair.Mount is { } mount)
            return _mountOnPanel.TryGetValue((mount.Index, pair.Place.Pattern), out var laid) ? laid
                : _mountOnPanel[(mount.Index, pair.Place.Pattern)] = OnPanelOnce(pair);
        // Drivers come one after the other; the next hardly has the same holes.
        if (_driver != pair.Driver.Pattern)
            _driverOnPanel.Clear();
        _driver = pair.Driver.Pattern;
        return _driverOnPanel.TryGetValue(pair.Place.Pattern, out var known) ? known
            : _driverOnPanel[pair.Place.Pattern] = OnPanelOnce(pair);
    }

    /// <summary>Driver on spacer.</summary>
    public Holes OnSpacer(PlacedPairFacts pair)
    {
        var key = (pair.Mount!.Alike, pair.Driver.Pattern);
        return _onSpacer.TryGetValue(key, out var known) ? known : _onSpacer[key] = HoleFacts.DriverFit(pair.Mount.Adapter,
            pair.Driver.Driver, pair.Practice) is { } fit ? Of(fit, fit.Second.Angles.Count) : default;
    }

    private static Holes OnPanelOnce(PlacedPairFacts pair) =>
        HoleFacts.PanelFit(pair.Place.Position, pair.Mount?.Adapter, pair.Driver.Driver, pair.Practice) is { } fit ? Of(fit, fit.Total)
            : default;

    private static Holes Of(HoleFit fit, int total) => new(AreKnown: true, fit.IsEstimated, total, fit.Meeting);
}
