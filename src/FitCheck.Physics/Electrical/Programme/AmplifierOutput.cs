namespace FitCheck.Physics.Electrical.Programme;

/// <summary>One line of a data sheet: continuous power into a resistive load.</summary>
/// <param name="Power">Watt, &gt; 0.</param>
/// <param name="Load">Ohm, &gt; 0.</param>
internal sealed record PowerRating(double Power, double Load)
{
    /// <summary>Voltage at that rating, √(P·R), volt rms.</summary>
    public double Volts => Math.Sqrt(Power * Load);
}

/// <summary>
/// An output as a voltage- and current-limited source, from its continuous ratings. Between two rated loads the voltage it reaches is
/// interpolated linearly in the logarithm of the load. Above the highest rated load the voltage stays what it is there;
/// below the lowest the current stays, so that a single rating gives P·R0/R above and P·R/R0 below.
/// </summary>
internal sealed class AmplifierOutput
{
    // By ascending load, each load once.
    private readonly List<PowerRating> _ratings = [];

    /// <summary>From one or more ratings; of two for the same load the lower one counts.</summary>
    public AmplifierOutput(IEnumerable<PowerRating> ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        foreach (var rating in ratings)
        {
            if (!(rating.Power > 0 && rating.Load > 0 && double.IsFinite(rating.Power) && double.IsFinite(rating.Load)))
                throw new ArgumentException("Powers and loads of ratings are finite and above zero.", nameof(ratings));
            Insert(rating);
        }
        if (_ratings.Count == 0)
            throw new ArgumentException("Give at least one rating: a power and its load.", nameof(ratings));
    }

    /// <summary>Highest continuous voltage across a load in ohm (&gt; 0), volt rms.</summary>
    public double VoltsInto(double load)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(load);
        var (lowest, highest) = (_ratings[0], _ratings[^1]);
        if (load <= lowest.Load)
            return lowest.Volts * load / lowest.Load;
        if (load >= highest.Load)
            return highest.Volts;
        var above = _ratings.FindIndex(r => r.Load >= load);
        var (a, b) = (_ratings[above - 1], _ratings[above]);
        return a.Volts + ((b.Volts - a.Volts) * Math.Log(load / a.Load) / Math.Log(b.Load / a.Load));
    }

    /// <summary>
    /// The most that the voltage across a load in ohm (&gt; 0) can be, volt rms. Above the highest rated load an output that is bound by
    /// its current goes on as between the two highest ratings; with a single one its power may stay what it is, and never rises.
    /// </summary>
    public double MostVoltsInto(double load)
    {
        var (volts, highest) = (VoltsInto(load), _ratings[^1]);
        if (load <= highest.Load)
            return volts;
        var rise = _ratings.Count == 1 ? 0.5
            : Math.Clamp(Math.Log(highest.Volts / _ratings[^2].Volts) / Math.Log(highest.Load / _ratings[^2].Load), 0, 0.5);
        return volts * Math.Pow(load / highest.Load, rise);
    }

    /// <summary>The highest load that is rated, ohm.</summary>
    public double HighestLoad => _ratings[^1].Load;

    /// <summary>Highest continuous power into a resistive load in ohm (&gt; 0), watt.</summary>
    public double PowerInto(double load)
    {
        var volts = VoltsInto(load);
        return volts * volts / load;
    }

    /// <summary>
    /// The most that an output bridged across a supply can give without a converter, sine, watt: (V − drop)²/(2·R),
    /// as the peak voltage cannot exceed the supply less what the output stage keeps.
    /// </summary>
    public static double SineCeiling(double supplyVolts, double dropVolts, double load)
    {
        var peak = Math.Max(0, supplyVolts - dropVolts);
        return peak * peak / (2 * load);
    }

    /// <summary>
    /// The most that an output that swings about half the supply (not bridged) can give without a converter, sine, watt: ((V −
    /// drop)/2)²/(2·R).
    /// </summary>
    public static double SingleEndedCeiling(double supplyVolts, double dropVolts, double load) =>
        SineCeiling(supplyVolts, dropVolts, load) / 4;

    private void Insert(PowerRating rating)
    {
        var place = _ratings.FindIndex(r => r.Load >= rating.Load);
        if (place < 0)
            _ratings.Add(rating);
        else if (_ratings[place].Load > rating.Load)
            _ratings.Insert(place, rating);
        else if (rating.Power < _ratings[place].Power)
            _ratings[place] = rating;
    }
}
