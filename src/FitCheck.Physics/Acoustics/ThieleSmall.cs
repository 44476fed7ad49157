namespace FitCheck.Physics.Acoustics;

/// <summary>Relations between the small-signal parameters of a driver (Thiele 1961; Small, JAES 1972). SI units throughout.</summary>
internal static class ThieleSmall
{
    /// <summary>Resonance in Hz from moving mass in kg and compliance in m/N: 1/(2π·√(Mms·Cms)).</summary>
    public static double Resonance(double movingMass, double compliance) => 1 / (2 * Math.PI * Math.Sqrt(movingMass * compliance));

    /// <summary>Compliance in m/N from resonance in Hz and moving mass in kg: 1/((2π·fs)²·Mms).</summary>
    public static double Compliance(double resonanceHz, double movingMass)
    {
        var omega = 2 * Math.PI * resonanceHz;
        return 1 / (omega * omega * movingMass);
    }

    /// <summary>Equivalent volume in m³ from piston area in m² and compliance in m/N: ρ·c²·Sd²·Cms.</summary>
    public static double EquivalentVolume(double pistonArea, double compliance, double density = Air.Density,
        double soundSpeed = Air.SoundSpeed) =>
        density * soundSpeed * soundSpeed * pistonArea * pistonArea * compliance;

    /// <summary>Total Q: 1/(1/Qes + 1/Qms).</summary>
    public static double TotalQ(double electricalQ, double mechanicalQ) => 1 / ((1 / electricalQ) + (1 / mechanicalQ));

    /// <summary>Electrical Q: 2π·fs·Mms·Re/Bl². Hz, kg, ohm, T·m.</summary>
    public static double ElectricalQ(double resonanceHz, double movingMass, double resistance, double forceFactor) =>
        2 * Math.PI * resonanceHz * movingMass * resistance / (forceFactor * forceFactor);

    /// <summary>Mechanical Q: 2π·fs·Mms/Rms. Hz, kg, N·s/m.</summary>
    public static double MechanicalQ(double resonanceHz, double movingMass, double mechanicalResistance) =>
        2 * Math.PI * resonanceHz * movingMass / mechanicalResistance;

    /// <summary>Force factor in T·m from the electrical Q: √(2π·fs·Mms·Re/Qes).</summary>
    public static double ForceFactor(double resonanceHz, double movingMass, double resistance, double electricalQ) =>
        Math.Sqrt(2 * Math.PI * resonanceHz * movingMass * resistance / electricalQ);
}
