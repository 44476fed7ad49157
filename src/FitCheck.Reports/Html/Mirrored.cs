using FitCheck.Drawings;

namespace FitCheck.Reports.Html;

/// <summary>A place as it stands on the vehicle's other side: what is at ten o'clock here is at two o'clock there.</summary>
internal static class Mirrored
{
    private const double Hours = 12;

    public static PositionDrawing Of(PositionDrawing drawing) => drawing with
    {
        AimHour = Hour(drawing.AimHour),
        Obstructions = [.. drawing.Obstructions.Select(o => o with
        {
            Hours = o.Hours is { } hours ? (Turned(Hours - hours.To), Turned(Hours - hours.From)) : null,
        })],
    };

    private static double? Hour(double? hour) => hour is { } h && double.IsFinite(h) ? Turned(Hours - h) : hour;

    // As catalogs write it: from 0 up to, and not with, 12.
    private static double Turned(double hour) => hour - (Math.Floor(hour / Hours) * Hours);
}
