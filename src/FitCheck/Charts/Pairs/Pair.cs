using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.Pairs;

/// <summary>A driver at a position, straight on the panel, on a spacer or in a cup.</summary>
internal sealed record Pair(Vehicle Vehicle, Position Position, Driver Driver, Part? Mount)
{
    /// <summary>The build that proposes this and nothing else; its lines are those of the catalog.</summary>
    public Build Build(IReadOnlySet<string> accepts)
    {
        var placed = new FittedPosition(Position, Position.At)
        {
            Driver = new Chosen<Driver>(Driver, Driver.At),
            Adapter = Mount is Adapter adapter ? new Chosen<Adapter>(adapter, adapter.At) : null,
            Cup = Mount is Cup cup ? new Chosen<Cup>(cup, cup.At) : null,
        };
        return new Build
        {
            File = Vehicle.At.File,
            Name = $"{Driver.Id} at {Position.Id} of {Vehicle.Id}",
            At = Position.At,
            Vehicle = Vehicle,
            VehicleAt = Vehicle.At,
            Accepts = accepts,
            Placed = [placed],
            Devices = [],
            Channels = [],
            Supply = new Supply(null, null, new Dictionary<string, SupplyRun>(StringComparer.Ordinal), [], [], []),
        };
    }

    /// <summary>The facts of the position in that build.</summary>
    public FactTable Facts(IReadOnlySet<string> accepts, Practice practice)
    {
        var build = Build(accepts);
        return FactRegistry.Of(new PositionContext(build, build.Placed[0], null, practice));
    }
}
