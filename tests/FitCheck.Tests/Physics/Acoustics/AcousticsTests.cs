using CsCheck;
using FitCheck.Physics.Acoustics;
using Xunit;

namespace FitCheck.Tests.Physics.Acoustics;

public class AcousticsTests
{
    private const double Mass = 0.014;
    private static readonly DriverModel Woofer = new(3.4, 0.25e-3, 65, 4.4, 0.96);

    [Theory]
    [InlineData(0, 0)] // Abramowitz and Stegun, table 9.1, from memory
    [InlineData(1, 0.4400505857)] // Abramowitz and Stegun, table 9.1, from memory
    [InlineData(2, 0.5767248078)] // Abramowitz and Stegun, table 9.1, from memory
    [InlineData(5, -0.3275791376)] // Abramowitz and Stegun, table 9.1, from memory
    [InlineData(3.8317059702, 0)] // first zero, Abramowitz and Stegun, table 9.5, from memory
    [InlineData(-1, -0.4400505857)] // odd
    public void Bessel_function(double x, double j1) => Assert.Equal(j1, PistonDirectivity.BesselJ1(x), 1e-9);

    [Fact]
    public void Bessel_function_agrees_with_MathNet() =>
        Gen.Double[-60, 60].Sample(x => Math.Abs(PistonDirectivity.BesselJ1(x) - MathNet.Numerics.SpecialFunctions.BesselJ(1, x)) < 1e-9);

    [Fact]
    public void A_piston_is_down_three_decibels_at_1_616() => // 2·J1(x)/x = 0.7071, Beranek, Acoustics, from memory
        Assert.Equal(Math.Sqrt(0.5), PistonDirectivity.Ratio(1.616), 5e-4);

    [Fact]
    public void On_the_axis_nothing_is_lost() => Assert.Equal(0, PistonDirectivity.Db(10_000, 0.0127, 0));

    [Fact]
    // k = 10/m, a = 0.2 m, sin 30° = 0.5: x = 1, and 2·J1(1) = 0.8801011715 by Abramowitz and Stegun
    public void Off_the_axis_a_piston_loses_by_its_size_and_the_wavelength() =>
        Assert.Equal(20 * Math.Log10(0.8801011715), PistonDirectivity.Db(3400 / (2 * Math.PI), 0.2, Math.PI / 6, soundSpeed: 340), 1e-7);

    [Theory]
    [InlineData(9e-5, 1.0125e-9)] // 2·J1(x)/x = 1 − x²/8 + …
    [InlineData(0, 0)]
    public void Close_to_the_axis_the_series_takes_over(double x, double lost) => Assert.Equal(lost, 1 - PistonDirectivity.Ratio(x), 1e-14);

    [Fact]
    public void A_piston_is_never_louder_off_its_axis() =>
        Gen.Select(Gen.Double[20, 20_000], Gen.Double[0.005, 0.15], Gen.Double[0, Math.PI / 2])
        .Sample((hz, radius, angle) => PistonDirectivity.Db(hz, radius, angle) <= 1e-9);

    [Fact]
    public void Excursion_needs_parameters() => Assert.Null(Excursion.Peak(new DriverModel(4), Mass, 2.83, 50));

    [Fact]
    public void Excursion_grows_with_voltage() =>
        Assert.Equal(2 * Excursion.Peak(Woofer, Mass, 5, 50)!.Value, Excursion.Peak(Woofer, Mass, 10, 50)!.Value, 1e-12);

    [Fact]
    public void Far_above_resonance_excursion_falls_by_twelve_decibels_an_octave()
    {
        var driver = Woofer with { Le = null }; // the mass controls: x ~ 1/ω²
        Assert.Equal(4, Excursion.Peak(driver, Mass, 10, 2000)!.Value / Excursion.Peak(driver, Mass, 10, 4000)!.Value, 0.02);
    }

    [Fact]
    public void Resonance_and_compliance_are_inverse() => Gen.Select(Gen.Double[0.001, 0.1], Gen.Double[1e-4, 2e-3])
        .Sample((mass, compliance) => Math.Abs(ThieleSmall.Compliance(ThieleSmall.Resonance(mass, compliance), mass) - compliance) < 1e-12);

    [Fact]
    // 2π·50·0.02/1.5 = 4π/3
    public void A_mechanical_Q_is_that_of_mass_and_loss() => Assert.Equal(4.18879, ThieleSmall.MechanicalQ(50, 0.02, 1.5), 1e-5);

    [Theory]
    [InlineData(2, 4, -6.0206)] // 20·lg 2
    [InlineData(0.5, 5, -20)]
    [InlineData(4, 2, 6.0206)]
    public void A_level_falls_with_the_distance(double from, double to, double db) =>
        Assert.Equal(db, SoundLevel.DistanceChange(from, to), 1e-4);

    [Fact]
    public void Volumes_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ClosedBox.Stiffening(0, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClosedBox.Stiffening(0.01, 0));
    }

    [Fact]
    public void A_force_factor_gives_back_its_Q() =>
        Assert.Equal(0.96, ThieleSmall.ElectricalQ(65, Mass, 3.4, ThieleSmall.ForceFactor(65, Mass, 3.4, 0.96)), 1e-12);

    [Fact]
    public void Butterworth_box_has_its_half_power_at_its_resonance() => Assert.Equal(1, ClosedBox.HalfPowerRatio(Math.Sqrt(0.5)), 1e-12);

    [Fact]
    public void Ten_times_the_power_is_ten_decibels() => Assert.Equal(100, Sensitivity.AtPower(90, 10), 1e-12);

    [Fact]
    public void Sensitivity_conversions_are_inverse() =>
        Gen.Double[1, 16].Sample(ohm => Math.Abs(Sensitivity.To2V83(Sensitivity.ToOneWatt(90, ohm), ohm) - 90) < 1e-12);
}
