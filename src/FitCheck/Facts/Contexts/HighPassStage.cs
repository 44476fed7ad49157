using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;

namespace FitCheck.Facts.Contexts;

/// <summary>A high-pass in the way to a tweeter.</summary>
/// <param name="Name">In words: `the electronic high-pass at 80 Hz`.</param>
/// <param name="Corner">Where it alone is 3 dB down before this driver, Hz; null when that can't be told.</param>
internal sealed record HighPassStage(string Name, Lazy<double?> Corner)
{
    public HighPassStage(string name, double? corner) : this(name, new Lazy<double?>(corner))
    {
    }

    /// <summary>A capacitor in farad before a rated impedance in ohm: 1/(2π·R·C).</summary>
    public static HighPassStage Of(string name, double capacitance, double load) => new(name, 1 / (2 * Math.PI * load * capacitance));

    /// <summary>The rungs of a crossover before a tweeter, with nothing else in the way.</summary>
    public static HighPassStage Of(Crossover crossover, DriverModel driver, IReadOnlyList<LadderElement> rungs,
        SolvedLoads solved) =>
        new(crossover.Name, new Lazy<double?>(() =>
        {
            var sweep = solved.Of(new ChannelLoad([new ChannelBranch(driver, rungs)]));
            return HighPass.Of([.. sweep.States.Select(s => s.Hz)], sweep.LevelDb(0)).CornerHz;
        }));

    public static IEnumerable<HighPassStage> Capacitors(IEnumerable<Chosen<Sundry>> sundries, double load) =>
        sundries.Where(s => s.Part is { Type: "capacitor", Capacitance: not null })
            .Select(s => Of(s.Part.Name, s.Part.Capacitance!.Si, load));

    public static HighPassStage InFactoryWire(Position position, double load) => Of("the capacitor in the factory wire",
        1 / position.FeedNetwork.Where(e => !e.Shunt && e.Capacitance is not null).Sum(e => 1 / e.Capacitance!.Si), load);
}
