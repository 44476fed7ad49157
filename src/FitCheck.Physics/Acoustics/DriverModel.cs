using System.Numerics;
using FitCheck.Physics.Electrical.Networks;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// Electrical equivalent of a moving-coil driver at small signals:
/// Z = Re + jωLe + (Res ∥ jωLces ∥ 1/jωCmes), with Res = Re·Qms/Qes, Cmes = Qes/(2π·fs·Re), Lces = Re/(2π·fs·Qes)
/// (Thiele, Proc. IRE Australia 1961, reprinted JAES 1971; Small, JAES 1972).
/// </summary>
/// <remarks>
/// Without fs, Qms and Qes the motional part is left out. It is passive, so the real part of Z can then only be too low,
/// and |Z| of the driver never falls below Re. A network in front may still resonate with the part that is missing.
/// </remarks>
/// <param name="Re">DC resistance of the voice coil, ohm, &gt; 0.</param>
/// <param name="Le">Voice-coil inductance, henry; null counts as none.</param>
/// <param name="Fs">Resonance frequency, Hz; in free air, or in its box after <see cref="InClosedBox"/>.</param>
/// <param name="Qms">Mechanical Q at fs.</param>
/// <param name="Qes">Electrical Q at fs.</param>
internal sealed record DriverModel(double Re, double? Le = null, double? Fs = null, double? Qms = null, double? Qes = null)
{
    /// <summary>A tweeter on the same frame, wired across the woofer's terminals; null for a plain driver.</summary>
    public CoaxialTweeter? Tweeter { get; init; }

    /// <summary>True when fs, Qms and Qes are all known.</summary>
    public bool HasMotionalPart => Fs is > 0 && Qms is > 0 && Qes is > 0;

    /// <summary>Res = Re·Qms/Qes, ohm: the height of the impedance peak above Re.</summary>
    public double? Res => HasMotionalPart ? Re * Qms!.Value / Qes!.Value : null;

    /// <summary>Cmes = Qes/(2π·fs·Re), farad: the moving mass.</summary>
    public double? Cmes => HasMotionalPart ? Qes!.Value / (2 * Math.PI * Fs!.Value * Re) : null;

    /// <summary>Lces = Re/(2π·fs·Qes), henry: the compliance.</summary>
    public double? Lces => HasMotionalPart ? Re / (2 * Math.PI * Fs!.Value * Qes!.Value) : null;

    /// <summary>Impedance in ohm at the terminals, at a frequency in Hz (&gt; 0), with the coaxial tweeter when there is one.</summary>
    public Complex Impedance(double hz)
    {
        var voiceCoil = VoiceCoilImpedance(hz);
        return Tweeter is null ? voiceCoil : 1 / ((1 / voiceCoil) + Tweeter.Branch.AdmittanceAt(hz));
    }

    /// <summary>Impedance in ohm of the voice coil alone, at a frequency in Hz (&gt; 0).</summary>
    public Complex VoiceCoilImpedance(double hz)
    {
        var omega = 2 * Math.PI * hz;
        var z = new Complex(Re, omega * (Le ?? 0));
        if (!HasMotionalPart)
            return z;
        // Cmes and Lces resonate at fs, so ω·Cmes − 1/(ω·Lces) = (Qes/Re)·(f/fs − fs/f).
        var detuning = (hz / Fs!.Value) - (Fs.Value / hz);
        return z + (1 / new Complex(Qes!.Value / (Re * Qms!.Value), Qes.Value / Re * detuning));
    }

    /// <summary>
    /// The same driver in a closed box: fs and both Q times √(1 + Vas/Vb) (Small, JAES 1972). Volumes in m³, above zero.
    /// Losses of the box and a change of moving mass are left out.
    /// </summary>
    public DriverModel InClosedBox(double equivalentVolume, double boxVolume)
    {
        var stiffening = Acoustics.ClosedBox.Stiffening(equivalentVolume, boxVolume);
        return this with { Fs = Fs * stiffening, Qms = Qms * stiffening, Qes = Qes * stiffening };
    }

    /// <summary>Connects the driver between two nodes.</summary>
    public void Stamp(Network network, int from, int to)
    {
        ArgumentNullException.ThrowIfNull(network);
        if (!(Re > 0 && double.IsFinite(Re)))
            throw new ArgumentOutOfRangeException(nameof(network), Re,
                "A driver's DC resistance Re is a finite number of ohms above zero.");
        network.AddAdmittance(from, to, hz => 1 / Impedance(hz));
    }
}
