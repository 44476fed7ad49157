namespace FitCheck.Physics.Geometry;

/// <summary>A number that runs straight from one end of a piece (place 0) to the other (place 1).</summary>
internal readonly record struct Along(double From, double To)
{
    /// <summary>The number at a place from 0 to 1.</summary>
    public double At(double place) => From + ((To - From) * place);

    /// <summary>The place where it has this value; outside 0..1 or not a number when there is none.</summary>
    public double Where(double value) => (value - From) / (To - From);

    /// <summary>True when a place is on the piece, its ends included.</summary>
    public static bool IsOn(double place) => place is >= 0 and <= 1;
}
