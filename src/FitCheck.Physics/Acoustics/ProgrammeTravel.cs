using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Numerics;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// How far a cone travels with programme noise (IEC 60268-1) rather than with a sine. The noise has the crest factor 2 with which rated
/// power is tested (IEC 60268-5), and the output plays it as loud as it can without clipping: its peaks reach those of the continuous sine,
/// √2·V, so its rms is V/√2. That level is set once, before any filter: a filter takes away from it, and nobody turns it up again
/// behind the filter, so a narrower band never asks more travel. Only the output of a subwoofer is turned up for the bass alone: there
/// the peaks of what a subwoofer is for just fit it, wherever its filters are set. Peaks of travel, too, are taken as twice its rms.
/// </summary>
internal sealed class ProgrammeTravel
{
    // What a subwoofer is for: bass up to where doors usually begin, at a usual slope (common practice, no source).
    private const double BassCorner = 80;
    private const int BassOrder = 4;

    // A corner above this is no longer one that keeps deep bass from a woofer.
    private const double HighestCorner = 500;

    private readonly List<(double Hz, double Share, double Square)> _points = [];

    // Share of the programme to which the output is turned up.
    private readonly double _meant;

    private ProgrammeTravel(double meant) => _meant = meant;

    /// <summary>
    /// For a driver, its moving mass in kg, and the voltage ratio by frequency of everything between output and driver that is passive.
    /// Null when the driver's parameters are not known.
    /// </summary>
    /// <param name="driver">The driver, in its box.</param>
    /// <param name="movingMass">Its moving mass in kg.</param>
    /// <param name="passive">Voltage ratio by frequency.</param>
    /// <param name="forBass">The output feeds a subwoofer and is turned up for bass alone.</param>
    public static ProgrammeTravel? Of(DriverModel driver, double movingMass, Func<double, double> passive, bool forBass = false)
    {
        ArgumentNullException.ThrowIfNull(driver);
        ArgumentNullException.ThrowIfNull(passive);
        if (!driver.HasMotionalPart)
            return null;
        var travel = new ProgrammeTravel(forBass
            ? ProgrammeNoise.Mean(hz => Math.Pow(ActiveFilter.ButterworthLowPass(hz, BassCorner, BassOrder), 2)) : 1);
        foreach (var (hz, share) in ProgrammeNoise.Points)
        {
            // Peak is that of a sine; its rms is less by the square root of two.
            var rms = Excursion.Peak(driver, movingMass, passive(hz), hz)!.Value / Math.Sqrt(2);
            travel._points.Add((hz, share, rms * rms));
        }
        return travel;
    }

    /// <summary>
    /// Peak travel to one side in m, with an output of a continuous sine voltage in V rms, behind electronic filters of a voltage ratio by
    /// frequency.
    /// </summary>
    public double Peak(double volts, Func<double, double> filters)
    {
        ArgumentNullException.ThrowIfNull(filters);
        double square = 0;
        foreach (var (hz, share, perVolt) in _points)
        {
            var gain = filters(hz);
            square += share * gain * gain * perVolt;
        }
        return 2 * volts / Math.Sqrt(2) * Math.Sqrt(square / _meant);
    }

    /// <summary>
    /// Lowest corner in Hz of a Butterworth high-pass of an order that keeps travel within a limit in m, beside other filters; the lowest
    /// audible frequency when none is needed, null when none up to 500 Hz is enough. Good to 0.5 %.
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
