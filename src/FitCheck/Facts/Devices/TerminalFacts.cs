using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Devices;

/// <summary>Where supply cables are clamped: terminals of amplifiers, inlet and outlets of a block, fuse holders.</summary>
internal static class TerminalFacts
{
    private const string Print = "Read it from its case or its data sheet.";

    public static readonly FactGroup OfRun = new(Subject.Device);

    public static readonly NumberFact PowerGauge = OfRun.Number(
        "power_gauge", Dimension.SquareMetre, "Cross-section of the power cable, whatever its metal.",
        Reads.PowerCable.Itself);
    public static readonly NumberFact GroundGauge = OfRun.Number(
        "ground_gauge", Dimension.SquareMetre, "Cross-section of the ground cable, whatever its metal.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly TruthFact EndsInTerminal = OfRun.Truth(
        "ends_in_terminal", "The power cable ends in a clamp of an amplifier or of a block.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly WordFact TerminalName = OfRun.Word(
        "terminal_name", "The amplifier or block in whose clamp the power cable ends.",
        Reads.Device.Itself, Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly NumberFact TerminalGauge = OfRun.Number(
        "terminal_gauge", Dimension.SquareMetre, "The thickest cable that this clamp takes.",
        Reads.Device.Itself, Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly TruthFact LeavesBlock = OfRun.Truth(
        "leaves_block", "The power cable begins in an outlet of a distribution block.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly NumberFact OutletGauge = OfRun.Number(
        "outlet_gauge", Dimension.SquareMetre, "The thickest cable that an outlet of the block takes.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly WordFact BlockName = OfRun.Word(
        "block_name", "Name of the distribution block.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly TruthFact HasBlock = OfRun.Truth(
        "has_block", "This is the main cable, and a block splits it.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly NumberFact BlockLimit = OfRun.Number(
        "block_limit", Dimension.Ampere, "Current that the block may carry.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly NumberFact BlockWays = OfRun.Number(
        "block_ways", Dimension.One, "Outlets of the block.",
        Reads.PowerCable.Itself, Reads.Holders.Itself);
    public static readonly NumberFact BlockTaken = OfRun.Number(
        "block_taken", Dimension.One, "Amplifiers that are connected to the block.",
        Reads.PowerCable.Itself, Reads.Holders.Itself, Reads.Devices.Itself);
    public static readonly TruthFact HasOwnHolder = OfRun.Truth(
        "has_own_holder", "A holder for the cable's fuse is on the list.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.Holders.Itself);
    public static readonly WordFact HolderName = OfRun.Word(
        "holder_name", "The holder of the cable's fuse; of several that take it the largest.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.Holders.Itself);
    public static readonly NumberFact HolderGauge = OfRun.Number(
        "holder_gauge", Dimension.SquareMetre, "The thickest cable that this holder takes.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.Holders.Itself);
    public static readonly NumberFact HolderLimit = OfRun.Number(
        "holder_limit", Dimension.Ampere, "Current that this holder may carry.",
        Reads.PowerCable.Itself, Reads.Fuse.Itself, Reads.Holders.Itself);

    public static readonly TruthFact HasAluminium = OfRun.Truth(
        "has_aluminium", "The power cable or the ground cable is of plain aluminium.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);
    public static readonly WordFact AluminiumName = OfRun.Word(
        "aluminium_name", "Name of the cable that is of plain aluminium.",
        Reads.PowerCable.Itself, Reads.GroundCable.Itself);

    public static void Compute(SupplyRunContext c, FactSheet sheet)
    {
        Aluminium(c, sheet);
        var (block, holder) = (c.Build.Supply.Distribution?.Part, c.Holder);
        var ownBlock = c.Amplifier is null ? block : null;
        SetGauge(sheet, PowerGauge, c.Run.Cable?.Part);
        SetGauge(sheet, GroundGauge, c.Run.Ground?.Part);
        sheet.Set(EndsInTerminal, c.Amplifier is not null || ownBlock is not null);
        sheet.Set(TerminalName, c.Amplifier?.Name ?? ownBlock?.Name);
        if (c.Amplifier?.Amplifier is { } amplifier)
            Set(sheet, TerminalGauge, $"terminals of {amplifier.Name}", amplifier.Terminal, Print, DatumKey.In(amplifier, "terminal"));
        else if (ownBlock is not null)
            Set(sheet, TerminalGauge, $"inlet of {ownBlock.Name}", ownBlock.Gauge, Print, DatumKey.In(ownBlock, "gauge"));
        var leaves = !c.StartsAtBattery && block is not null;
        sheet.Set(LeavesBlock, leaves);
        sheet.Set(BlockName, block?.Name);
        if (leaves)
            Set(sheet, OutletGauge, $"outlets of {block!.Name}", block.Outlet, Print, DatumKey.In(block, "outlet"));
        sheet.Set(HasBlock, ownBlock is not null);
        if (ownBlock is not null)
            Block(c, ownBlock, sheet);
        var untold = c.Run.Fuse is not null && c.StartsAtBattery && holder is null ? c.UntoldPattern : null;
        sheet.Set(HasOwnHolder, untold is null ? holder is not null : null,
            new Unsure($"pattern of {untold?.Name}", "Look whether it is a blade, maxi, midi, mega or ANL fuse, or a holder for such.",
                Estimated: false)
            { Key = DatumKey.In(untold, "fuse_standard") });
        sheet.Set(HolderName, holder?.Name);
        if (holder is null)
            return;
        Set(sheet, HolderGauge, $"gauge that {holder.Name} takes", holder.Gauge, Print, DatumKey.In(holder, "gauge"));
        Set(sheet, HolderLimit, $"current of {holder.Name}", holder.Current, Print, DatumKey.In(holder, "current"));
    }

    /// <summary>Of a device whose supply the build does not plan.</summary>
    public static void ComputeNone(FactSheet sheet)
    {
        foreach (var truth in new[] { EndsInTerminal, LeavesBlock, HasBlock, HasOwnHolder })
            sheet.Set(truth, truth: false);
    }

    private static void Aluminium(SupplyRunContext c, FactSheet sheet)
    {
        WiringPart[] cables = [.. new[] { c.Run.Cable, c.Run.Ground }.OfType<Chosen<WiringPart>>().Select(x => x.Part)];
        var found = Array.Find(cables, p => p.Conductor == "aluminium");
        var untold = Array.Find(cables, p => p.Conductor is null);
        sheet.Set(HasAluminium, found is null && untold is not null ? null : found is not null,
            new Unsure($"conductor of {untold?.Name}", "Scrape a strand: copper is red all through, aluminium is white.",
                Estimated: false)
            { Key = DatumKey.In(untold, "conductor") });
        sheet.Set(AluminiumName, found?.Name ?? "no cable");
    }

    private static void Block(SupplyRunContext c, WiringPart block, FactSheet sheet)
    {
        Set(sheet, BlockLimit, $"current of {block.Name}", block.Current, Print, DatumKey.In(block, "current"));
        sheet.Set(BlockWays, block.Ways is { } ways ? FactValue.Of(Dimension.One, ways)
            : FactValue.Unknown(FactType.Number(Dimension.One),
                new Unsure($"outlets of {block.Name}", "Count the clamps at its outlets.", Estimated: false)
                { Key = DatumKey.In(block, "ways") }));
        sheet.Set(BlockTaken, c.Build.Devices.Count(d => d.Part is Amplifier));
    }

    private static void SetGauge(FactSheet sheet, NumberFact fact, WiringPart? cable)
    {
        if (cable is not null)
            Set(sheet, fact, $"gauge of {cable.Name}", cable.Gauge,
                "Read it from the cable, or measure its strands without the insulation.", DatumKey.In(cable, "gauge"));
    }

    private static void Set(FactSheet sheet, NumberFact fact, string what, Figure? figure, string how, DatumKey? key) =>
        sheet.Set(fact, FactValue.Of(fact.Dimension, figure, what, new Unsure(what, how, Estimated: false) { Key = key }) with
        {
            Shown = figure is not null && fact.Dimension == Dimension.SquareMetre
                ? WireGauge.NameOf(figure.Si) ?? figure.ToString() : null,
        });
}
