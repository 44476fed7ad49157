using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Programme;

/// <summary>
/// Simulated programme noise, the signal with which rated noise power is measured: third-octave band levels of
/// IEC 60268-1:1985, Table II, 20 Hz to 20 kHz. Bands are centred on 1000·10^(n/10) Hz and reach from 10^(−1/20) to 10^(1/20) times that;
/// inside a band the power is taken as even over log frequency.
/// </summary>
internal static class ProgrammeNoise
{
    /// <summary>Level of each of the 31 bands against the loudest, dB, from 20 Hz to 20 kHz.</summary>
    public static readonly IReadOnlyList<double> BandDb =
    [
        -13.5, -10.2, -7.4, -5.2, -3.5, -2.3, -1.4, -0.9, -0.5, -0.2, // 20 to 160 Hz
        -0.1, 0, 0, 0, 0, 0, 0, -0.1, -0.3, -0.6, // 200 Hz to 1.6 kHz
        -1.0, -1.6, -2.5, -3.7, -5.1, -7.0, -9.4, -11.9, -14.8, -18.2, -21.6, // 2 to 20 kHz
    ];

    // Points at which a function is looked at in each band, at equal ratios.
    private const int PointsPerBand = 3;

    private static readonly double[] Shares = SharesOf(BandDb);

    /// <summary>Exact centre of a band (0 for 20 Hz to 30 for 20 kHz), Hz.</summary>
    public static double CentreHz(int band) => 1000 * Math.Pow(10, (band - 17) / 10.0);

    /// <summary>Share of a band (0 to 30) in the power of the whole noise; all of them add up to 1.</summary>
    public static double Share(int band) => Shares[band];

    /// <summary>
    /// Mean of a function of frequency (Hz), weighted with the power of the noise. With a power gain |H(f)|² it is
    /// the share of power that gets through; with watts per volt squared it is watts per volt squared of noise.
    /// </summary>
    public static double Mean(Func<double, double> function) => Weighted(Shares, function);

    /// <summary>
    /// Frequencies at which a function is looked at, in each band at equal ratios, with the share of the noise's power that stands for
    /// each.
    /// </summary>
    public static IReadOnlyList<(double Hz, double Share)> Points { get; } = AllPoints();

    /// <summary>Sum of a function of frequency (Hz) over the bands, each with a weight of its own.</summary>
    internal static double Weighted(double[] weights, Func<double, double> function)
    {
        ArgumentNullException.ThrowIfNull(function);
        double sum = 0;
        for (var band = 0; band < weights.Length; band++)
        {
            for (var point = 0; point < PointsPerBand; point++)
                sum += weights[band] / PointsPerBand * function(Points[(band * PointsPerBand) + point].Hz);
        }

        return sum;
    }

    private static double PointHz(int band, int point) => CentreHz(band) * Math.Pow(10, (((point + 0.5) / PointsPerBand) - 0.5) / 10);

    private static (double Hz, double Share)[] AllPoints()
    {
        var points = new (double, double)[Shares.Length * PointsPerBand];
        for (var i = 0; i < points.Length; i++)
            points[i] = (PointHz(i / PointsPerBand, i % PointsPerBand), Shares[i / PointsPerBand] / PointsPerBand);
        return points;
    }

    private static double[] SharesOf(IReadOnlyList<double> levels)
    {
        var shares = PowersOf(levels);
        var sum = 0.0;
        foreach (var power in shares)
            sum += power;
        for (var band = 0; band < shares.Length; band++)
            shares[band] /= sum;
        return shares;
    }

    /// <summary>Levels in dB as powers.</summary>
    internal static double[] PowersOf(IReadOnlyList<double> levels)
    {
        var powers = new double[levels.Count];
        for (var band = 0; band < powers.Length; band++)
            powers[band] = Decibel.ToPower(levels[band]);
        return powers;
    }

    /// <summary>Share of the power above a frequency in Hz (&gt; 0), as an ideal filter would leave it.</summary>
    public static double ShareAbove(double hz)
    {
        double share = 0;
        for (var band = 0; band < Shares.Length; band++)
        {
            // How much of the band, in log frequency, lies above.
            var part = 0.5 - (10 * Math.Log10(hz / CentreHz(band)));
            share += Shares[band] * Math.Clamp(part, 0, 1);
        }

        return share;
    }
}
