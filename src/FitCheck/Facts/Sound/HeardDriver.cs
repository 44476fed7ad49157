using System.Numerics;
using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>A driver as the listener hears it: its sensitivity, the network before it, its distance and its direction.</summary>
internal sealed record HeardDriver(ChannelContext Channel, ChannelSweep Sweep, int Index, Driver Driver, double SensitivityDb, Aim Aim)
{
    /// <summary>Guesses that it rests on.</summary>
    public required IReadOnlyList<Unsure> Unsure { get; init; }

    /// <summary>The driver, or what is missing to tell.</summary>
    public static (HeardDriver? Heard, IReadOnlyList<Unsure> Missing) Of(ChannelContext channel, FittedPosition placed)
    {
        var driver = placed.Driver!.Part;
        if (channel.Sweep is not { } sweep || channel.Of(placed.Position.Id) is not (_, var index))
            return (null, channel.Unsure);
        if (At2V83(driver) is not { } sensitivity)
            return (null, [Sensitivities(driver, estimated: false)]);
        if (Aim.Of(placed.Position, placed.Adapter?.Part.Tilt?.Si ?? 0) is not { } aim)
            return (null, [AimFacts.Location(placed.Position, estimated: false)]);
        IReadOnlyList<Unsure> guessed = driver.Sensitivity!.IsEstimated ? [Sensitivities(driver, estimated: true)] : [];
        return (new HeardDriver(channel, sweep, index, driver, sensitivity,
            aim)
        { Unsure = [.. channel.Unsure, .. channel.WiresUnsure, .. guessed, .. AimFacts.Unsures(placed.Position)] }, []);
    }

    /// <summary>
    /// Mean level in dB at the listener over a few frequencies, with 2.83 V at the output: sensitivity, network, electronic filters,
    /// distance in a free field, and a rigid piston's loss off its axis.
    /// </summary>
    /// <param name="band">Frequencies in Hz.</param>
    /// <param name="network">Another network of the same channel, for another setting of its crossover.</param>
    public double BandDb(IReadOnlyList<double> band, ChannelNetwork? network = null)
    {
        double sum = 0;
        foreach (var hz in band)
        {
            var state = network?.At(hz) ?? Sweep.Nearest(hz);
            var gain = Complex.Abs(state.Drivers[Index].Transfer) * Channel.ActiveGain(hz);
            sum += Decibel.OfAmplitude(gain) + OffAxisDb(hz);
        }
        return SensitivityDb + (sum / band.Count) + SoundLevel.DistanceChange(1, Aim.Distance);
    }

    /// <summary>Level in dB(A) at the listener with programme noise (IEC 60268-1) of 2.83 V at the output, on the axis.</summary>
    public double WeightedDb()
    {
        var power = ProgrammeNoise.Mean(hz =>
        {
            var gain = Complex.Abs(Sweep.Nearest(hz).Drivers[Index].Transfer) * Channel.ActiveGain(hz);
            return gain * gain * Decibel.ToPower(AWeighting.Db(hz));
        });
        return SensitivityDb + Decibel.OfPower(power) + SoundLevel.DistanceChange(1, Aim.Distance);
    }

    /// <summary>The output's continuous voltage against 2.83 V, dB, and what is guessed of it; null when nothing tells it.</summary>
    public (Uncertain Db, IReadOnlyList<Unsure> Unsure)? FullPowerDb()
    {
        if (PowerFacts.Volts(Channel, Sweep) is not ({ } volts, var unsure))
            return null;
        double low = Against(volts.Low), high = Against(volts.High);
        return (new Uncertain(Against(volts.Value), low, high, (high - low) / 2), unsure);

        static double Against(double rms) => Decibel.OfAmplitude(rms / Math.Sqrt(Sensitivity.ReferenceLoad));
    }

    /// <summary>The unsure thing when an output's voltage is not known.</summary>
    public Unsure NoPower => PowerFacts.OutputPower(Channel, estimated: false);

    private double OffAxisDb(double hz) =>
        Aim.Angle is { } angle && AimFacts.Radius(Driver) is { } radius ? PistonDirectivity.Db(hz, radius, Math.Min(angle, Math.PI / 2))
            : 0;

    // IEC 60268-5: 1 W is that into the rated impedance.
    private static double? At2V83(Driver driver) =>
        driver.Sensitivity is not { } stated ? null
        : driver.SensitivityAtVolts ? stated.Si
        : driver.Impedance is { Si: > 0 } rated ? Sensitivity.To2V83(stated.Si, rated.Si) : null;

    private static Unsure Sensitivities(Driver driver, bool estimated) =>
        new($"sensitivity of {driver.Name}", "Ask the maker for the level at 1 m, and whether it is meant at 1 W or at 2.83 V.", estimated)
        { Key = DatumKey.In(driver, "sensitivity") };
}
