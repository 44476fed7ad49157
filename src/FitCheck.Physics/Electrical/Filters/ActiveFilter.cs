namespace FitCheck.Physics.Electrical.Filters;

/// <summary>
/// Magnitudes of the filters inside source units and amplifiers. Butterworth of order n (slope 6n dB/octave):
/// |H|² = 1/(1 + (f/fc)^2n) for a low-pass, with fc/f for a high-pass (Butterworth 1930; any text on filters).
/// A Linkwitz-Riley filter of order 2n is two Butterworth filters of order n in a row (Linkwitz, JAES 1976).
/// Frequencies in Hz, above zero; orders 1 and up.
/// </summary>
internal static class ActiveFilter
{
    /// <summary>Voltage ratio of a Butterworth high-pass; −3.01 dB at the corner.</summary>
    public static double ButterworthHighPass(double hz, double cornerHz, int order) => Butterworth(cornerHz / hz, order);

    /// <summary>Voltage ratio of a Butterworth low-pass; −3.01 dB at the corner.</summary>
    public static double ButterworthLowPass(double hz, double cornerHz, int order) => Butterworth(hz / cornerHz, order);

    /// <summary>Voltage ratio of a Linkwitz-Riley high-pass of an even order; −6.02 dB at the corner.</summary>
    public static double LinkwitzRileyHighPass(double hz, double cornerHz, int order) => LinkwitzRiley(cornerHz / hz, order);

    /// <summary>Voltage ratio of a Linkwitz-Riley low-pass of an even order; −6.02 dB at the corner.</summary>
    public static double LinkwitzRileyLowPass(double hz, double cornerHz, int order) => LinkwitzRiley(hz / cornerHz, order);

    /// <summary>Order of a filter from its slope in dB/octave: a sixth, rounded, at least 1.</summary>
    public static int OrderOfSlope(double dbPerOctave) => Math.Max(1, (int)Math.Round(Math.Abs(dbPerOctave) / 6));

    private static double Butterworth(double ratio, int order)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        return 1 / Math.Sqrt(1 + Math.Pow(ratio, 2 * order));
    }

    private static double LinkwitzRiley(double ratio, int order)
    {
        if (order < 2 || order % 2 != 0)
            throw new ArgumentOutOfRangeException(nameof(order), order, "A Linkwitz-Riley filter has an even order.");
        return 1 / (1 + Math.Pow(ratio, order));
    }
}
