using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>
/// Whether tweeter and woofer, front and rear are equally loud at the seat, and how to set the crossover so that they are.
/// </summary>
internal static class LevelFacts
{
    // Where each plays alone: the octaves below any crossover, and those above it in which hearing judges treble (common practice, no
    // source).
    private static readonly double[] WooferBand = FrequencyGrid.Log(250, 1_000, 9), TweeterBand = FrequencyGrid.Log(4_000, 12_500, 9);

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact HasLevelPair = Declarations.Truth(
        "has_level_pair", "The tweeter and the woofer are connected to the same output, so that only the crossover sets their balance.",
        Reads.Network.Itself, Reads.Beside.Itself)
        .Saying("no tweeter beside a woofer on this output");
    public static readonly NumberFact TweeterLevelDifference = Declarations.Number(
        "tweeter_level_difference", Dimension.Decibel,
        "Level of the tweeter above the woofer's at the seat, with the crossover as the build sets it.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly WordFact TweeterLouder = Declarations.Word(
        "tweeter_louder", "Whether the tweeter is louder or quieter than the woofer.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly WordFact ChosenSetting = Declarations.Word(
        "chosen_setting", "The crossover's setting in the build.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly WordFact BestSetting = Declarations.Word(
        "best_setting", "The crossover's setting with which tweeter and woofer are most nearly equal.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly NumberFact BestLevelDifference = Declarations.Number(
        "best_level_difference", Dimension.Decibel, "Level of the tweeter above the woofer's with the best setting.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly TruthFact HasBetterSetting = Declarations.Truth(
        "has_better_setting", "Another setting of the crossover brings tweeter and woofer closer together.",
        Reads.Network.Itself, Reads.Beside.Itself)
        .Saying("no better setting");
    public static readonly WordFact SettingDifferences = Declarations.Word(
        "setting_differences", "Level of the tweeter above the woofer's with each setting.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly WordFact LPad = Declarations.Word(
        "l_pad", "L-pad that takes away what the best setting leaves, of E24 resistors, with the power that each turns into heat.",
        Reads.Network.Itself, Reads.Beside.Itself);
    public static readonly TruthFact IsRearBesideFront = Declarations.Truth(
        "is_rear_beside_front", "A driver behind the listener on the same side as one in front.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself)
        .Saying("no driver in front to compare with");
    public static readonly NumberFact RearOverFront = Declarations.Number(
        "rear_over_front", Dimension.Decibel,
        "Level of the rear driver above the front one's at the front seats, both outputs at their continuous power.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact LevelAtFullPower = Declarations.Number(
        "level_at_full_power", Dimension.Decibel,
        "Level, A-weighted, of this driver at the seat with programme noise at the output's continuous power; the cabin's own gain is "
        + "left out.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);

    public static void Compute(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        sheet.Set(HasLevelPair, false);
        sheet.Set(IsRearBesideFront, false);
        if (c.Driver is not null && c.IsFed is null)
        {
            foreach (var fact in new[] { HasLevelPair, IsRearBesideFront })
                sheet.Set(fact, FactValue.Unknown(FactType.Truth, c.FedBy));
        }
        if (c.Driver is null || c.Channel is null)
            return;
        Pair(c, sheet);
        Rear(c, all, sheet);
        if (c.Driver.Type != "subwoofer" && HeardDriver.Of(c.Channel, c.Placed).Heard is { } heard
            && heard.FullPowerDb() is ({ } volts, var more))
            sheet.Set(LevelAtFullPower, Of(Uncertain.Exact(heard.WeightedDb()) + volts, [.. heard.Unsure, .. more]));
    }

    /// <summary>The woofer that a tweeter shares its output with; null for other drivers and for a tweeter alone.</summary>
    public static Builds.FittedPosition? WooferBeside(PositionContext c) => c.Driver is { IsTweeter: true }
        ? c.Channel?.Channel.Feeds.FirstOrDefault(p => p.Driver?.Part.Type is "woofer" or "full-range") : null;

    private static void Pair(PositionContext c, FactSheet sheet)
    {
        if (WooferBeside(c) is not { } beside)
        {
            Unsure[] perhaps = c.Driver!.IsTweeter
                ? [.. c.Channel!.Channel.PerhapsLeft.Where(p => p.FactoryChannel is null)
                .Select(p => ChannelQuestions.Perhaps(p, estimated: false))]
                : [];
            if (perhaps.Length > 0)
                sheet.Set(HasLevelPair, FactValue.Unknown(FactType.Truth, perhaps));
            return;
        }
        sheet.Set(HasLevelPair, true);
        sheet.Set(HasBetterSetting, false);
        var (tweeter, missing) = HeardDriver.Of(c.Channel!, c.Placed);
        var (woofer, missingToo) = HeardDriver.Of(c.Channel!, beside);
        if (tweeter is null || woofer is null)
        {
            foreach (var fact in new[] { TweeterLevelDifference, BestLevelDifference })
                sheet.Set(fact, FactValue.Unknown(fact.Type, [.. missing, .. missingToo]));
            if (c.Channel!.Channel.Crossover?.Part is { Settings.Count: > 1 })
                sheet.Set(HasBetterSetting, FactValue.Unknown(FactType.Truth, [.. missing, .. missingToo]));
            return;
        }
        IReadOnlyList<Unsure> unsure =
            [.. tweeter.Unsure, .. woofer.Unsure, .. c.Channel!.InductancesUnsure, .. Unread(c.Channel.Channel.Crossover?.Part)];
        var chosen = tweeter.BandDb(TweeterBand) - woofer.BandDb(WooferBand);
        sheet.Set(TweeterLevelDifference, Of(Uncertain.Exact(chosen), unsure));
        sheet.Set(TweeterLouder, chosen > 0 ? "louder" : "quieter");
        var best = chosen;
        if (c.Channel!.Channel.Crossover?.Part is { Settings.Count: > 1 } crossover)
            best = Settings(c, crossover, tweeter, woofer, sheet);
        sheet.Set(BestLevelDifference, Of(Uncertain.Exact(best), unsure));
        // Whether another setting is better hangs on whatever is guessed.
        var isUnread = c.Channel!.Branches.Any(b => b.Unrecorded is not null);
        if (isUnread
            || (unsure.Count > 0 && c.Channel.Channel.Crossover?.Part is { AreSettingsRecorded: false } or { Settings.Count: > 1 }))
            sheet.Set(HasBetterSetting, FactValue.Unknown(FactType.Truth, [.. unsure.Distinct()]));
        sheet.Set(LPad, Pad(c, best, best - chosen, sheet));
    }

    private static Unsure[] Unread(Crossover? crossover) => crossover is { AreSettingsRecorded: false }
        ? [new Unsure($"settings of {crossover.Name}",
            "Look whether it has a jumper or taps for the tweeter; one without any has `tweeter_settings: []`.", Estimated: true)]
        : [];

    private static double Settings(PositionContext c, Crossover crossover, HeardDriver tweeter, HeardDriver woofer, FactSheet sheet)
    {
        var chosen = ChannelModel.Setting(c.Channel!.Channel, crossover)!;
        var (best, nearest, all) = (chosen, double.PositiveInfinity, new List<string>());
        foreach (var setting in crossover.Settings)
        {
            var network = ChannelModel.WithSetting(c.Channel.Channel, setting, c.Channel.Practice)!;
            var difference = tweeter.BandDb(TweeterBand, network) - woofer.BandDb(WooferBand, network);
            all.Add($"{setting.Name}: {Signed(difference)}");
            if (Math.Abs(difference) < Math.Abs(nearest))
                (best, nearest) = (setting, difference);
        }
        sheet.Set(ChosenSetting, chosen.Name);
        sheet.Set(BestSetting, best.Name);
        sheet.Set(HasBetterSetting, best.Name != chosen.Name);
        sheet.Set(SettingDifferences, string.Join("; ", all));
        return nearest;
    }

    private static string Pad(PositionContext c, double decibels, double change, FactSheet sheet)
    {
        if (decibels <= 0 || c.Driver!.Impedance is not { Si: > 0 } load)
            return "none, as no pad can raise a tweeter";
        var pad = Physics.Electrical.Loads.LPad.For(load.Si, decibels).InE24();
        var resistors = $"{Ohms(pad.Series)} in series and {Ohms(pad.Shunt)} across the tweeter";
        if (sheet.Of(TweeterFacts.TweeterPower)?.Number is not { } power)
            return resistors;
        // The pad takes the tweeter's place and, into the same load, its power.
        var shares = pad.PowerShares(load.Si);
        var heat = power.Value * Decibel.ToPower(change);
        return $"{resistors}, which turn {Watts(shares.Series * heat)} and {Watts(shares.Shunt * heat)} into heat";
    }

    private static void Rear(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        if (!PlaysMusic(c) || c.Position.Location is [{ Si: >= 0 }, _, _])
            return;
        var beside = all.Where(o => o != c && PlaysMusic(o) && o.Channel is not null
            && (o.Position.KnownSide ?? c.Position.KnownSide) == (c.Position.KnownSide ?? o.Position.KnownSide)
            && o.Position.Location is not [{ Si: <= 0 }, _, _]).ToList();
        var front = beside.Find(o => o.Position.Location.Count > 0 && o.Position.KnownSide is not null);
        if (beside.Count == 0)
            return;
        // Where one of them is, nobody wrote; the other may be before it or beside it.
        if (front is null || c.Position.Location.Count == 0 || c.Position.KnownSide is null)
        {
            Unsure[] where = [.. beside.Append(c).Where(o => o.Position.Location.Count == 0 || o.Position.KnownSide is null)
                .Select(o => AimFacts.Location(o.Position, estimated: false)).Distinct()];
            sheet.Set(IsRearBesideFront, FactValue.Unknown(FactType.Truth, where));
            sheet.Set(RearOverFront, FactValue.Unknown(FactType.Number(Dimension.Decibel), where));
            return;
        }
        sheet.Set(IsRearBesideFront, true);
        var (behind, missing) = HeardDriver.Of(c.Channel!, c.Placed);
        var (before, missingToo) = HeardDriver.Of(front.Channel!, front.Placed);
        if (behind is null || before is null)
            sheet.Set(RearOverFront, FactValue.Unknown(FactType.Number(Dimension.Decibel), [.. missing, .. missingToo]));
        else if (behind.FullPowerDb() is ({ } rear, var more) && before.FullPowerDb() is ({ } ahead, var moreToo))
            sheet.Set(RearOverFront,
                Of(Uncertain.Exact(behind.BandDb(WooferBand) - before.BandDb(WooferBand)) + rear - ahead,
                    [.. behind.Unsure, .. before.Unsure, .. more, .. moreToo]));
        else
            sheet.Set(RearOverFront, FactValue.Unknown(FactType.Number(Dimension.Decibel), behind.NoPower, before.NoPower));
    }

    private static bool PlaysMusic(PositionContext c) =>
        c.Driver is { Type: "woofer" or "full-range" or "coaxial" } && c.Position.Place != "cargo";

    private static FactValue Of(Uncertain decibels, IReadOnlyList<Unsure> unsure) =>
        FactValue.Of(Dimension.Decibel, decibels) with { Unsure = [.. unsure.Distinct()] };

    private static string Signed(double decibels) => decibels.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) + " dB";

    private static string Ohms(double ohm) => QuantityText.Format(ohm, Dimension.Ohm);

    private static string Watts(double watt) => QuantityText.Format(watt, Dimension.Watt);
}
