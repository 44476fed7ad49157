using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Contexts;

/// <summary>Everything that the facts of one position are computed from.</summary>
internal sealed record PositionContext(Build Build, FittedPosition Placed, ChannelContext? Channel, Practice Practice)
{
    public Position Position => Placed.Position;
    public Driver? Driver => Placed.Driver?.Part;
    public DriverDimensions? Size => Placed.Driver?.Part.Dimensions;
    public Adapter? Adapter => Placed.Adapter?.Part;
    public Cup? Cup => Placed.Cup?.Part;
    public double Tilt => Adapter?.Tilt?.Si ?? 0;

    /// <summary>Whether an output feeds it; null where it hangs on its factory channel and nobody wrote which that is.</summary>
    public bool? IsFed => Channel is not null ? true
        : Build.AreChannelsGiven || Position.HasFactoryDriver == false ? false
        : Position.FactoryChannel is null || !Build.Devices.Any(d => d.Part is SourceUnit) ? null : false;

    /// <summary>What is to be found out where that is not known.</summary>
    public Unsure FedBy => new(AtPosition("which output feeds the driver"),
        "Follow the wire to the radio, and write its output as `factory_channel` and the radio as `factory_source`.", Estimated: false)
    { Key = Position.FactoryChannel is null ? Here("factory_channel") : DatumKey.In(Build.Vehicle, "factory_source") };

    /// <summary>Named as on a work sheet: "mounting depth of Orrin W165 (Left front door)".</summary>
    public string OfDriver(string what) => $"{what} of {Driver?.Name ?? "the driver"}";

    /// <summary>What a reading of this key of the position is called.</summary>
    public DatumKey Here(string of) => new(Position.Id, DatumKey.Position, of) { Entry = Build.Vehicle };

    /// <summary>What a reading of something behind the panel is called; null where nothing is.</summary>
    public DatumKey? Thing(Obstruction? thing, string of) => thing is null ? null : Here($"mounting.obstructions.{thing.Name}.{of}");

    public string AtPosition(string what) => $"{what} at {Position.Name}";
}
