using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Cables;

/// <summary>
/// What an insulated stranded copper conductor may carry, ampere: 33 CFR 183.425, table 5 (boats, 30 °C ambient, below 50 V), and in an
/// engine space (50 °C) what note 1 of that table leaves of it. It is law for boats and a careful reference elsewhere.
/// </summary>
internal static class Ampacity
{
    /// <summary>The table's columns: what the insulation stands, °C.</summary>
    public static IReadOnlyList<double> Insulations { get; } = [60, 75, 80, 90, 105, 125, 200];

    // Note 1. That of 105 °C as printed; those of 60, 75, 90 and 125 °C are √((T − 50)/(T − 30)), as for 50 °C in the Canadian Electrical
    // Code, table 5A; those of 80 and 200 °C are from memory.
    private static readonly double[] EngineSpace = [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1];

    private static readonly (int Gauge, double[] Amperes)[] Table =
    [
        (18, [10, 10, 15, 20, 20, 25, 25]), (16, [15, 15, 20, 25, 25, 30, 35]), (14, [20, 20, 25, 30, 35, 40, 45]),
        (12, [25, 25, 35, 40, 45, 50, 55]),
        (10, [40, 40, 50, 55, 60, 70, 70]), (8, [55, 65, 70, 70, 80, 90, 100]), (6, [80, 95, 100, 100, 120, 125, 135]),
        (4, [105, 125, 130, 135, 160, 170, 180]),
        (3, [120, 145, 150, 155, 180, 195, 210]), (2, [140, 170, 175, 180, 210, 225, 240]), (1, [165, 195, 210, 210, 245, 265, 280]),
        (0, [195, 230, 245, 245, 285, 305, 325]), (-1, [225, 265, 285, 285, 330, 355, 370]), (-2, [260, 310, 330, 330, 385, 410, 430]),
        (-3, [300, 360, 385, 385, 445, 475, 510]),
    ];

    /// <summary>The thinnest conductor of the table, m².</summary>
    public static double ThinnestArea { get; } = WireGauge.AreaOf(18);

    /// <summary>
    /// For an area in m² and what the insulation stands in °C; a conductor between two gauges counts as the thinner one, and so does an
    /// insulation between two columns. Null below 18 AWG or below 60 °C. Of another metal the current that heats as much is smaller by
    /// √(resistivity ratio).
    /// </summary>
    public static double? Of(double area, double insulation, double resistivity = WireGauge.Copper, bool engineSpace = false)
    {
        double[]? row = null;
        foreach (var (gauge, amperes) in Table)
        {
            // A thousandth is what rounding in a data sheet costs.
            if (WireGauge.AreaOf(gauge) <= area * 1.001)
                row = amperes;
        }
        var column = Insulations.Count - 1;
        while (column >= 0 && Insulations[column] > insulation)
            column--;
        return row is null || column < 0 ? null
            : row[column] * (engineSpace ? EngineSpace[column] : 1) * Math.Sqrt(WireGauge.Copper / resistivity);
    }
}
