namespace FitCheck.Physics.Electrical;

/// <summary>
/// What an insulated stranded copper conductor may carry when its maker doesn't say, ampere: 33 CFR 183.425, table 5 (boats, 30 °C ambient, below 50 V).
/// It is law for boats and a careful reference elsewhere.
/// </summary>
public static class Ampacity
{
    private static readonly double[] Insulations = [60, 75, 80, 90, 105, 125, 200];

    private static readonly (int Gauge, double[] Amperes)[] Table =
    [
        (18, [10, 10, 15, 20, 20, 25, 25]), (16, [15, 15, 20, 25, 25, 30, 35]), (14, [20, 20, 25, 30, 35, 40, 45]), (12, [25, 25, 35, 40, 45, 50, 55]),
        (10, [40, 40, 50, 55, 60, 70, 70]), (8, [55, 65, 70, 70, 80, 90, 100]), (6, [80, 95, 100, 100, 120, 125, 135]), (4, [105, 125, 130, 135, 160, 170, 180]),
        (2, [140, 170, 175, 180, 210, 225, 240]), (1, [165, 195, 210, 210, 245, 265, 280]), (0, [195, 230, 245, 245, 285, 305, 325]),
        (-1, [225, 265, 285, 285, 330, 355, 370]), (-3, [300, 360, 385, 385, 445, 475, 510]),
    ];

    /// <summary>
    /// For an area in m² and what the insulation stands in °C; a conductor between two gauges counts as the thinner one, and so does an insulation
    /// between two columns. Null below 18 AWG or below 60 °C. Of another metal the current that heats as much is smaller by √(resistivity ratio).
    /// </summary>
    public static double? Of(double area, double insulation, double resistivity = WireGauge.Copper)
    {
        double[]? row = null;
        foreach (var (gauge, amperes) in Table)
        {
            // A thousandth is what rounding in a data sheet costs.
            if (WireGauge.AreaOf(gauge) <= area * 1.001)
                row = amperes;
        }
        var column = Array.FindLastIndex(Insulations, t => t <= insulation);
        return row is null || column < 0 ? null : row[column] * Math.Sqrt(WireGauge.Copper / resistivity);
    }
}
