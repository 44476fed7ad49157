namespace FitCheck.Physics.Geometry;

/// <summary>
/// A part of the clock face, seen from the listener: from one hour clockwise to another, both included; hours from 0 to 12, 12 and 0 at the
/// top. From 0 to 12 (or any 12 hours) is the whole face; from an hour to the same hour is that ray alone.
/// </summary>
internal readonly record struct ClockSector(double FromHour, double ToHour)
{
    /// <summary>The whole clock face.</summary>
    public static readonly ClockSector All = new(0, 12);

    private const double Touch = 1e-9;

    /// <summary>Hours from the first to the second, clockwise: 0 to 12.</summary>
    public double Span => ToHour - FromHour >= 12 ? 12 : Hours(ToHour - FromHour);

    /// <summary>True when every hour lies in it.</summary>
    public bool IsWhole => Span >= 12;

    /// <summary>Whether an hour lies in it, its ends included.</summary>
    public bool Contains(double hour)
    {
        var after = Hours(hour - FromHour);
        return after <= Span + Touch || after >= 12 - Touch;
    }

    private static double Hours(double hour) => hour - (Math.Floor(hour / 12) * 12);
}
