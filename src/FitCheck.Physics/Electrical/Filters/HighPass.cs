namespace FitCheck.Physics.Electrical.Filters;

/// <summary>What a high-pass in front of a tweeter does, read from its transfer function.</summary>
/// <param name="PassbandDb">Level between 8 and 16 kHz against the source, dB.</param>
/// <param name="CornerHz">Highest frequency below 8 kHz at which the level has fallen 3.01 dB below the passband; null when it never does:
/// full range. 8 kHz when it is below even there.</param>
/// <param name="SlopeDbPerOctave">Steepness below the corner, positive; null without a corner or without room above the lowest
/// frequency.</param>
/// <param name="PeakDb">Highest level above the passband level, dB, ≥ 0: a resonance of the network with the driver.</param>
/// <param name="PeakHz">Where that is, Hz.</param>
internal sealed record HighPass(double PassbandDb, double? CornerHz, double? SlopeDbPerOctave, double PeakDb, double PeakHz)
{
    /// <summary>The passband that the corner refers to, Hz.</summary>
    public const double PassbandFrom = 8_000, PassbandTo = 16_000;

    /// <summary>Half power: 10·log10 2 dB.</summary>
    public static readonly double HalfPowerDb = 10 * Math.Log10(2);

    /// <summary>True when nothing keeps low frequencies away.</summary>
    public bool IsFullRange => CornerHz is null;

    /// <summary>
    /// Reads a transfer function: ascending frequencies in Hz that reach from 20 Hz or so to 16 kHz at least, and levels in dB.
    /// Levels between points are interpolated in log frequency. The passband level is the mean of the dB values over log frequency
    /// (the geometric mean of the magnitude). The slope is measured from corner/2 down to corner/8, or to the lowest frequency.
    /// </summary>
    public static HighPass Of(IReadOnlyList<double> frequencies, IReadOnlyList<double> levelsDb)
    {
        ArgumentNullException.ThrowIfNull(frequencies);
        ArgumentNullException.ThrowIfNull(levelsDb);
        if (frequencies.Count != levelsDb.Count || frequencies.Count < 2)
            throw new ArgumentException("Give as many levels as frequencies, two or more.", nameof(levelsDb));
        if (frequencies[^1] < PassbandTo)
            throw new ArgumentException("The frequencies must reach 16 kHz, where the passband ends.", nameof(frequencies));

        var curve = new Curve(frequencies, levelsDb);
        var passband = curve.Mean(PassbandFrom, PassbandTo);
        var corner = Corner(curve, passband - HalfPowerDb);
        var peak = 0;
        for (var i = 1; i < levelsDb.Count; i++)
            peak = levelsDb[i] > levelsDb[peak] ? i : peak;
        return new HighPass(passband, corner, Slope(curve, corner), Math.Max(0, levelsDb[peak] - passband), frequencies[peak]);
    }

    private static double? Corner(Curve curve, double level)
    {
        double upperHz = PassbandFrom, upper = curve.At(PassbandFrom);
        if (upper < level)
            return PassbandFrom;
        for (var i = curve.Hz.Count - 1; i >= 0; i--)
        {
            if (curve.Hz[i] >= PassbandFrom)
                continue;
            if (curve.Db[i] < level)
            {
                var part = double.IsNegativeInfinity(curve.Db[i]) ? 0 : (upper - level) / (upper - curve.Db[i]);
                return upperHz * Math.Pow(curve.Hz[i] / upperHz, part);
            }

            (upperHz, upper) = (curve.Hz[i], curve.Db[i]);
        }

        return null;
    }

    private static double? Slope(Curve curve, double? corner)
    {
        if (corner is not { } hz)
            return null;
        double high = hz / 2, low = Math.Max(hz / 8, curve.Hz[0]);
        return high > low ? (curve.At(high) - curve.At(low)) / Math.Log2(high / low) : null;
    }

    private readonly record struct Curve(IReadOnlyList<double> Hz, IReadOnlyList<double> Db)
    {
        public double At(double hz)
        {
            // The first point at or above it, between the second and the last.
            var (i, last) = (1, Hz.Count - 1);
            while (i < last)
            {
                var middle = (i + last) / 2;
                (i, last) = Hz[middle] < hz ? (middle + 1, last) : (i, middle);
            }

            var part = Math.Clamp(Math.Log(hz / Hz[i - 1]) / Math.Log(Hz[i] / Hz[i - 1]), 0, 1);
            return Db[i - 1] + (part * (Db[i] - Db[i - 1]));
        }

        public double Mean(double from, double to)
        {
            double area = 0, hz = from, db = At(from);
            for (var i = 0; i < Hz.Count && hz < to; i++)
            {
                if (Hz[i] <= hz)
                    continue;
                var next = Math.Min(Hz[i], to);
                var nextDb = At(next);
                area += (db + nextDb) / 2 * Math.Log(next / hz);
                (hz, db) = (next, nextDb);
            }

            return area / Math.Log(to / from);
        }
    }
}
