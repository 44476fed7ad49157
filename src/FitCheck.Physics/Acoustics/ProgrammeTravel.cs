using FitCheck.Physics.Electrical;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// How far a cone travels with programme noise (IEC 60268-1) rather than with a sine: rms over the noise's bands, times the crest factor 2 of the noise
/// with which rated power is tested (IEC 60268-5). The output always plays at its full rms voltage: a filter before it makes room for what it lets through.
/// </summary>
public sealed class ProgrammeTravel
{
    /// <summary>Peak over rms of the noise for power tests (IEC 60268-5).</summary>
    public const double Crest = 2;

    // A corner above this is no longer one that keeps deep bass from a woofer.
    private const double HighestCorner = 500;

    private readonly List<(double Hz, double Share, double Square)> _points = [];

    private ProgrammeTravel()
    {
    }

    /// <summary>
    /// For a driver, its moving mass in kg, and the voltage ratio by frequency of everything between output and driver that is passive.
    /// Null when the driver's parameters are not known.
    /// </summary>
    public static ProgrammeTravel? Of(DriverModel driver, double movingMass, Func<double, double> passive)
    {
        ArgumentNullException.ThrowIfNull(driver);
        ArgumentNullException.ThrowIfNull(passive);
        if (!driver.HasMotionalPart)
            return null;
        var travel = new ProgrammeTravel();
        foreach (var (hz, share) in ProgrammeNoise.Points)
        {
            // Peak is that of a sine; its rms is less by the square root of two.
            var rms = Excursion.Peak(driver, movingMass, passive(hz), hz)!.Value / Math.Sqrt(2);
            travel._points.Add((hz, share, rms * rms));
        }
        return travel;
    }

    /// <summary>Peak travel to one side in m, with the output at a voltage in V rms behind electronic filters of a voltage ratio by frequency.</summary>
    public double Peak(double volts, Func<double, double> filters)
    {
        ArgumentNullException.ThrowIfNull(filters);
        double through = 0, square = 0;
        foreach (var (hz, share, perVolt) in _points)
        {
            var gain = filters(hz);
            through += share * gain * gain;
            square += share * gain * gain * perVolt;
        }
        return through > 0 ? Crest * volts * Math.Sqrt(square / through) : 0;
    }

    /// <summary>
    /// Lowest corner in Hz of a Butterworth high-pass of an order that keeps travel within a limit in m, beside other filters; the lowest audible
    /// frequency when none is needed, null when none up to 500 Hz is enough. Good to 0.5 %.
    /// </summary>
    public double? LowestHighPass(double volts, double limit, int order, Func<double, double> others)
    {
        double low = FrequencyGrid.Lowest, high = HighestCorner;
        if (Peak(volts, others) <= limit)
            return low;
        if (!Keeps(high))
            return null;
        while (high / low > 1.005)
        {
            var middle = Math.Sqrt(low * high);
            if (Keeps(middle))
                high = middle;
            else
                low = middle;
        }
        return high;

        bool Keeps(double corner) => Peak(volts, hz => others(hz) * ActiveFilter.ButterworthHighPass(hz, corner, order)) <= limit;
    }
}
