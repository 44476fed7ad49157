using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>One output with its network solved: what it sees, and what reaches each driver.</summary>
internal sealed record ChannelContext(Build Build, Channel Channel, ChannelLoad? Load, IReadOnlyList<Branch> Branches,
    IReadOnlyList<Unsure> Unsure, OutputRating Output, Practice Practice)
{
    private readonly Dictionary<string, DriverBand?> _bands = new(StringComparer.Ordinal);
    private ChannelSweep? _sweep;
    private double? _lowestOfDrivers;
    private IReadOnlyList<ChannelContext>? _atResonances;

    /// <summary>Solves its loads, or knows them.</summary>
    public required SolvedLoads Solved { get; init; }

    /// <summary>Drivers of which no sheet gives the inductance: what the load rests on besides.</summary>
    public IReadOnlyList<Unsure> InductancesUnsure { get; init; } = [];

    /// <summary>
    /// What nobody wrote of the wires to its drivers. Without them the load is the heaviest that it can be, and so is the travel.
    /// </summary>
    public IReadOnlyList<Unsure> WiresUnsure { get; init; } = [];

    /// <summary>What nobody wrote of parts in the wires and of what else may hang on them; the load is reckoned without it.</summary>
    public IReadOnlyList<Unsure> Unwritten { get; init; } = [];

    /// <summary>
    /// What nobody wrote of a driver's resonance, where it stands behind parts that answer to it: the voltage at its terminals hangs on it.
    /// </summary>
    public IReadOnlyList<Unsure> ResonancesUnsure(FittedPosition placed)
    {
        if (Of(placed.Position.Id) is not ({ } branch, _))
            return [];
        var shared = Load is { SharedElements.Count: > 0 } or { InSeries: > 1 };
        return [.. Channel.Feeds.Where(p => shared || (p == placed && branch.Physics.Elements is { Count: > 0 }))
            .Select(p => p.Driver?.Part).OfType<Driver>().Where(ResonanceCorner.IsMissing).Distinct().Select(ResonanceCorner.Ask)];
    }

    /// <summary>The same channel with resonances and Q that no sheet gives in every corner; empty where all are given.</summary>
    public IReadOnlyList<ChannelContext> AtResonances => _atResonances ??=
        Channel.Feeds.Any(p => p.Driver?.Part is { } driver && ResonanceCorner.IsMissing(driver))
            ? [.. ResonanceCorner.All.Select(c => ChannelModel.Solve(Build, Channel, Practice, Solved, corner: c))] : [];

    /// <summary>A number of this channel with all that those can make of it at a position.</summary>
    public Uncertain WithinResonances(FittedPosition placed, Uncertain nominal, Func<ChannelContext, Uncertain?> read)
    {
        if (ResonancesUnsure(placed).Count == 0)
            return nominal;
        var (low, high) = (nominal.Low, nominal.High);
        foreach (var other in AtResonances.Select(read).OfType<Uncertain>())
            (low, high) = (Math.Min(low, other.Low), Math.Max(high, other.High));
        return low < nominal.Low || high > nominal.High ? new Uncertain(nominal.Value, low, high, (high - low) / 2) : nominal;
    }

    /// <summary>Factory wires to tweeters of which nobody knows whether a capacitor stands in them.</summary>
    public IReadOnlyList<Unsure> FeedsUnsure { get; init; } = [];

    /// <summary>
    /// The network solved with another inductance, in henry, wherever no sheet gives one, and a capacitance, in farad, in every untraced
    /// wire.
    /// </summary>
    public ChannelSweep? SweepWith(double? inductance, double? capacitance) =>
        ChannelModel.LoadWith(Channel, Practice, inductance, capacitance) is { } load ? Solved.Of(load) : null;

    private IReadOnlyList<ChannelContext>? _bounds;

    /// <summary>In which corner it was solved; null where resonances and Q are as the sheets give them.</summary>
    public ResonanceCorner? Corner { get; init; }

    /// <summary>Drivers whose DC resistance nobody measured; with the rated impedance it is known between bounds.</summary>
    public IReadOnlyList<Unsure> ResistancesUnsure { get; init; } = [];

    /// <summary>The same channel with those resistances at either bound; empty when all were measured.</summary>
    public IReadOnlyList<ChannelContext> Bounds =>
        _bounds ??= ResistancesUnsure.Count == 0 ? []
            : [ChannelModel.Solve(Build, Channel, Practice, Solved, Practice.DcResistanceShare.Low),
                ChannelModel.Solve(Build, Channel, Practice, Solved, Practice.DcResistanceShare.High)];

    /// <summary>What else is unsure, and those resistances as what they are: only between bounds.</summary>
    public IReadOnlyList<Unsure> UnsureWithinBounds =>
        [.. Unsure.Except(ResistancesUnsure), .. ResistancesUnsure.Select(u => u with { IsBounded = true })];

    /// <summary>Capacitors, resistors and L-pads in the wire, those of the whole output and those of each driver.</summary>
    public IReadOnlyList<PassivePart> PassiveParts { get; init; } = [];

    /// <summary>The solved network; null when a driver's impedance is not known. Worked out when first asked for.</summary>
    public ChannelSweep? Sweep => _sweep ??= Load is null ? null : Solved.Of(Load);

    /// <summary>
    /// Lowest |Z| of the drivers with what stands before them, ohm: by it goes what the output gives them. A section of a crossover at
    /// which nothing hangs may be next to a short at one frequency, but elsewhere the drivers get the whole voltage.
    /// </summary>
    public double? LowestOfDrivers => _lowestOfDrivers ??= Load is null || Load.Branches.Count == Branches.Count ? Sweep?.MinOhm
        : Solved.Of(Load with { Branches = [.. Load.Branches.Take(Branches.Count)] }).MinOhm;

    /// <summary>The electronic high-pass that the build sets, and whether it is there; null when it sets none.</summary>
    public required FilterCheck? HighPassSet { get; init; }

    /// <summary>The electronic low-pass that the build sets.</summary>
    public required FilterCheck? LowPassSet { get; init; }

    /// <summary>The high-pass as far as it is not known to be missing.</summary>
    public FilterCheck? HighPass => HighPassSet?.Exists == false ? null : HighPassSet;

    /// <summary>The low-pass as far as it is not known to be missing.</summary>
    public FilterCheck? LowPass => LowPassSet?.Exists == false ? null : LowPassSet;

    /// <summary>The filters of which nobody recorded whether they are there: what passes only with them is not known to pass.</summary>
    public IReadOnlyList<Unsure> FiltersUnsure =>
        [.. new[] { HighPass, LowPass }.OfType<FilterCheck>().Where(f => f.Exists is null)
            .Select(f => f.Open with { Estimated = true })];

    /// <summary>The band that is left to the driver at a position; null when the network before it can't be solved.</summary>
    public DriverBand? Band(string position)
    {
        if (_bands.TryGetValue(position, out var band))
            return band;
        band = DriverBand.Of(this, position);
        if (band is { RestsOnNetwork: true })
            band = band with { AtBounds = [.. Bounds.Select(b => DriverBand.Of(b, position)).OfType<DriverBand>()] };
        return _bands[position] = band;
    }

    /// <summary>The branch of a position, and its place among the branches.</summary>
    public (Branch Branch, int Index)? Of(string position)
    {
        for (var i = 0; i < Branches.Count; i++)
        {
            if (Branches[i].Position.Id == position)
                return (Branches[i], i);
        }
        return null;
    }

    /// <summary>Gain of the electronic filters of this output at a frequency, as a magnitude.</summary>
    public double ActiveGain(double hz) => HighPassGain(hz) * LowPassGain(hz);

    /// <summary>Gain of its electronic high-pass.</summary>
    public double HighPassGain(double hz) => HighPass?.Setting is { } high
        ? ActiveFilter.ButterworthHighPass(hz, high.Corner.Si, ActiveFilter.OrderOfSlope(high.SlopePerOctave)) : 1;

    /// <summary>Gain of its electronic low-pass.</summary>
    public double LowPassGain(double hz) => LowPass?.Setting is { } low
        ? ActiveFilter.ButterworthLowPass(hz, low.Corner.Si, ActiveFilter.OrderOfSlope(low.SlopePerOctave)) : 1;
}

/// <summary>The way from the output to one driver.</summary>
/// <param name="Position">Where the driver is.</param>
/// <param name="Placed">What the build proposes there; null for a factory driver that stays on the wire.</param>
/// <param name="Physics">As the network solver takes it.</param>
/// <param name="HighPasses">Series capacitors and electronic filters in the way, from source to driver, as far as they are there for
/// certain.</param>
/// <param name="FeedUnknown">True when nobody recorded what the factory wire carries.</param>
internal sealed record Branch(Position Position, FittedPosition? Placed, ChannelBranch Physics, IReadOnlyList<HighPassStage> HighPasses,
    bool FeedUnknown)
{
    /// <summary>The electronic high-pass that the build sets before this tweeter, where it is not there or nobody knows.</summary>
    public FilterCheck? Doubted { get; init; }

    /// <summary>Parts before it of which nobody wrote whether they are there.</summary>
    public Unsure? Unrecorded { get; init; }
}

/// <summary>A sundry in the wire, and the rungs of the network that stand for it.</summary>
internal sealed record PassivePart(Sundry Part, IReadOnlyList<LadderElement> Rungs);
