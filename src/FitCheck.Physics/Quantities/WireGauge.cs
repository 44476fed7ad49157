namespace FitCheck.Physics.Quantities;

/// <summary>American Wire Gauge to cross-section (ASTM B258: 36 AWG is 0.005 in, 4/0 is 0.46 in, 39 equal steps between).</summary>
internal static class WireGauge
{
    /// <summary>Diameter in m. 0 stands for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0: d = 0.127 mm · 92^((36 − n)/39).</summary>
    public static double DiameterOf(int gauge) => 0.127e-3 * Math.Pow(92, (36 - gauge) / 39.0);

    /// <summary>Cross-section in m². 0 stands for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0.</summary>
    public static double AreaOf(int gauge)
    {
        var diameter = DiameterOf(gauge);
        return Math.PI / 4 * diameter * diameter;
    }

    /// <summary>The gauge whose cross-section this is, to half a percent: `4 AWG`, `1/0 AWG`; null for a metric wire.</summary>
    public static string? NameOf(double area)
    {
        for (var gauge = -3; gauge <= 36; gauge++)
        {
            if (Math.Abs((area / AreaOf(gauge)) - 1) < 0.005)
                return gauge > 0 ? $"{gauge} AWG" : $"{1 - gauge}/0 AWG";
        }
        return null;
    }

    /// <summary>
    /// Resistance of a length of wire in ohm: resistivity in ohm·m (IACS copper 1.7241e-8 at 20 °C), length in m (count both conductors),
    /// area in m².
    /// </summary>
    public static double Resistance(double length, double area, double resistivity = Copper) => resistivity * length / area;

    /// <summary>
    /// Resistivity or resistance at a temperature in °C from its value at 20 °C: ×(1 + 0.00393·(T − 20)), copper of 100 % IACS (Industrial
    /// Power Engineering and Applications Handbook).
    /// </summary>
    public static double AtTemperature(double valueAt20, double celsius) => valueAt20 * (1 + (CopperPerKelvin * (celsius - 20)));

    /// <summary>IACS annealed copper at 20 °C, ohm·m.</summary>
    public const double Copper = 1.7241e-8;

    /// <summary>Temperature coefficient of resistance of annealed copper at 20 °C, 1/K.</summary>
    public const double CopperPerKelvin = 0.00393;

    /// <summary>
    /// Copper-clad aluminium with 10 % of copper by volume at 20 °C, ohm·m: 62.9 % IACS (ASTM B566 class 10A, by a maker's table).
    /// </summary>
    public const double CopperCladAluminium = Copper / 0.629;

    /// <summary>Hard-drawn aluminium 1350 at 20 °C, ohm·m: 61 % IACS (ASTM B230, from memory).</summary>
    public const double Aluminium = Copper / 0.61;
}
