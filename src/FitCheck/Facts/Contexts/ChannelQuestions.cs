using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Contexts;

/// <summary>What to find out where nobody recorded something of a channel: of its wires, its crossover and what hangs on it.</summary>
internal static class ChannelQuestions
{
    public static Unsure Feed(Position position) =>
        new($"what stands in the factory wire to {position.Name}",
            "Play a quiet test tone of 100 Hz through the factory wire: where it arrives at the tweeter's plug, no capacitor stands in it.",
            Estimated: true)
        { IsBounded = true, Key = new(position.Id, DatumKey.Position, "feed.type") };

    public static Unsure Inductance(Driver driver) =>
        new($"inductance of {driver.Name}",
            "Ask the maker for Le, or measure it at the terminals with an inductance meter, at 1 kHz or above.", Estimated: true)
        { Key = DatumKey.In(driver, "parameters.le") };

    public static Unsure Resistance(string name, string position, bool estimated, DatumKey? key) =>
        new($"DC resistance of {name} ({position})",
            "Unplug the driver and put a multimeter across its terminals, at room temperature.", estimated)
        { Key = key };

    public static Unsure WiringOfCoils(Driver driver) => new($"how the two voice coils of {driver.Name} are wired",
        "Choose it, and write `coils: series` or `coils: parallel` where the build fits it.", Estimated: false);

    public static Unsure Coils(Driver driver) => new($"voice coils of {driver.Name}",
        "Look at its terminals: two pairs are two coils, and its impedance is of each. Write `coils` into its entry.", Estimated: true);

    public static Unsure Network(Crossover crossover) => new($"network of {crossover.Name}",
        "Read the parts of both sections from the circuit diagram or from the board; one without any is `[]`.", Estimated: true);

    public static Unsure Section(Crossover crossover, bool isHighPass) =>
        new($"{(isHighPass ? "high-pass" : "low-pass")} of {crossover.Name}",
            $"Read its parts from the circuit diagram or from the board; where there are none, it is "
                + $"`{(isHighPass ? "high_pass" : "low_pass")}: []`.", Estimated: false);

    public static Unsure CrossoverOf(ComponentSet set) =>
        new($"crossover of {set.Name}", "Look into its box; a set without any has `crossover: none`.", Estimated: false);

    public static Unsure Carried(Position position) => new($"what the factory wire carries to {position.Name}",
        "Follow the wire back and read the parts in it; without any it is `full-range`.", Estimated: true)
    { Key = position.FeedType.Value == "unknown" ? new(position.Id, DatumKey.Position, "feed.type") : null };

    public static Unsure FactoryCapacitor(Position position) => new($"capacitor of the factory tweeter at {position.Name}",
        "Take the factory tweeter out and read the value printed on its capacitor.", Estimated: true)
    { Key = new DatumKey(position.Id, DatumKey.Position, "factory_driver.own_capacitor") };

    /// <summary>What may hang on the same wire.</summary>
    public static Unsure Perhaps(Position position, bool estimated) => position is { FactoryChannel: null, HasFactoryDriver: not null }
        ? new($"which output feeds {position.Name}",
            "Follow its wire to the radio, and write its output as `factory_channel`.", estimated)
        { Key = new(position.Id, DatumKey.Position, "factory_channel") }
        : FactoryDriver(position, estimated);

    /// <summary>What hangs there from the factory, where nobody wrote it.</summary>
    /// <param name="position">There.</param>
    /// <param name="estimated">True where the load is reckoned as if there were nothing.</param>
    public static Unsure FactoryDriver(Position position, bool estimated) => new($"factory driver at {position.Name}",
        "Look behind the trim whether there is a driver on the wire, and read its impedance from it: that is `factory_driver.impedance`; "
            + "where there is none, it is `factory_driver: none`.", estimated)
    { Key = new(position.Id, DatumKey.Position, position.HasFactoryDriver is null ? "factory_driver" : "factory_driver.impedance") };

    /// <summary>The impedance of the driver that hangs there, where it is a guess.</summary>
    public static Unsure FactoryImpedance(Position position) => new($"rated impedance of the factory driver at {position.Name}",
        "Read it from the driver's back.", Estimated: true)
    { Key = new(position.Id, DatumKey.Position, "factory_driver.impedance") };

    /// <summary>What is only guessed of the driver that hangs there.</summary>
    public static IEnumerable<Unsure> GuessedFactoryDriver(Position position)
    {
        if (position.FactoryImpedance is { IsEstimated: true })
            yield return FactoryImpedance(position);
        if (position.FactoryResistance is { IsEstimated: true })
            yield return Resistance("the factory driver", position.Name, estimated: true,
                new(position.Id, DatumKey.Position, "factory_driver.resistance"));
        if (position.OwnCapacitor is { IsEstimated: true })
            yield return FactoryCapacitor(position);
    }

    /// <summary>What nobody wrote of the wire to a driver: the new one, or the factory's.</summary>
    public static IEnumerable<Unsure> Wire(FittedPosition placed)
    {
        var cable = placed.NewWire?.Part;
        var (gauge, length, what) = cable is not null ? (cable.Gauge, placed.NewWireLength, cable.Name)
            : (placed.Position.WireGauge, placed.Position.WireLength, "the factory wire");
        var here = placed.Position.Id;
        if (gauge is null)
            yield return new Unsure($"gauge of {what} at {placed.Position.Name}", "Read it from its jacket, or measure the copper.",
                Estimated: false)
            { Key = DatumKey.In(cable, "gauge") ?? new(here, DatumKey.Position, "wire.gauge") };
        if (length is null)
            yield return new Unsure($"length of {what} at {placed.Position.Name}",
                "Lay a string along the route that it takes, counted once, and measure it.", Estimated: false)
            { Key = cable is null ? new(here, DatumKey.Position, "wire.length") : new(here, DatumKey.Line, "new_wire.length") };
    }
}
