using System.Globalization;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>How loud the build can get at the front seats, and how long that may be heard. For a caution, not for a rule.</summary>
internal static class LoudnessFacts
{
    private static readonly Dimension Time = new(Time: 1);

    public static readonly FactGroup Declarations = new(Subject.Build);

    public static readonly NumberFact LoudestLevel = Declarations.Number(
        "loudest_level", Dimension.Decibel,
        "Level, A-weighted, of all drivers together at the front seats with programme noise at continuous power, without the cabin's "
        + "own gain.",
        Reads.Whole.Itself);
    public static readonly NumberFact AllowedTime = Declarations.Number(
        "allowed_time", Time, "Time a day for which NIOSH 98-126 allows the loudest level.",
        Reads.Whole.Itself);

    public static void Compute(IReadOnlyList<FactTable> positions, FactSheet sheet)
    {
        var levels = positions.Select(t => t.Of(LevelFacts.LevelAtFullPower)?.Number).OfType<Uncertain>().Select(l => l.Value).ToList();
        if (levels.Count == 0)
            return;
        var total = SoundLevel.Incoherent(levels);
        var seconds = NoiseExposure.AllowedTime(total);
        sheet.Set(LoudestLevel, total);
        sheet.Set(AllowedTime, FactValue.Of(Time, seconds) with { Shown = Shown(seconds) });
    }

    /// <summary>The caution, or null when the level is not known or may be heard all day.</summary>
    public static string? Caution(FactTable build)
    {
        if (build.Of(LoudestLevel)?.Number is not { } level || build.Of(AllowedTime) is not { Number: { } time } allowed
            || time.Value >= TimeSpan.FromHours(24).TotalSeconds)
            return null;
        return string.Create(CultureInfo.InvariantCulture,
            $"At full power about {level.Value:0} dB(A) at the seat: NIOSH allows {allowed.Text} a day.");
    }

    private static string Shown(double seconds) => seconds switch
    {
        < 90 => string.Create(CultureInfo.InvariantCulture, $"{seconds:0} seconds"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0} minutes"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0} hours"),
    };
}
