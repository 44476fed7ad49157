namespace FitCheck.Physics.Acoustics;

/// <summary>A driver in a closed box without losses (Small, JAES 1972: Closed-Box Loudspeaker Systems).</summary>
internal static class ClosedBox
{
    /// <summary>Factor on fs and on each Q: √(1 + Vas/Vb). Volumes in m³, above zero.</summary>
    public static double Stiffening(double equivalentVolume, double boxVolume)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(equivalentVolume);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(boxVolume);
        return Math.Sqrt(1 + (equivalentVolume / boxVolume));
    }

    /// <summary>−3 dB frequency over fc, from Qtc (&gt; 0): √((k + √(k² + 4))/2), k = 1/Qtc² − 2.</summary>
    public static double HalfPowerRatio(double totalQ)
    {
        var k = (1 / (totalQ * totalQ)) - 2;
        return Math.Sqrt((k + Math.Sqrt((k * k) + 4)) / 2);
    }

    /// <summary>Vas in m³ from a test box of known volume in m³: Vb·(fc·Qec/(fs·Qes) − 1).</summary>
    public static double EquivalentVolume(double boxVolume, double boxHz, double boxQes, double freeHz, double freeQes) =>
        boxVolume * ((boxHz * boxQes / (freeHz * freeQes)) - 1);
}
