using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>A voltage on its way from the source to an amplifier, V rms at full volume.</summary>
internal sealed record LineLevel(Uncertain Volts, IReadOnlyList<Unsure> Unsure, IReadOnlyList<Datum> Data)
{
    /// <summary>At the speaker outputs of a source: √(P·R) of the rating that gives most; null when nothing tells it.</summary>
    public static LineLevel? Speaker(SourceUnit source, Practice practice)
    {
        var output = OutputRating.Of(source, practice);
        if (output.Continuous.MaxBy(r => r.Power.Si * r.Load.Si) is { } rating)
        {
            return new LineLevel(Uncertain.Exact(Math.Sqrt(rating.Power.Si * rating.Load.Si)),
                rating.Power.IsEstimated ? [Power(source, true)] : [],
                [new Datum($"power of {source.Name}: {rating.Power} into {rating.Load}", rating.Power.At)]);
        }
        return output.VoltsInto(practice.UsualRatedLoad) is ({ } volts, _, _) ? new LineLevel(volts, [Power(source, true)], []) : null;
    }

    /// <summary>At the outputs of a converter that this level enters.</summary>
    public LineLevel? Through(LineConverter converter)
    {
        if (converter.Ratio is not { } ratio)
            return null;
        var volts = Volts * Uncertain.Exact(ratio);
        if (converter.OutputLimit is { } limit)
            volts = Uncertain.Min(volts, Uncertain.Exact(limit.Si));
        return this with { Volts = volts };
    }

    /// <summary>What a device puts out at line level: a source's own low-level outputs, or a converter behind a source.</summary>
    public static LineLevel? Line(DeviceContext c) => c.Device.Part switch
    {
        SourceUnit { LowLevelVoltage: { } volts } source =>
            new LineLevel(Uncertain.Exact(volts.Si), [], [new Datum($"low-level output of {source.Name}: {volts}", volts.At)]),
        LineConverter converter when c.Feeder?.Part is SourceUnit source => Speaker(source, c.Practice)?.Through(converter),
        _ => null,
    };

    public FactValue AsFact => FactValue.Of(Dimension.Volt, Volts) with { Unsure = Unsure, Data = Data };

    public static Unsure Power(SourceUnit source, bool estimated) => new(
        $"continuous power of {source.Name}",
        "Look for a power stated as continuous, RMS or sine, or measure the voltage at a speaker output at full volume with a test tone.",
        estimated)
    { Key = DatumKey.In(source, "ratings") };
}
