namespace FitCheck.Physics.Acoustics;

/// <summary>How long a level may be heard. Information for a person, not a limit of a part.</summary>
internal static class NoiseExposure
{
    /// <summary>
    /// Allowed time in seconds a day at a level in dBA: 8 h/2^((L − 85)/3), the recommended exposure limit of NIOSH (publication 98-126).
    /// </summary>
    public static double AllowedTime(double level) => AllowedTime(level, criterionLevel: 85, criterionTime: 8 * 3600, exchangeRate: 3);

    /// <summary>
    /// Allowed time in the unit of the criterion's time: T0/2^((L − L0)/q), with L0 in dBA and the exchange rate q in dB per halving.
    /// </summary>
    public static double AllowedTime(double level, double criterionLevel, double criterionTime, double exchangeRate) =>
        criterionTime / Math.Pow(2, (level - criterionLevel) / exchangeRate);

    /// <summary>Dose, 1 for all that is allowed: time at a level over the allowed time, both in the same unit.</summary>
    public static double Dose(double time, double allowedTime) => time / allowedTime;
}
