using FitCheck.Catalog;

namespace FitCheck.Charts.BestMount;

/// <summary>Screw holes by value: two with the same figures are the same.</summary>
internal static class HolePattern
{
    public static string Of(HoleCircle? holes) => holes is null ? ""
        : string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{holes.Circle.Si:R} {holes.Circle.IsEstimated} {holes.Slot?.Si:R} {string.Join(' ', holes.Angles)}");
}
