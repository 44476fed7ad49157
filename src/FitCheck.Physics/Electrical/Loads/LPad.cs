using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Loads;

/// <summary>
/// Two resistors that lower the level of a driver and keep the load: a series one in front of a shunt one across the driver.
/// R1 = Z·(1 − 1/K), R2 = Z/(K − 1), K = 10^(dB/20) (voltage divider; any text on attenuators).
/// </summary>
/// <param name="Series">R1, ohm, ≥ 0.</param>
/// <param name="Shunt">R2, ohm; infinite when nothing is to be lowered.</param>
internal readonly record struct LPad(double Series, double Shunt)
{
    /// <summary>For a load in ohm (&gt; 0) and an attenuation in dB (≥ 0).</summary>
    public static LPad For(double load, double attenuationDb)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(load);
        ArgumentOutOfRangeException.ThrowIfNegative(attenuationDb);
        var k = Decibel.ToAmplitude(attenuationDb);
        return new LPad(load * (1 - (1 / k)), load / (k - 1));
    }

    /// <summary>This pad with the nearest resistors that can be bought (E24, IEC 60063), ohm; nothing and infinity stay.</summary>
    public LPad InE24() =>
        new(Series > 0 ? PreferredNumbers.NearestE24(Series) : 0, double.IsFinite(Shunt) ? PreferredNumbers.NearestE24(Shunt) : Shunt);

    /// <summary>Attenuation in dB with a resistive load in ohm.</summary>
    public double Attenuation(double load)
    {
        var lower = Behind(load);
        return Decibel.OfAmplitude((Series + lower) / lower);
    }

    /// <summary>What the source sees, ohm.</summary>
    public double Input(double load) => Series + Behind(load);

    /// <summary>Shares of the power that goes in: series resistor, shunt resistor, load. They add up to 1.</summary>
    public (double Series, double Shunt, double Load) PowerShares(double load)
    {
        var lower = Behind(load);
        var behind = lower / (Series + lower);
        return (Series / (Series + lower), behind * lower / Shunt, behind * lower / load);
    }

    /// <summary>As rungs of a ladder.</summary>
    public IReadOnlyList<LadderElement> Elements => double.IsFinite(Shunt)
        ? [LadderElement.InLine(Series), LadderElement.Across(Shunt)]
        : [LadderElement.InLine(Series)];

    private double Behind(double load) => double.IsFinite(Shunt) ? CombinedLoad.Parallel(Shunt, load) : load;
}
