using FitCheck.Catalog;
using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// Two bolt patterns, one on each face of a joint, and the turn of the second at which most of the first's screws find a hole. Hours are
/// those of the first pattern's own frame.
/// </summary>
/// <param name="first">The pattern that stays.</param>
/// <param name="second">The one that may be turned.</param>
/// <param name="clearance">How far apart two holes may be and still take one screw, m; slots come on top of it.</param>
/// <param name="only">The turns of the second part that its shape or its tilt allow, radians; null for any.</param>
internal sealed class HoleFit(HoleCircle first, HoleCircle second, double clearance, IReadOnlyList<double>? only)
{
    private int? _meeting;
    private BoltMatch? _match;

    public HoleCircle First => first;

    public HoleCircle Second => second;

    public int Total => First.Angles.Count;

    public bool IsEstimated => First.Circle.IsEstimated || Second.Circle.IsEstimated || First.AreAnglesTakenOver;

    /// <summary>How many holes meet at best.</summary>
    public int Meeting => _meeting ??= first.Pattern.MostMeeting(second.Pattern, clearance, only);

    /// <summary>Which ones, and at which turn.</summary>
    public BoltMatch Match => _match ??= first.Pattern.Align(second.Pattern, clearance, only);

    /// <summary>
    /// How many holes would meet, and at which turn, if the second part could be turned freely; the turn nearest to a wanted one.
    /// </summary>
    public BoltMatch Freely(double wanted)
    {
        var match = first.Pattern.Align(second.Pattern.Rotated(wanted), clearance);
        return match with { Rotation = match.Rotation + wanted };
    }

    /// <summary>The hours of the first pattern's holes that find none, ascending.</summary>
    public List<double> Missed()
    {
        var hours = new List<double>();
        for (var i = 0; i < Total; i++)
        {
            if (!Match.Meets[i])
                hours.Add(Hour(First.Angles[i]));
        }
        hours.Sort();
        return hours;
    }

    /// <summary>Hours as a fitter reads them off a clock face: `1:30, 4:30`.</summary>
    public static string Hours(List<double> hours) => string.Join(", ", hours.ConvertAll(Clock));

    public static string Clock(double hour)
    {
        var minutes = (int)Math.Round(hour * 60, MidpointRounding.AwayFromZero) % 720;
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{(minutes < 60 ? 12 : minutes / 60)}:{minutes % 60:00}");
    }

    /// <summary>Degrees clockwise from the top to an hour from 0 to below 12.</summary>
    public static double Hour(double degrees) => (degrees / 30) - (Math.Floor(degrees / 360) * 12);
}
