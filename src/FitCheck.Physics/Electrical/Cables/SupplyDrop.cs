using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Cables;

/// <summary>Current and voltage drop on the supply side.</summary>
internal static class SupplyDrop
{
    /// <summary>
    /// Voltage lost in a cable, volt: I·ρ·L/A. Current in ampere, length of both ways together in m, area in m², resistivity in ohm·m.
    /// </summary>
    public static double Volts(double current, double loopLength, double area, double resistivity = WireGauge.Copper) =>
        current * WireGauge.Resistance(loopLength, area, resistivity);

    /// <summary>Current that an amplifier draws, ampere: P/(η·V). Output power in watt, efficiency 0 to 1, supply in volt.</summary>
    public static double Current(double outputPower, double efficiency, double supplyVolts) => outputPower / (efficiency * supplyVolts);

    /// <summary>Power that a supply current allows at the output, watt: I·V·η.</summary>
    public static double OutputPower(double current, double supplyVolts, double efficiency) => current * supplyVolts * efficiency;
}
