using System.Numerics;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.IntegralTransforms;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>
/// Clips noise in the time domain and looks at its spectrum by MathNet's transform, which knows nothing of the series that the table comes
/// from.
/// </summary>
public class ClippedProgrammeTests
{
    private const int Count = 1 << 19;
    private const double SampleRate = 192_000;
    private const int Bands = 31;

    private static readonly Lazy<(double[] Gains, double Total)> Clipped = new(Simulate);

    [Fact]
    public void Each_band_gains_what_clipped_noise_gains()
    {
        for (var band = 0; band < Bands; band++)
        {
            var expected = Clipped.Value.Gains[band]; // simulation: MathNet FFT of hard-clipped Gaussian noise
            Assert.Equal(expected, ClippedProgramme.BandDb[band] - Decibel.OfPower(ProgrammeNoise.Share(band)), band < 5 ? 0.3 : 0.15);
        }
    }

    [Fact]
    public void What_remains_of_the_power_is_1_283() => // 4·[erf(1/2) − √2·φ(1/√2) + erfc(1/2)/2] by hand: 4 × (0.5205 − 0.4394 + 0.2398)
        Assert.InRange(Clipped.Value.Total, 1.273, 1.293);

    [Fact]
    public void The_table_adds_up_to_what_remains_below_20_kHz() => // 1.2834 less 0.0020 beyond 20 kHz
        Assert.Equal(1.281, ClippedProgramme.Sum(_ => 1), 2e-3);

    [Fact]
    public void Treble_above_5_kHz_doubles() => // the same simulation, bands from 6.3 kHz up
        Assert.InRange(Share(ClippedProgramme.Sum) / Share(ProgrammeNoise.Mean), 1.9, 2.2);

    private static double Share(Func<Func<double, double>, double> over) => over(hz => hz > 5_600 ? 1 : 0);

    private static (double[] Gains, double Total) Simulate()
    {
        const int Runs = 4;
        var (clean, clipped) = (new double[Bands], new double[Bands]);
        double total = 0;
        for (var run = 0; run < Runs; run++)
        {
            var spectrum = Noise(new Random(20_000 + run));
            Add(clean, spectrum, 1);
            var time = (Complex[])spectrum.Clone();
            Fourier.Inverse(time, FourierOptions.Matlab);
            var sigma = Math.Sqrt(time.Average(c => c.Real * c.Real));
            var rails = sigma / Math.Sqrt(2); // σ = 2·V, rails at √2·V
            for (var i = 0; i < Count; i++)
                time[i] = Math.Clamp(time[i].Real, -rails, rails);
            // Against V², a quarter of σ².
            total += time.Average(c => c.Real * c.Real) * 4 / (sigma * sigma) / Runs;
            Fourier.Forward(time, FourierOptions.Matlab);
            Add(clipped, time, 4);
        }
        return ([.. clipped.Select((p, band) => Decibel.OfPower(p / clean[band]))], total);
    }

    // Gaussian noise of the programme's spectrum: power even over log frequency inside a band, so its density falls as 1/f.
    private static Complex[] Noise(Random random)
    {
        var spectrum = new Complex[Count];
        for (var i = 1; i < Count / 2; i++)
        {
            var hz = i * SampleRate / Count;
            if (Band(hz) is not { } band)
                continue;
            var amplitude = Math.Sqrt(ProgrammeNoise.Share(band) / hz);
            spectrum[i] = new Complex(Normal.Sample(random, 0, amplitude), Normal.Sample(random, 0, amplitude));
            spectrum[Count - i] = Complex.Conjugate(spectrum[i]);
        }
        return spectrum;
    }

    private static void Add(double[] powers, Complex[] spectrum, double weight)
    {
        for (var i = 1; i < Count / 2; i++)
        {
            if (Band(i * SampleRate / Count) is { } band)
                powers[band] += weight * spectrum[i].Real * spectrum[i].Real + weight * spectrum[i].Imaginary * spectrum[i].Imaginary;
        }
    }

    private static int? Band(double hz)
    {
        var band = (int)Math.Round(17 + (10 * Math.Log10(hz / 1000)));
        return band is >= 0 and < Bands ? band : null;
    }
}
