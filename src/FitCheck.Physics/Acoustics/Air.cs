namespace FitCheck.Physics.Acoustics;

/// <summary>Dry air at 20 °C and 101.325 kPa as an ideal gas: ρ = p/(287.05·T), c = √(1.4·287.05·T).</summary>
internal static class Air
{
    /// <summary>Density, kg/m³.</summary>
    public const double Density = 1.204;

    /// <summary>Speed of sound, m/s.</summary>
    public const double SoundSpeed = 343.2;
}
