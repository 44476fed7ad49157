using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>Which band is left to a driver, and whether another one goes on where it ends.</summary>
internal static class BandFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact BandLevel = Declarations.Number(
        "band_level", Dimension.Decibel,
        "Highest level that the filters leave to the driver, against that without filters: about 0 dB, and less where they leave no band.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact BandLow = Declarations.Number(
        "band_low", Dimension.Hertz, "Where the band begins that the filters leave to the driver (3 dB down); 20 Hz without a high-pass.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact BandHigh = Declarations.Number(
        "band_high", Dimension.Hertz, "Where that band ends; 20 kHz without a low-pass.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly TruthFact IsOnStage = Declarations.Truth(
        "is_on_stage", "The driver is fed and neither a tweeter nor a subwoofer, nor in a subwoofer's place.",
        Reads.DriverThere.Itself, Reads.Place["role", "factory_channel"], Reads.Feed.Itself)
        .Saying("no woofer that is fed");
    public static readonly NumberFact StageLow = Declarations.Number(
        "stage_low", Dimension.Hertz,
        "The lowest frequency of this driver and all that play along: subwoofers, others at the same end and side; in the rear those in "
        + "front too. A factory driver that stays counts as 20 Hz.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact StageHigh = Declarations.Number(
        "stage_high", Dimension.Hertz,
        "The highest frequency of this driver and all that play along at the same end and side; in the rear those in front too. A factory "
        + "driver that stays counts as 20 kHz.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly TruthFact HasWooferBelow = Declarations.Truth(
        "has_woofer_below", "A woofer of the build plays at the same end and side as this tweeter, or on its output.",
        Reads.DriverThere.Itself, Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself)
        .Saying("no woofer of the build below it");
    public static readonly NumberFact WooferBandHigh = Declarations.Number(
        "woofer_band_high", Dimension.Hertz, "Where the band of that woofer ends; 20 kHz without a low-pass.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact WooferMeetingLevel = Declarations.Number(
        "woofer_meeting_level", Dimension.Decibel,
        "How loud tweeter and woofer are where they meet, each against its own passband: the quieter one, where it is loudest.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact WooferMeeting = Declarations.Number(
        "woofer_meeting", Dimension.Hertz, "Where that is.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly TruthFact HasDoorsAbove = Declarations.Truth(
        "has_doors_above", "Drivers of the build, and no factory ones, play in front above this subwoofer.",
        Reads.DriverThere.Itself, Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact DoorsBandLow = Declarations.Number(
        "doors_band_low", Dimension.Hertz,
        "Where the lowest of those drivers begins, by its filters or by its own resonance, whichever lies higher.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself, Reads.Box.Itself);

    public static readonly NumberFact DoorsMeetingLevel = Declarations.Number(
        "doors_meeting_level", Dimension.Decibel,
        "How loud subwoofer and doors are where they meet, each against its own passband: the quieter one, where it is loudest.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact DoorsMeeting = Declarations.Number(
        "doors_meeting", Dimension.Hertz, "Where that is.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);

    public static void Compute(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        sheet.Set(HasWooferBelow, false);
        sheet.Set(HasDoorsAbove, false);
        sheet.Set(IsOnStage, PlaysMusic(c));
        if (c.Driver is not { } driver || c.Channel is not { } channel)
            return;
        var own = channel.Band(c.Position.Id);
        sheet.Set(BandLevel, Of(Dimension.Decibel, own?.Within(b => b.Band.PeakDb), own, channel));
        sheet.Set(BandLow, Of(Dimension.Hertz, own?.Within(b => b.Band.LowHz), own, channel));
        sheet.Set(BandHigh, Of(Dimension.Hertz, own?.Within(b => b.Band.HighHz), own, channel));
        if (driver.IsTweeter)
            Tweeter(c, all, sheet);
        else if (driver.Type == "subwoofer" || c.Position.Role == "subwoofer")
            Subwoofer(c, all, sheet);
        else
            Stage(c, all, sheet);
    }

    private static void Tweeter(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        var near = all.Where(o => PlaysMusic(o) && (o.Channel == c.Channel || IsBeside(o, c) != false)).ToList();
        var sure = near.Where(o => o.Channel == c.Channel || IsBeside(o, c) == true).ToList();
        sheet.Set(HasWooferBelow, sure.Count > 0 || near.Count == 0 ? FactValue.Of(sure.Count > 0) : NobodyWroteWhere(near.Append(c)));
        if (near.Count == 0)
            return;
        var woofers = sure.Count > 0 ? sure : near;
        // A low-pass that nobody recorded is not "none".
        Unsure[] unread = [.. woofers.Select(o => o.Channel!.Band(o.Position.Id)?.Unrecorded).OfType<Unsure>().Distinct()];
        sheet.Set(WooferBandHigh, unread.Length > 0 ? FactValue.Unknown(FactType.Number(Dimension.Hertz), unread)
            : Farthest(woofers, highest: true, band => band.Band.HighHz));
        Meet(c, woofers, (WooferMeetingLevel, WooferMeeting), sheet);
    }

    private static void Subwoofer(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        var near = all.Where(o => PlaysMusic(o) && (IsUnplaced(o.Position) || IsFront(o.Position))).ToList();
        var sure = near.Where(o => IsFront(o.Position)).ToList();
        var there = near.Count > 0 && !c.Build.Vehicle.Positions.Any(p => IsFront(p) && p.Role != "tweeter" && IsUntouched(p, all));
        sheet.Set(HasDoorsAbove, there && sure.Count == 0 ? NobodyWroteWhere(near) : FactValue.Of(there));
        if (!there)
            return;
        var front = sure.Count > 0 ? sure : near;
        sheet.Set(DoorsBandLow, front.Select(BeginningOf).Aggregate((a, b) => Pick(a, b, highest: false)));
        Meet(c, front, (DoorsMeetingLevel, DoorsMeeting), sheet);
    }

    // The best of several meetings counts: it is the one that is heard.
    private static void Meet(PositionContext c, List<PositionContext> others, (NumberFact Level, NumberFact Place) facts, FactSheet sheet)
    {
        (double Hz, Uncertain Db)? best = null;
        var unsure = new List<Unsure>(c.Channel!.Band(c.Position.Id)?.Unsure ?? c.Channel.Unsure);
        foreach (var other in others)
        {
            var band = other.Channel!.Band(other.Position.Id);
            unsure.AddRange(band?.Unsure ?? other.Channel.Unsure);
            if (band is null || c.Channel.Band(c.Position.Id) is not { } own)
                continue;
            var meeting = own.Meeting(band);
            if (best is null || meeting.Db.Value > best.Value.Db.Value)
                best = meeting;
        }
        sheet.Set(facts.Level, best is { } found ? FactValue.Of(Dimension.Decibel, found.Db) with { Unsure = [.. unsure.Distinct()] }
            : FactValue.Unknown(FactType.Number(Dimension.Decibel), [.. unsure.Distinct()]));
        sheet.Set(facts.Place, best?.Hz);
    }

    private static void Stage(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        var beside = all.Where(o => o.Driver is { Type: not "subwoofer" } && o.Channel is not null && PlaysAlong(o.Position, c.Position))
            .ToList();
        var woofers = beside.Where(o => o.Driver is { IsTweeter: false })
            .Concat(all.Where(o => o.Driver is { Type: "subwoofer" } && o.Channel is not null)).ToList();
        var (low, high) = (Farthest(woofers, highest: false, b => b.Band.LowHz), Farthest(beside, highest: true, b => b.Band.HighHz));
        var factory = c.Build.Vehicle.Positions
            .Where(p => p.Id != c.Position.Id && PlaysAlong(p, c.Position) && IsUntouched(p, all)).ToList();
        sheet.Set(StageLow, factory.Exists(p => p.Role != "tweeter") ? Bound(FrequencyGrid.Lowest) : low);
        sheet.Set(StageHigh, factory.Count > 0 ? Bound(FrequencyGrid.Highest) : high);
    }

    // The driver's own resonance ends its bass where no filter does; a driver whose sheet is silent may begin at either.
    private static FactValue BeginningOf(PositionContext c)
    {
        var filtered = Farthest([c], highest: false, b => b.Band.LowHz);
        if (ResonanceOf(c) is not ({ } hz, { } q))
            return filtered with { Unsure = [.. filtered.Unsure, Resonance(c, estimated: filtered.Number is not null)] };
        var own = hz * ClosedBox.HalfPowerRatio(q);
        return filtered.Number is { } number && number.Value < own ? filtered with { Number = Uncertain.Exact(own) } : filtered;
    }

    // In its box, or as in an infinite baffle.
    private static (double Hz, double Q)? ResonanceOf(PositionContext c)
    {
        if (c.Driver!.Parameters is not { Fs: { Si: > 0 } fs, Qes: { } qes, Qms: { } qms } parameters)
            return null;
        var stiffening = c.Placed.Box is { Si: > 0 } box && parameters.Vas is { Si: > 0 } vas ? ClosedBox.Stiffening(vas.Si, box.Si) : 1;
        return (fs.Si * stiffening, ThieleSmall.TotalQ(qes, qms) * stiffening);
    }

    private static Unsure Resonance(PositionContext c, bool estimated) =>
        new($"resonance of {c.Driver!.Name}", "Ask the maker for fs, Qes and Qms.", estimated);

    /// <summary>The end of a band that lies farthest up or down among several drivers.</summary>
    public static FactValue Farthest(List<PositionContext> among, bool highest, Func<DriverBand, double> end) =>
        among.Select(o =>
        {
            var band = o.Channel!.Band(o.Position.Id);
            return Of(Dimension.Hertz, band?.Within(end), band, o.Channel!);
        }).Aggregate((a, b) => Pick(a, b, highest));

    /// <summary>The higher or the lower one of two frequencies; unknown where one of them is.</summary>
    public static FactValue Pick(FactValue one, FactValue other, bool highest)
    {
        if (one.Number is not { } a || other.Number is not { } b)
            return FactValue.Unknown(FactType.Number(Dimension.Hertz), [.. one.Unsure, .. other.Unsure]);
        return (highest ? a.Value >= b.Value : a.Value <= b.Value) ? one : other;
    }

    private static FactValue Of(Dimension dimension, Uncertain? number, DriverBand? band, ChannelContext channel) => number is { } there
        ? FactValue.Of(dimension, there) with { Unsure = [.. band!.Unsure.Distinct()] }
        : FactValue.Unknown(FactType.Number(dimension), [.. channel.Unsure]);

    private static FactValue Bound(double hz) => FactValue.Of(Dimension.Hertz, hz);

    private static bool PlaysMusic(PositionContext c) =>
        c.Driver is { IsTweeter: false, Type: not "subwoofer" } && c.Channel is not null && c.Position.Role != "subwoofer";

    private static bool PlaysAlong(Position other, Position here) =>
        other.Role != "subwoofer" && (other.Side == here.Side || other.Side == "centre")
        && (IsFront(other) || !IsFront(here));

    /// <summary>At the same end and on the same side; null where nobody wrote which these are and nothing else rules it out.</summary>
    public static bool? IsBeside(PositionContext a, PositionContext b)
    {
        var (sideOpen, endOpen) = (a.Position.KnownSide is null || b.Position.KnownSide is null,
            IsUnplaced(a.Position) || IsUnplaced(b.Position));
        if (!(sideOpen || a.Position.Side == b.Position.Side) || !(endOpen || IsFront(a.Position) == IsFront(b.Position)))
            return false;
        return sideOpen || endOpen ? null : true;
    }

    /// <summary>An unknown truth that asks where these places are.</summary>
    public static FactValue NobodyWroteWhere(IEnumerable<PositionContext> among) => FactValue.Unknown(FactType.Truth,
        [.. among.Where(o => IsUnplaced(o.Position) || o.Position.KnownSide is null)
            .Select(o => AimFacts.Location(o.Position, estimated: false)).Distinct()]);

    private static bool IsUnplaced(Position position) => position.Location.Count == 0;

    private static bool IsFront(Position position) => position.Location is [{ Si: > 0 }, _, _];

    // A factory driver plays there as before.
    private static bool IsUntouched(Position position, IReadOnlyList<PositionContext> all) => position.FactoryImpedance is not null
        && !all.Any(o => o.Position.Id == position.Id && (o.Driver is not null || o.Placed.Disconnected));
}
