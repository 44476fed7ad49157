namespace FitCheck.Physics.Electrical;

/// <summary>American Wire Gauge to cross-section (ASTM B258: 36 AWG is 0.005 in, 4/0 is 0.46 in, 39 equal steps between).</summary>
public static class WireGauge
{
    /// <summary>Cross-section in m². 0 stands for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0.</summary>
    public static double AreaOf(int gauge)
    {
        var diameter = 0.127e-3 * Math.Pow(92, (36 - gauge) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }

    /// <summary>Resistance of a length of wire in ohm: resistivity in ohm·m (IACS copper 1.7241e-8 at 20 °C), length in m (count both conductors), area in m².</summary>
    public static double Resistance(double length, double area, double resistivity = Copper) => resistivity * length / area;

    /// <summary>IACS annealed copper at 20 °C, ohm·m.</summary>
    public const double Copper = 1.7241e-8;
}
