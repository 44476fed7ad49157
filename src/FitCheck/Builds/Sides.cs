using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>Which place is the same one on the other side of a vehicle.</summary>
internal static class Sides
{
    /// <summary>`front` or `rear`, by the factory output or the name of the place; null for what is neither.</summary>
    public static string? Axle(Position position)
    {
        var name = position.FactoryChannel?.Value ?? position.Id;
        return name.Contains("front", StringComparison.Ordinal) ? "front" : name.Contains("rear", StringComparison.Ordinal) ? "rear" : null;
    }

    /// <summary>The position on the other side, by its name; null where there is none of the same role and place.</summary>
    public static Position? Other(Vehicle vehicle, string position)
    {
        var name = position.Contains("left", StringComparison.Ordinal) ? position.Replace("left", "right", StringComparison.Ordinal)
            : position.Contains("right", StringComparison.Ordinal) ? position.Replace("right", "left", StringComparison.Ordinal) : null;
        return name is not null && vehicle.Find(name) is { } there && vehicle.Find(position) is { } here && there.Role == here.Role
            && there.Place == here.Place ? there : null;
    }
}
