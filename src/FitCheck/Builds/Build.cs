using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Builds;

/// <summary>What someone proposes, with every reference followed.</summary>
internal sealed record Build
{
    public required string File { get; init; }
    public required string Name { get; init; }
    public required Location At { get; init; }
    public string? Notes { get; init; }
    public required Vehicle Vehicle { get; init; }
    public required Location VehicleAt { get; init; }
    /// <summary>In which units it wants lengths told; null when it does not say.</summary>
    public LengthUnits? Units { get; init; }
    public Located<Money>? Budget { get; init; }
    /// <summary>Work that the person accepts: `cut-wires`, `drill`, `enlarge-holes`, `trim-parts`.</summary>
    public IReadOnlySet<string> Accepts { get; init; } = new HashSet<string>(StringComparer.Ordinal);
    /// <summary>What `suggest` leaves as it is: parts, positions, devices or outputs.</summary>
    public IReadOnlyList<Located<string>> Keep { get; init; } = [];
    public required IReadOnlyList<FittedPosition> Placed { get; init; }
    public required IReadOnlyList<Device> Devices { get; init; }
    public required IReadOnlyList<Channel> Channels { get; init; }
    /// <summary>False where each position hangs on its factory channel, as nothing else is written.</summary>
    public bool AreChannelsGiven { get; init; }
    public required Supply Supply { get; init; }
    /// <summary>The entry of an id as it is written; null when there is no catalog to look into.</summary>
    public Func<string, Yaml.YamlMap?>? Written { get; init; }
    public IReadOnlyList<Treatment> Treated { get; init; } = [];
    /// <summary>The radio that came with the vehicle, in the build or not; null when the vehicle names none.</summary>
    public SourceUnit? FactoryRadio { get; init; }
    /// <summary>The list that the seller wrote; null when there is none to check.</summary>
    public IReadOnlyList<QuoteLine>? Quote { get; init; }
    public Location? QuoteAt { get; init; }
    public IReadOnlyList<QuoteLine> Extras { get; init; } = [];
    /// <summary>Ids of parts that are there already.</summary>
    public IReadOnlyList<Located<string>> Owned { get; init; } = [];
    /// <summary>Those that hold today, each of one place.</summary>
    public IReadOnlyList<Waiver> Waivers { get; init; } = [];
    /// <summary>Those whose last day is over: they are told, and count for nothing.</summary>
    public IReadOnlyList<Waiver> EndedWaivers { get; init; } = [];
    /// <summary>What this build is meant to give; null when it does not say.</summary>
    public Expectation? Expected { get; init; }
    /// <summary>The day on which it was read, by which the end of a waiver is judged.</summary>
    public DateOnly Today { get; init; }

    public bool Accepted(string work) => Accepts.Contains(work);

    /// <summary>True for what nobody has to buy, as the entry or the build says.</summary>
    public bool Owns(Part part) => part.IsOwned || Owned.Any(o => o.Value == part.Id);

    /// <summary>
    /// What the seller's list says of a pack: where several lines do, their middle by packs, rounded to hundredths. Null when none does.
    /// </summary>
    public Money? QuotePrice(Part part)
    {
        if (Quote is null)
            return null;
        var priced = Quote.Where(q => q.Part.Id == part.Id && q.Price is not null).ToList();
        if (priced.Count < 2 || priced.Any(q => q.Price!.Currency != priced[0].Price!.Currency))
            return priced.Count == 0 ? null : priced[0].Price;
        var middle = priced.Sum(q => q.Price!.Amount * q.Packs) / priced.Sum(q => q.Packs);
        return priced[0].Price! with { Amount = decimal.Round(middle, 2, MidpointRounding.AwayFromZero) };
    }

    /// <summary>What a pack of a part costs in this build: nothing, what the seller asks, or what the catalog says.</summary>
    public Money PriceOf(Part part) => Owns(part) ? part.Price.Value with { Amount = 0 }
        : QuotePrice(part) is { } quoted && (!part.HasPrice || quoted.Currency == part.Price.Value.Currency) ? quoted : part.Price.Value;

    /// <summary>True when this treatment is at the position already or is fitted there by this build.</summary>
    public bool HasTreatment(string type, string position) =>
        Treated.Any(t => t.Types.Contains(type) && t.Positions.Contains(position))
        || Placed.Any(p => p.Position.Id == position && p.Sundries.Any(s => s.Part.Type == type));
}

/// <summary>A part and the line of the build that chose it.</summary>
internal sealed record Chosen<T>(T Part, Location At) where T : Part;

/// <summary>What is proposed for one position.</summary>
internal sealed record FittedPosition(Position Position, Location At)
{
    public Chosen<Driver>? Driver { get; set; }
    /// <summary>The set that the driver comes from.</summary>
    public Chosen<ComponentSet>? Set { get; set; }
    public Chosen<Adapter>? Adapter { get; set; }
    public Chosen<Cup>? Cup { get; set; }
    public Chosen<Harness>? Harness { get; set; }
    public List<Chosen<Sundry>> Sundries { get; } = [];
    /// <summary>The crossover module that lies at this position.</summary>
    public Chosen<Crossover>? Module { get; set; }
    public Chosen<WiringPart>? NewWire { get; set; }
    public Figure? NewWireLength { get; set; }
    public bool Disconnected { get; set; }
    /// <summary>The factory driver stays here on purpose.</summary>
    public bool KeepsFactoryDriver { get; set; }
    public bool OpenedWaterShed { get; set; }
    /// <summary>Plus and minus are put on the driver the other way round.</summary>
    public bool Reversed { get; set; }
    /// <summary>Whether the driver's two voice coils are wired in series, else in parallel; null when nobody says, or it has one.</summary>
    public bool? CoilsInSeries { get; set; }
    /// <summary>Net volume of the box in which the driver works; null in free air, in a door, or when not told.</summary>
    public Figure? Box { get; set; }
    /// <summary>Frequency to which the port of its box is tuned; null for a closed one.</summary>
    public Figure? Port { get; set; }
}

/// <summary>A source unit, line converter or amplifier in the build.</summary>
/// <param name="Id">Its name in the build.</param>
/// <param name="Part">The catalog's part.</param>
/// <param name="From">The device that feeds it; null for a source.</param>
/// <param name="IsFactory">True for the radio that is in the vehicle: nobody buys it.</param>
/// <param name="At">The line that chose it.</param>
internal sealed record Device(string Id, Part Part, string? From, bool IsFactory, Location At)
{
    /// <summary>
    /// What switches it on besides the signal: `ignition` for a switched feed of the vehicle, else the device whose remote output does.
    /// </summary>
    public Located<string>? Remote { get; init; }
    /// <summary>Which outputs of the source its inputs take, in their order; empty when nobody says.</summary>
    public IReadOnlyList<Located<string>> Takes { get; init; } = [];
    /// <summary>Voltage at its input for full power, as its gain is set.</summary>
    public Figure? Gain { get; init; }
}

/// <summary>One output and the positions that it feeds.</summary>
internal sealed record Channel
{
    public required string Id { get; init; }
    public required Device Device { get; init; }
    public required IReadOnlyList<string> Outputs { get; init; }
    public required Location At { get; init; }
    /// <summary>Several outputs of an amplifier onto one load; those of a source can only be tied together.</summary>
    public bool Bridged => Outputs.Count > 1 && Device.Part is Amplifier;
    public Chosen<Crossover>? Crossover { get; init; }
    /// <summary>True when the build names a crossover, or says that there is none.</summary>
    public bool NamesCrossover { get; init; }
    public string? Setting { get; init; }
    public FilterSetting? HighPass { get; init; }
    public FilterSetting? LowPass { get; init; }
    public IReadOnlyList<Chosen<Sundry>> InLine { get; init; } = [];
    public required IReadOnlyList<FittedPosition> Feeds { get; init; }
    /// <summary>Positions on the same wire of which nobody wrote whether the maker fitted a driver there.</summary>
    public IReadOnlyList<Position> PerhapsLeft { get; init; } = [];
    /// <summary>Positions whose factory driver stays on the same wire.</summary>
    public IReadOnlyList<Position> Leftover { get; init; } = [];
    public Figure? Limit { get; init; }
    /// <summary>The drivers hang on the output one behind the other; else side by side.</summary>
    public bool InSeries { get; init; }
    /// <summary>Whether the radio's own output is still on the factory wire; null when nobody says.</summary>
    public bool? RadioConnected { get; init; }
}

/// <summary>Treatment that is in the vehicle already.</summary>
internal sealed record Treatment(IReadOnlyList<string> Positions, IReadOnlyList<string> Types);

/// <summary>A line of a list: a part and how many packs of it.</summary>
internal sealed record QuoteLine(Part Part, int Packs, Location At)
{
    /// <summary>What the seller asks for a pack; null when he does not say.</summary>
    public Money? Price { get; init; }
}

/// <summary>A finding that the person accepts, and why.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Position">The place as a finding names it; null for wherever the rule speaks, which only rules of no place allow.</param>
/// <param name="Reason">Why.</param>
/// <param name="At">Where the rule, or the place, is written.</param>
/// <param name="Until">The last day on which it holds; null for no end.</param>
internal sealed record Waiver(string Rule, string? Position, string Reason, Location At, Located<DateOnly>? Until = null);
