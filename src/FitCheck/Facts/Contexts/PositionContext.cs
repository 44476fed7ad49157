using FitCheck.Builds;
using FitCheck.Catalog;

namespace FitCheck.Facts.Contexts;

/// <summary>Everything that the facts of one position are computed from.</summary>
internal sealed record PositionContext(Build Build, FittedPosition Placed, ChannelContext? Channel)
{
    public Position Position => Placed.Position;
    public Driver? Driver => Placed.Driver?.Part;
    public DriverDimensions? Size => Placed.Driver?.Part.Dimensions;
    public Adapter? Adapter => Placed.Adapter?.Part;
    public Cup? Cup => Placed.Cup?.Part;
    public double Tilt => Adapter?.Tilt?.Si ?? 0;

    /// <summary>Named as on a work sheet: "mounting depth of Orrin W165 (Left front door)".</summary>
    public string OfDriver(string what) => $"{what} of {Driver?.Name ?? "the driver"}";

    public string AtPosition(string what) => $"{what} at {Position.Name}";
}
