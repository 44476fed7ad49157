namespace FitCheck.Physics.Geometry;

/// <summary>A vector in the vehicle: x forward, y to the left, z up; any unit.</summary>
internal readonly record struct Direction(double X, double Y, double Z)
{
    /// <summary>Length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>This direction with length 1. A vector of length 0 has none.</summary>
    public Direction Normalized() => this * (1 / Length);

    /// <summary>Scalar product.</summary>
    public double Dot(Direction other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product.</summary>
    public Direction Cross(Direction other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>Angle in radians, 0 to π, to another direction.</summary>
    public double AngleTo(Direction other) => Math.Acos(Math.Clamp(Normalized().Dot(other.Normalized()), -1, 1));

    /// <summary>Sum.</summary>
    public static Direction operator +(Direction a, Direction b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Opposite.</summary>
    public static Direction operator -(Direction a) => a * -1;

    /// <summary>Multiple.</summary>
    public static Direction operator *(Direction a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    /// <summary>The named form of the sum.</summary>
    public static Direction Add(Direction left, Direction right) => left + right;

    /// <summary>The named form of the opposite.</summary>
    public static Direction Negate(Direction item) => -item;

    /// <summary>The named form of the multiple.</summary>
    public static Direction Multiply(Direction left, double right) => left * right;
}
