namespace FitCheck.Physics.Electrical.Filters;

/// <summary>
/// The band that filters leave to a driver: where the level at its terminals is less than 3 dB below what would arrive without.
/// </summary>
/// <param name="PeakDb">The highest level against that, dB: where a high-pass lies above a low-pass, well below 0.</param>
/// <param name="LowHz">Where the band begins; the lowest frequency looked at when nothing limits it.</param>
/// <param name="HighHz">Where it ends.</param>
internal sealed record PassBand(double PeakDb, double LowHz, double HighHz)
{
    /// <summary>
    /// Reads a transfer function: ascending frequencies in Hz, and levels in dB against those without filters. From the frequency nearest
    /// to where the driver is at home at which the level is there, the ends are looked for outwards; a resonance beyond them is no band.
    /// Where nothing is less than 3 dB down, the ends are 3 dB below the peak. Between points the level is interpolated in log frequency.
    /// </summary>
    public static PassBand Of(IReadOnlyList<double> frequencies, IReadOnlyList<double> levelsDb, double homeHz)
    {
        ArgumentNullException.ThrowIfNull(frequencies);
        ArgumentNullException.ThrowIfNull(levelsDb);
        if (frequencies.Count != levelsDb.Count || frequencies.Count < 2)
            throw new ArgumentException("Give as many levels as frequencies, two or more.", nameof(levelsDb));
        var peak = levelsDb.Max();
        var level = (peak < -HighPass.HalfPowerDb ? peak : 0) - HighPass.HalfPowerDb;
        var start = Enumerable.Range(0, frequencies.Count).Where(i => levelsDb[i] >= level)
            .MinBy(i => Math.Abs(Math.Log(frequencies[i] / homeHz)));
        return new PassBand(peak, End(-1), End(1));

        double End(int step)
        {
            for (var i = start + step; i >= 0 && i < levelsDb.Count; i += step)
            {
                var (inside, outside) = (levelsDb[i - step], levelsDb[i]);
                if (outside >= level)
                    continue;
                var part = double.IsNegativeInfinity(outside) ? 0 : (inside - level) / (inside - outside);
                return frequencies[i - step] * Math.Pow(frequencies[i] / frequencies[i - step], part);
            }
            return step < 0 ? frequencies[0] : frequencies[^1];
        }
    }
}
