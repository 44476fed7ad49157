using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Numerics;

namespace FitCheck.Physics.Electrical.Loads;

/// <summary>One way out of a channel: wire of its own, then rungs in the order from source to driver, then a driver.</summary>
/// <param name="Driver">The driver at the end.</param>
/// <param name="Elements">Crossover, capacitor, L-pad; empty when the driver hangs on the wire.</param>
/// <param name="WireResistance">Wire that only this branch uses, both conductors, ohm, ≥ 0.</param>
internal sealed record ChannelBranch(DriverModel Driver, IReadOnlyList<LadderElement>? Elements = null, double WireResistance = 0)
{
    /// <summary>Further drivers in series with <see cref="Driver"/>, on its return side.</summary>
    public IReadOnlyList<DriverModel> AlsoInSeries { get; init; } = [];

    /// <summary>Two are equal that have the same parts in the same order.</summary>
    public bool Equals(ChannelBranch? other) => other is not null && Driver == other.Driver
        && (Elements ?? []).SequenceEqual(other.Elements ?? []) && WireResistance.Equals(other.WireResistance)
        && AlsoInSeries.SequenceEqual(other.AlsoInSeries);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Driver, Elements?.Count ?? 0, WireResistance, AlsoInSeries.Count);
}

/// <summary>Everything that hangs on one output of a source unit or amplifier.</summary>
/// <param name="Branches">One or more, in parallel behind the shared wire.</param>
/// <param name="SharedWireResistance">Wire that all branches use, both conductors, ohm, ≥ 0.</param>
internal sealed record ChannelLoad(IReadOnlyList<ChannelBranch> Branches, double SharedWireResistance = 0)
{
    /// <summary>Rungs behind the shared wire, before the branches part: a capacitor in line with the whole channel.</summary>
    public IReadOnlyList<LadderElement> SharedElements { get; init; } = [];

    /// <summary>
    /// So many of the first branches hang one behind the other, each with its own wire and rungs; the others lie across all of these.
    /// </summary>
    public int InSeries { get; init; }

    /// <summary>Two are equal that have the same parts in the same order, and so are the same load.</summary>
    public bool Equals(ChannelLoad? other) => other is not null && Branches.SequenceEqual(other.Branches)
        && SharedWireResistance.Equals(other.SharedWireResistance) && SharedElements.SequenceEqual(other.SharedElements)
        && InSeries == other.InSeries;

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var branch in Branches)
            hash.Add(branch);
        hash.Add(SharedElements.Count);
        hash.Add(InSeries);
        return hash.ToHashCode();
    }

    /// <summary>Builds the network once, ready to be solved at many frequencies.</summary>
    /// <exception cref="ArgumentException">There is no branch, or a part has a value that cannot be.</exception>
    public ChannelNetwork Assemble() => new(this);

    /// <summary>Load and transfer functions from 20 Hz to 20 kHz.</summary>
    public ChannelSweep Sweep() => Assemble().Sweep(FrequencyGrid.Audio);
}
