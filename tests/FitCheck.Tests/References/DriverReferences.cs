using System.Numerics;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using Xunit;

namespace FitCheck.Tests.References;

public class DriverReferences
{
    // Driver A: M_MD 33.4 g, Cms 1.18 mm/N, Rms 1.85, Bl 11.4, Re 7, radius 12 cm; air of 1.2 kg/m3 and 343 m/s.
    private const double ResistanceA = 7, ForceFactorA = 11.4, ComplianceA = 1.18e-3, DampingA = 1.85, RadiusA = 0.12;
    private const double AreaA = Math.PI * RadiusA * RadiusA;

    // Moving mass with the air on both sides of the piston: M_MD + 2*Sd^2*8*rho/(3*pi^2*a). ts.A.Mms: 44.4592 g
    private const double MassA = 0.0334 + (2 * AreaA * AreaA * 8 * 1.2 / (3 * Math.PI * Math.PI * RadiusA));

    // Driver B, invented: Re 3.4, Le 0.25 mH, Bl 4.5, Mms 14 g, Cms 0.43 mm/N, Rms 1.3, Sd 133 cm2.
    private const double MassB = 0.014, ComplianceB = 0.43e-3;

    private static readonly DriverModel A = Model(ResistanceA, null, ForceFactorA, MassA, ComplianceA, DampingA);
    private static readonly DriverModel B = Model(3.4, 0.25e-3, 4.5, MassB, ComplianceB, 1.3);

    [Theory]
    [InlineData("ts.A.Mms", "derived from public parameter file of a finite-element example", "Mms", 44.4592)]
    [InlineData("ts.A.Qes", "derived from public parameter file of a finite-element example", "Qes", 0.330619)]
    [InlineData("ts.A.Qts", "derived from public parameter file of a finite-element example", "Qts", 0.30066)]
    [InlineData("ts.A.Zmax", "derived from public parameter file of a finite-element example", "Zmax", 77.2486)]
    [InlineData("ts.A.Res", "derived from public parameter file of a finite-element example", "Res", 70.2486)]
    [InlineData("ts.A.Lces_mH", "derived from public parameter file of a finite-element example", "Lces_mH", 153.353)]
    [InlineData("ts.A.Cmes_uF", "derived from public parameter file of a finite-element example", "Cmes_uF", 342.099)]
    public void Parameters_of_driver_A(string id, string source, string quantity, double expected) =>
        Reference.Near(id, source, expected, quantity switch
        {
            "Mms" => MassA * 1e3,
            "Qes" => A.Qes!.Value,
            "Qts" => ThieleSmall.TotalQ(A.Qes!.Value, A.Qms!.Value),
            "Zmax" => Complex.Abs(A.Impedance(A.Fs!.Value)),
            "Res" => A.Res!.Value,
            "Lces_mH" => A.Lces!.Value * 1e3,
            "Cmes_uF" => A.Cmes!.Value * 1e6,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "not known"),
        }, 1e-5);

    [Theory]
    [InlineData("ts.A.SPL_1W", "derived from public parameter file of a finite-element example", 92.4376, false)]
    [InlineData("ts.A.SPL_2V83", "derived from public parameter file of a finite-element example", 93.0175, true)]
    public void Sensitivity_of_driver_A_within_the_spread_of_air_constants(string id, string source, double expected, bool at2V83)
    {
        var volume = ThieleSmall.EquivalentVolume(AreaA, ComplianceA, 1.2, 343);
        var level = Sensitivity.OfEfficiency(Sensitivity.ReferenceEfficiency(A.Fs!.Value, volume, A.Qes!.Value));
        Reference.Close(id, source, expected, at2V83 ? Sensitivity.To2V83(level, ResistanceA) : level, 0.2); // k.spl.*: allow 0.2 dB
    }

    [Theory]
    [InlineData("ts.B.Qes", "derived from Wikipedia, Thiele/Small parameters", "Qes", 0.95804)]
    [InlineData("ts.B.Vas_L", "derived from Wikipedia, Thiele/Small parameters", "Vas_L", 10.7868)]
    [InlineData("ts.B.Res", "derived from Wikipedia, Thiele/Small parameters", "Res", 15.5769)]
    [InlineData("ts.B.Lces_mH", "derived from Wikipedia, Thiele/Small parameters", "Lces_mH", 8.7075)]
    [InlineData("ts.B.Cmes_uF", "derived from Wikipedia, Thiele/Small parameters", "Cmes_uF", 691.358)]
    public void Parameters_of_driver_B(string id, string source, string quantity, double expected) =>
        Reference.Near(id, source, expected, quantity switch
        {
            "Qes" => B.Qes!.Value,
            "Vas_L" => ThieleSmall.EquivalentVolume(133e-4, ComplianceB) * 1e3,
            "Res" => B.Res!.Value,
            "Lces_mH" => B.Lces!.Value * 1e3,
            "Cmes_uF" => B.Cmes!.Value * 1e6,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "not known"),
        }, 1e-5);

    [Theory]
    [InlineData("ts.B.Z.20.00", "derived from Wikipedia, Thiele/Small parameters", 20.0, 3.70463, 19.446)]
    [InlineData("ts.B.Z.40.00", "derived from Wikipedia, Thiele/Small parameters", 40.0, 5.38731, 39.427)]
    [InlineData("ts.B.Z.50.00", "derived from Wikipedia, Thiele/Small parameters", 50.0, 8.21154, 44.503)]
    [InlineData("ts.B.Z.64.87", "derived from Wikipedia, Thiele/Small parameters", 64.8667, 18.9772, 0.30763)]
    [InlineData("ts.B.Z.80.00", "derived from Wikipedia, Thiele/Small parameters", 80.0, 9.40608, -42.727)]
    [InlineData("ts.B.Z.100.00", "derived from Wikipedia, Thiele/Small parameters", 100.0, 5.63173, -39.396)]
    [InlineData("ts.B.Z.200.00", "derived from Wikipedia, Thiele/Small parameters", 200.0, 3.6355, -15.368)]
    [InlineData("ts.B.Z.1000.00", "derived from Wikipedia, Thiele/Small parameters", 1000.0, 3.6576, 21.486)]
    [InlineData("ts.B.Z.3000.00", "derived from Wikipedia, Thiele/Small parameters", 3000.0, 5.74905, 53.739)]
    [InlineData("ts.B.Z.10000.00", "derived from Wikipedia, Thiele/Small parameters", 10000.0, 16.0492, 77.769)]
    public void Impedance_of_driver_B(string id, string source, double hz, double ohm, double degrees)
    {
        var z = B.Impedance(hz);
        Reference.Near(id, source, ohm, Complex.Abs(z), 1e-5);
        Reference.Close(id, source, degrees, z.Phase * 180 / Math.PI, 0.01);
    }

    [Theory]
    [InlineData("ts.B.Zmin", "derived from the formula", 3.4216, 425.0)]
    public void Lowest_impedance_of_driver_B(string id, string source, double ohm, double hz)
    {
        var sweep = new ChannelLoad([new ChannelBranch(B)]).Sweep();
        Reference.Near(id, source, ohm, sweep.MinOhm, 1e-5);
        Reference.Near(id, source, hz, sweep.MinHz, 0.01);
    }

    [Theory]
    [InlineData("ts.B.x.64.87", "derived from Wikipedia, Thiele/Small parameters", 64.8667, 1.7912)]
    [InlineData("ts.B.x.200.00", "derived from Wikipedia, Thiele/Small parameters", 200.0, 0.24957)]
    [InlineData("ts.B.x.dc", "derived from the formula", 0.01, 2.2777)]
    public void Excursion_of_driver_B(string id, string source, double hz, double millimetres) =>
        Reference.Near(id, source, millimetres, Excursion.Peak(B, MassB, 2.83, hz)!.Value * 1e3, 1e-3);

    [Theory]
    [InlineData("cb.B.10", "derived from R. D. Pierce, usenet 2003", 10.0, 93.522, 1.1338)]
    [InlineData("cb.B.20", "derived from R. D. Pierce, usenet 2003", 20.0, 80.48, 0.97568)]
    public void Driver_B_in_a_closed_box(string id, string source, double litres, double hz, double q)
    {
        var box = B.InClosedBox(ThieleSmall.EquivalentVolume(133e-4, ComplianceB), litres * 1e-3);
        Reference.Near(id, source, hz, box.Fs!.Value, 1e-4);
        Reference.Near(id, source, q, ThieleSmall.TotalQ(box.Qes!.Value, box.Qms!.Value), 1e-4);
    }

    [Theory]
    [InlineData("cb.f3.0.5000", "derived from the formula, from memory", 0.5, 1.55377)]
    [InlineData("cb.f3.1.0000", "derived from the formula, from memory", 1.0, 0.786151)]
    public void Half_power_frequency_of_a_closed_box(string id, string source, double q, double ratio) =>
        Reference.Near(id, source, ratio, ClosedBox.HalfPowerRatio(q), 1e-5);

    [Theory]
    [InlineData("vas.box", "derived from R. D. Pierce, usenet 2003", 60.0)]
    public void Equivalent_volume_from_a_test_box(string id, string source, double litres) =>
        Reference.Near(id, source, litres, ClosedBox.EquivalentVolume(0.020, 60, 0.80, 30, 0.40) * 1e3, 1e-9);

    [Theory]
    [InlineData("k.eta.L", "derived from Wikipedia, Thiele/Small parameters", 9.5226e-10, 9.7831e-10)]
    public void The_efficiency_constant_lies_among_those_of_real_air(string id, string source, double warmest, double coldest) =>
        Assert.True(Sensitivity.ReferenceEfficiency(1, 1e-3, 1) > warmest && Sensitivity.ReferenceEfficiency(1, 1e-3, 1) < coldest,
            $"{id} ({source})");

    [Theory]
    [InlineData("k.spl.20C", "derived from the formula, from memory", 112.159)]
    [InlineData("k.spl.25C dry", "derived from the formula, from memory", 112.123)]
    [InlineData("k.spl.COMSOL", "derived from the formula, from memory", 112.142)]
    public void Level_of_full_efficiency(string id, string source, double db) =>
        Reference.Close(id, source, db, Sensitivity.PerfectDb, 0.2);

    [Theory]
    [InlineData("sens.2", "derived from IEC 60268-5:2003", 2.0, 6.0206)]
    [InlineData("sens.3", "derived from IEC 60268-5:2003", 3.0, 4.2597)]
    [InlineData("sens.6", "derived from IEC 60268-5:2003", 6.0, 1.2494)]
    [InlineData("sens.8", "derived from IEC 60268-5:2003", 8.0, 0.0)]
    [InlineData("sens.16", "derived from IEC 60268-5:2003", 16.0, -3.0103)]
    public void Voltage_to_power_sensitivity(string id, string source, double ohm, double db)
    {
        Reference.Close(id, source, db, 90 - Sensitivity.ToOneWatt(90, ohm), 5e-5);
        Reference.Close(id, source, db, Sensitivity.To2V83(90, ohm) - 90, 5e-5);
    }

    [Theory]
    [InlineData("sens.1w", "derived from IEC 60268-5:2003", 2.0, 1.41421)]
    [InlineData("sens.1w", "derived from IEC 60268-5:2003", 4.0, 2.0)]
    [InlineData("sens.1w", "derived from IEC 60268-5:2003", 8.0, 2.82843)]
    public void Voltage_of_one_watt(string id, string source, double ohm, double volts) =>
        Reference.Near(id, source, volts, Sensitivity.OneWattVolts(ohm), 1e-5);

    private static DriverModel Model(double re, double? le, double forceFactor, double mass, double compliance, double damping)
    {
        var fs = ThieleSmall.Resonance(mass, compliance);
        return new DriverModel(re, le, fs, ThieleSmall.MechanicalQ(fs, mass, damping), ThieleSmall.ElectricalQ(fs, mass, re, forceFactor));
    }
}
