using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;

namespace FitCheck.Facts.Wiring;

/// <summary>
/// One side of the vehicle against the other: what is fitted, and how it is mounted, filtered, set and wired. Told once, at the first of
/// both that gets a driver.
/// </summary>
internal static class SideFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact SidesCompared = Declarations.Truth(
        "sides_compared", "It gets a driver, has a counterpart on the other side, and is the one of both where differences are told.",
        Reads.BothSides.Itself)
        .Saying("no counterpart, or told there");
    public static readonly TruthFact OtherSideFitted = Declarations.Truth(
        "other_side_fitted", "The counterpart on the other side gets a driver too.",
        Reads.BothSides.Itself);
    public static readonly WordFact OtherSide = Declarations.Word(
        "other_side", "Name of the counterpart on the other side.",
        Reads.BothSides.Itself);
    public static readonly TruthFact DriverAlike = Alike("driver_alike", "Both sides have the same driver.");
    public static readonly TruthFact MountingAlike = Alike(
        "mounting_alike", "Both sides have the same spacer or a pair of them, the same cup, rings, tapes and screws.");
    public static readonly TruthFact FiltersAlike = Alike(
        "filters_alike", "Both sides have the same filters, crossover and parts in line.");
    public static readonly TruthFact SettingsAlike = Alike("settings_alike", "Both sides have the same jumper setting, limit and gain.");
    public static readonly TruthFact WiringAlike = Alike("wiring_alike", "Both sides are wired the same way.");
    public static readonly TruthFact OutputsAlike = Alike("outputs_alike", "Both sides are fed by outputs of the same kind.");
    public static readonly WordFact DriverDifference = Difference("driver_difference", "The drivers of both sides.");
    public static readonly WordFact MountingDifference = Difference("mounting_difference", "What is mounted otherwise.");
    public static readonly WordFact FilterDifference = Difference("filter_difference", "The filters of both sides.");
    public static readonly WordFact SettingDifference = Difference("setting_difference", "The settings of both sides.");
    public static readonly WordFact WiringDifference = Difference("wiring_difference", "The wires of both sides.");
    public static readonly WordFact OutputDifference = Difference("output_difference", "What feeds both sides.");
    public static readonly TruthFact WantsTweeter = Declarations.Truth(
        "wants_tweeter", "A woofer without a tweeter of its own is fitted where the vehicle has a position for a tweeter beside it.",
        Reads.Loom.Itself)
        .Saying("no position for a tweeter beside it");
    public static readonly TruthFact TweeterPlays = Declarations.Truth(
        "tweeter_plays", "A tweeter plays beside the woofer, a new one or the factory's.",
        Reads.Loom.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        Treble(c, sheet);
        var other = Sides.Other(c.Build.Vehicle, c.Position.Id);
        var placed = other is null ? null : c.Build.Placed.FirstOrDefault(p => p.Position.Id == other.Id);
        var isFitted = placed?.Driver is not null;
        var isFirst = !isFitted || c.Build.Placed.TakeWhile(p => p.Position.Id != other!.Id).Contains(c.Placed);
        var isCompared = c.Driver is not null && other is not null && isFirst;
        sheet.Set(SidesCompared, isCompared);
        if (!isCompared)
            return;
        sheet.Set(OtherSide, other!.Name);
        sheet.Set(OtherSideFitted, isFitted);
        if (!isFitted)
            return;
        var (here, there) = (Of(c.Build, c.Placed), Of(c.Build, placed!));
        Compare(DriverAlike, DriverDifference, s => s.Driver);
        Compare(MountingAlike, MountingDifference, s => s.Mounting);
        Compare(WiringAlike, WiringDifference, s => s.Wiring);
        if (here.Output.Count == 0 || there.Output.Count == 0)
            return;
        Compare(OutputsAlike, OutputDifference, s => s.Output);
        Compare(FiltersAlike, FilterDifference, s => s.Filters);
        Compare(SettingsAlike, SettingDifference, s => s.Settings);

        void Compare(TruthFact alike, WordFact difference, Func<OneSide, IReadOnlyList<string>> of)
        {
            var (only, others) = (Without(of(here), of(there)), Without(of(there), of(here)));
            sheet.Set(alike, only.Count == 0 && others.Count == 0);
            sheet.Set(difference, $"{Told(only)} here, {Told(others)} on the other side");
        }
    }

    private static List<string> Without(IReadOnlyList<string> some, IReadOnlyList<string> others) =>
        [.. some.Where(s => some.Count(x => x == s) > others.Count(x => x == s)).Distinct(StringComparer.Ordinal)];

    private static string Told(List<string> parts) => parts.Count == 0 ? "nothing of the kind"
        : string.Join(" and ", parts.Select(SpokenName.Of));

    private static OneSide Of(Build build, FittedPosition placed) =>
        OneSide.Of(placed, build.Channels.FirstOrDefault(c => c.Feeds.Contains(placed)));

    private static void Treble(PositionContext c, FactSheet sheet)
    {
        var tweeters = c.Driver is not { Type: "woofer" } || c.Position.Role == "tweeter" ? []
            : c.Build.Vehicle.Positions.Where(p => p.Role == "tweeter" && IsBeside(p, c.Position)
                && Sides.Axle(p) == Sides.Axle(c.Position)).ToList();
        // Where nobody wrote which side it is, a tweeter may be beside it.
        var isOpen = tweeters.Count > 0 && (c.Position.KnownSide is null || tweeters.TrueForAll(t => t.KnownSide is null));
        sheet.Set(WantsTweeter, isOpen ? null : tweeters.Count > 0, Fitting.PlaceFacts.SideOf(c));
        if (tweeters.Count > 0)
            sheet.Set(TweeterPlays, tweeters.Exists(t =>
                c.Build.Placed.FirstOrDefault(p => p.Position.Id == t.Id) is not { Driver: null, Disconnected: true }));
    }

    private static bool IsBeside(Position one, Position other) =>
        one.KnownSide is null || other.KnownSide is null || one.Side == other.Side;

    private static TruthFact Alike(string name, string meaning) => Declarations.Truth(name, meaning, Reads.BothSides.Itself);

    private static WordFact Difference(string name, string meaning) => Declarations.Word(name, meaning, Reads.BothSides.Itself);
}
