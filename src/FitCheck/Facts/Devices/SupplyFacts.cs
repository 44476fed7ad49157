using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>The supply of one amplifier, or the main cable that several share: demand, cable, fuse, ground, voltage drop.</summary>
internal static class SupplyFacts
{
    public static readonly FactGroup Declarations = new(Subject.Device);
    public static readonly FactGroup OfBuild = new(Subject.Build);

    public static readonly TruthFact IsMainCable = Declarations.Truth(
        "is_main_cable", "This is the cable from the battery that several amplifiers share.",
        Reads.Supply.Itself)
        .Saying("not the main cable");
    public static readonly TruthFact HasPowerCable = Declarations.Truth(
        "has_power_cable", "A power cable is named or on the list.",
        Reads.PowerCable.Itself)
        .Saying("no power cable");
    public static readonly TruthFact IsUnfused = Declarations.Truth(
        "is_unfused", "The power cable has no fuse, nor has a main cable before it.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.MainCable.Itself)
        .Saying("fused", "not fused");
    public static readonly TruthFact StartsAtBattery = Declarations.Truth(
        "starts_at_battery", "The cable starts at the battery.",
        Reads.Supply.Itself)
        .Saying("does not start at the battery");
    public static readonly TruthFact HasOwnFuse = Declarations.Truth(
        "has_own_fuse", "The cable has a fuse of its own.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself)
        .Saying("no fuse of its own");
    public static readonly TruthFact FuseFitsHolder = Declarations.Truth(
        "fuse_fits_holder", "The fuse is of the pattern that its holder or block takes.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.Holders.Itself);
    public static readonly TruthFact HasGroundCable = Declarations.Truth(
        "has_ground_cable", "A ground cable is named or lies in the kit.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself)
        .Saying("no ground cable");
    public static readonly WordFact CableName = Declarations.Word("cable_name", "Name of the power cable.", Reads.PowerCable.Itself);
    public static readonly WordFact FuseName = Declarations.Word(
        "fuse_name", "Name of the fuse that protects the cable.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.MainCable.Itself);
    public static readonly WordFact StandardFuse = Declarations.Word(
        "standard_fuse", "Smallest standard fuse of the same pattern that carries the demand and protects the cable.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.MainCable.Itself, Reads.Demand.Itself);
    public static readonly NumberFact Demand = Declarations.Number(
        "demand", Dimension.Ampere, "Supply current at full power into the loads of this build.",
        Reads.Demand.Itself, Reads.Box.Itself);
    public static readonly NumberFact CableLimit = Declarations.Number(
        "cable_limit", Dimension.Ampere,
        "Current that the power cable may carry: as its maker says, and never more than its gauge, metal and insulation carry where it "
        + "lies.",
        Reads.PowerCable.Itself);
    public static readonly WordFact CableLimitBasis = Declarations.Word(
        "cable_limit_basis", "What the conductor of the power cable carries, and what its maker claims.",
        Reads.PowerCable.Itself);
    public static readonly NumberFact FuseRating = Declarations.Number(
        "fuse_rating", Dimension.Ampere, "Rating of the fuse that protects the cable.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.MainCable.Itself);
    public static readonly NumberFact FuseDistance = Declarations.Number(
        "fuse_distance", Dimension.Metre, "Cable between the battery's terminal and the fuse.",
        Reads.Supply.Itself, Reads.PowerCable.Itself);
    public static readonly NumberFact PowerArea = Declarations.Number(
        "power_area", Dimension.SquareMetre, "Cross-section of the power cable, counted in copper.",
        Reads.PowerCable.Itself);
    public static readonly NumberFact GroundArea = Declarations.Number(
        "ground_area", Dimension.SquareMetre, "Cross-section of the ground cable, counted in copper.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly NumberFact VoltageDrop = Declarations.Number(
        "voltage_drop", Dimension.Volt, "Voltage lost in the power and ground cables at full power, at a conductor temperature of 60 °C.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself, Reads.MainCable.Itself, Reads.Demand.Itself, Reads.Box.Itself);
    public static readonly NumberFact SupplyDemand = OfBuild.Number(
        "supply_demand", Dimension.Ampere, "Supply current of all amplifiers at full power.",
        Reads.Whole.Itself);
    public static readonly NumberFact SupplyAverage = OfBuild.Number(
        "supply_average", Dimension.Ampere, "Supply current of all amplifiers with music, a third of full power.",
        Reads.Whole.Itself);
    public static readonly NumberFact Alternator = OfBuild.Number(
        "alternator", Dimension.Ampere, "Current that the vehicle's alternator gives.",
        Reads.Whole.Itself);
    public static readonly NumberFact AlternatorShare = OfBuild.Number(
        "alternator_share", Dimension.One, "Part of the alternator's current that the amplifiers take with music.",
        Reads.Whole.Itself);
    public static readonly TruthFact LacksDistribution = OfBuild.Truth(
        "lacks_distribution", "Several amplifiers share one cable from the battery and no block splits it.",
        Reads.Whole.Itself);

    /// <summary>Of an amplifier or of the main cable.</summary>
    public static void Compute(SupplyRunContext c, SupplyRunContext? main, FactSheet sheet)
    {
        var (run, cable) = (c.Run, c.Run.Cable?.Part);
        sheet.Set(IsMainCable, c.Amplifier is null);
        sheet.Set(HasPowerCable, cable is not null);
        sheet.Set(Demand, c.Demand);
        sheet.Set(IsUnfused, cable is not null && c.Fuse is null);
        sheet.Set(CableName, cable?.Name ?? "no power cable");
        sheet.Set(StartsAtBattery, c.StartsAtBattery);
        sheet.Set(HasOwnFuse, cable is not null && run.Fuse is not null);
        if (cable is null)
            return;
        var limit = Limit(c, cable);
        sheet.Set(CableLimit, limit);
        sheet.Set(CableLimitBasis, new CableLimit(cable, c.InEngineSpace, c.Practice).Words(Lies(c)));
        if (c.Fuse is { } fuse)
            Fuse(c, fuse.Part, limit, sheet);
        if (c.StartsAtBattery && run.Fuse is not null)
        {
            sheet.Set(FuseDistance, run.FuseDistance is { } distance
                ? FactValue.Of(Dimension.Metre, Uncertain.Within(distance.Si, distance.HalfWidth))
                with
                { Data = [new Datum("distance of the fuse", distance)] }
                : FactValue.Unknown(FactType.Number(Dimension.Metre), new Unsure(
                    $"distance of the fuse of {c.Name} from the battery", Place(c), Estimated: false,
                    l => $"{QuantityText.Format(l.Limit, Dimension.Metre)} or less")));
        }
        if (c.Amplifier is null)
            return;
        sheet.Set(HasGroundCable, run.Ground is not null);
        sheet.Set(VoltageDrop, Drop(c, main));
        Area(sheet, PowerArea, cable);
        Area(sheet, GroundArea, run.Ground?.Part);
    }

    /// <summary>Of a device whose supply the build does not plan: a source unit or a line converter.</summary>
    public static void ComputeNone(FactSheet sheet)
    {
        foreach (var truth in new[] { IsMainCable, HasPowerCable, IsUnfused, StartsAtBattery, HasOwnFuse })
            sheet.Set(truth, truth: false);
    }

    /// <summary>Of the build as a whole.</summary>
    public static void Compute(Builds.Build build, DeviceFacts devices, FactSheet sheet)
    {
        var (total, amplifiers) = (devices.Total, devices.Runs.Count);
        sheet.Set(LacksDistribution, build.Supply is { Main: not null, Distribution: null } && amplifiers > 1);
        var alternator = build.Vehicle.Alternator;
        sheet.Set(Alternator, FactValue.Of(Dimension.Ampere, alternator, "alternator",
            new Unsure($"current of the alternator of {build.Vehicle.Name}", "Read it from the label on the alternator.",
                Estimated: false)
            { Key = DatumKey.In(build.Vehicle, "supply.alternator") }));
        if (amplifiers == 0)
            return;
        sheet.Set(SupplyDemand, total);
        var average = total.Number is { } sum ? total with { Number = sum * Uncertain.Exact(devices.Practice.MusicAverage) } : total;
        sheet.Set(SupplyAverage, average);
        var share = average.Number is { } mean && alternator is { Si: > 0 }
            ? FactValue.Of(Dimension.One, mean * Uncertain.Exact(1 / alternator.Si))
            : FactValue.Unknown(FactType.Number(Dimension.One));
        sheet.Set(AlternatorShare,
            share with { Unsure = [.. total.Unsure, .. sheet.Of(Alternator)!.Unsure], Data = sheet.Of(Alternator)!.Data });
    }

    private static void Fuse(SupplyRunContext c, WiringPart fuse, FactValue limit, FactSheet sheet)
    {
        sheet.Set(FuseName, SpokenName.Of(fuse.Name));
        sheet.Set(FuseRating, FactValue.Of(Dimension.Ampere, fuse.Current, $"rating of {fuse.Name}",
            new Unsure($"rating of {fuse.Name}", "Read it from the fuse.", Estimated: false) { Key = DatumKey.In(fuse, "current") }));
        if (c.Run.Fuse is not null)
        {
            bool? fits = fuse.FuseStandard is not { } pattern ? null
                : c.StartsAtBattery ? c.Build.Supply.Listed.Any(p => p.Type == "fuse-holder" && p.FuseStandard == pattern)
                : c.Build.Supply.Distribution?.Part.FuseStandard == pattern;
            sheet.Set(FuseFitsHolder, fits,
                new Unsure($"pattern of {fuse.Name}", "Look whether it is a blade, maxi, midi, mega or ANL fuse.", Estimated: false)
                { Key = DatumKey.In(fuse, "fuse_standard") });
        }
        var suits = fuse.FuseStandard is { } standard && c.Demand.Number is { } demand && limit.Number is { } most
            ? Physics.Electrical.Cables.StandardFuse.Between(standard, demand.High, most.Low) : null;
        sheet.Set(StandardFuse,
            suits is { } rating ? $"{Called(fuse)} of {QuantityText.Format(rating, Dimension.Ampere)}" : "none of this pattern");
    }

    private static FactValue Limit(SupplyRunContext c, WiringPart cable)
    {
        var limit = new CableLimit(cable, c.InEngineSpace, c.Practice).Value(c.Fuse?.Part.Current?.Si);
        return c is { StartsAtBattery: true, Build.Vehicle.Battery: { } battery }
            ? limit with { Data = [.. limit.Data, new Datum($"battery of {c.Build.Vehicle.Name}: {battery.Value}", battery.At)] } : limit;
    }

    private static string Lies(SupplyRunContext c) => !c.InEngineSpace ? "outside the engine space"
        : c.Build.Vehicle.Battery is null ? "counted as in the engine space, because the battery's place is not recorded"
        : "in the engine space";

    private static string Called(WiringPart fuse) => fuse.FuseStandard is "anl" ? "an ANL fuse" : $"a {fuse.FuseStandard} fuse";

    private static void Area(FactSheet sheet, NumberFact fact, WiringPart? cable)
    {
        if (cable?.Gauge is { } gauge)
            sheet.Set(fact,
                FactValue.Of(Dimension.SquareMetre, gauge.Si * WireGauge.Copper / cable.Resistivity)
                    with
                { Data = [new Datum($"gauge of {cable.Name}: {gauge}", gauge.At)] });
    }

    // Own current in the own cable and to ground, everyone's in the main cable; the body of the vehicle counts as no resistance.
    private static FactValue Drop(SupplyRunContext c, SupplyRunContext? main)
    {
        var unknown = FactType.Number(Dimension.Volt);
        if (c.PerMetre(c.Run.Cable?.Part) is not { } power || c.Demand.Number is not { } own)
            return FactValue.Unknown(unknown, [.. c.Demand.Unsure]);
        var unsure = new List<Unsure>(c.Demand.Unsure);
        var data = new List<Datum>();
        var (groundLength, groundGuessed) = c.GroundLength;
        var rest = own * Uncertain.Exact((c.PerMetre(c.Run.Ground?.Part) ?? power) * groundLength);
        if (main is not null)
        {
            if (c.PerMetre(main.Run.Cable?.Part) is not { } shared || main.Demand.Number is not { } all
                || main.Length() is not { } mainLength)
                return FactValue.Unknown(unknown, [.. main.Length() is null ? [main.LengthUnsure(false, null)] : main.Demand.Unsure]);
            rest += all * Uncertain.Exact(shared * mainLength.Metres);
            Add(main, mainLength.Datum, mainLength.Estimated, null);
        }
        // The longest cable that keeps a limit, from what the rest of the way takes.
        string? Longest(PassLimit limit) => !limit.AtLeast
            && Tenths((limit.Limit - rest.High) / (own.High * power)) is > 0 and var most
                ? $"{QuantityText.FormatLimit(most, Unit.Find("m")!, orMore: false)} or less" : null;
        if (c.Length() is not { } length)
            return FactValue.Unknown(unknown, c.LengthUnsure(false, Longest));
        Add(c, length.Datum, length.Estimated, Longest);
        if (groundGuessed && c.Run.Ground is not null)
            unsure.Add(c.GroundUnsure());
        return FactValue.Of(Dimension.Volt, rest + (own * Uncertain.Exact(power * length.Metres))) with { Unsure = unsure, Data = data };

        void Add(SupplyRunContext run, Datum? datum, bool estimated, Func<PassLimit, string?>? passing)
        {
            if (datum is not null)
                data.Add(datum);
            if (estimated)
                unsure.Add(run.LengthUnsure(true, passing));
        }
    }

    private static double Tenths(double metres) => Math.Floor(Math.Max(0, metres) * 10) / 10;

    private static string Place(SupplyRunContext c) => c.Build.Vehicle.MainFusePlace is { } place
        ? $"Find a place for the holder; in this vehicle there is one {place}. Measure the cable from the battery's terminal to it."
        : "Find a place for the holder near the battery, and measure the cable from the battery's terminal to it.";
}
