using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Loads;

/// <summary>What resistances take off a driver's level at every frequency alike: wire, coils' wire, resistors, L-pads.</summary>
internal static class ResistiveLoss
{
    /// <summary>
    /// Level at the driver's terminals against the output, dB (0 or less), with its DC resistance for a load and every coil and capacitor
    /// left out: those in line conduct, rungs across the signal with one of them don't.
    /// </summary>
    /// <param name="shared">Rungs before all branches.</param>
    /// <param name="branch">The way to the driver; the other branches are left out.</param>
    public static double Db(IReadOnlyList<LadderElement> shared, ChannelBranch branch)
    {
        ArgumentNullException.ThrowIfNull(shared);
        ArgumentNullException.ThrowIfNull(branch);
        var (load, gain) = (branch.Driver.Re, 1.0);
        Through(branch.Elements ?? []);
        Series(branch.WireResistance);
        Through(shared);
        return Decibel.OfAmplitude(gain);

        void Through(IReadOnlyList<LadderElement> rungs)
        {
            for (var i = rungs.Count - 1; i >= 0; i--)
            {
                if (!rungs[i].Shunt)
                    Series(rungs[i].Resistance ?? 0);
                else if (rungs[i] is { Resistance: > 0 and var across, Inductance: null, Capacitance: null })
                    load = CombinedLoad.Parallel(load, across);
            }
        }

        void Series(double resistance)
        {
            gain *= load / (load + resistance);
            load += resistance;
        }
    }
}
