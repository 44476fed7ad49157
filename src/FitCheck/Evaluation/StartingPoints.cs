using System.Globalization;
using FitCheck.Builds;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Evaluation;

/// <summary>Gathers from the facts what the installer sets first. Both sides of the vehicle are told at once when they are alike.</summary>
internal static class StartingPoints
{
    public static IReadOnlyList<StartingPoint> Of(Build build, IReadOnlyList<FactTable> tables)
    {
        var points = new List<StartingPoint>();
        foreach (var table in tables)
        {
            if (table.Subject != Subject.Position)
                continue;
            Crossover(table, points);
            HighPass(table, points);
            Aim(table, points);
            Delay(build, table, points);
        }
        return points;
    }

    private static void Crossover(FactTable table, List<StartingPoint> points)
    {
        if (Word(table, LevelFacts.BestSetting) is { } setting)
            Add(points, table, "Tweeter's jumper on the crossover",
                $"{setting} (tweeter against woofer: {Word(table, LevelFacts.SettingDifferences)})");
    }

    private static void HighPass(FactTable table, List<StartingPoint> points)
    {
        // At the lowest frequency no filter is needed.
        if (Number(table, TravelFacts.LowestSafeHighPass) is not { } corner || corner <= Physics.Numerics.FrequencyGrid.Lowest
            || Number(table, TravelFacts.SafeHighPassSlope) is not { } slope)
            return;
        var set = Number(table, TravelFacts.HighPassSet) is { } own ? $"; the build sets {Text(own, Dimension.Hertz)}" : "";
        Add(points, table, "High-pass", $"{Text(corner, Dimension.Hertz)} or higher at {Text(slope, Dimension.Slope)}{set}");
    }

    private static void Aim(FactTable table, List<StartingPoint> points)
    {
        if (Word(table, AimFacts.AimTowards) is not { } towards)
            return;
        if (Word(table, AimFacts.SpacerThickSide) is { } thick)
            Add(points, table, "Thick side of the spacer",
                $"towards {thick}, so that the driver looks towards {towards}, seen from inside", whileMounting: true);
        else if (table.Of(TweeterFacts.IsTweeter)?.Truth == true)
            Add(points, table, "Tweeter", $"turned towards {towards}, seen from inside", whileMounting: true);
    }

    private static void Delay(Build build, FactTable table, List<StartingPoint> points)
    {
        if (Number(table, AimFacts.SidePathDifference) is not { } difference || Word(table, PlaceFacts.Side) != build.Vehicle.Steering)
            return;
        var milliseconds = (difference / Air.SoundSpeed * 1e3).ToString("0.0", CultureInfo.InvariantCulture);
        Add(points, table, "Delay against the other side", $"{milliseconds} ms, where the source can delay a channel");
    }

    private static void Add(List<StartingPoint> points, FactTable table, string what, string value, bool whileMounting = false)
    {
        var alike = points.FindIndex(p => p.What == what && p.Value == value);
        if (alike >= 0)
            points[alike] = points[alike] with { Where = [.. points[alike].Where, table.Name] };
        else
            points.Add(new StartingPoint([table.Name], what, value) { WhileMounting = whileMounting });
    }

    private static string Text(double si, Dimension dimension) => QuantityText.Format(si, dimension);

    private static string? Word(FactTable table, WordFact fact) => table.Of(fact)?.Word;

    private static double? Number(FactTable table, NumberFact fact) => table.Of(fact)?.Number?.Value;
}
