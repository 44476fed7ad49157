using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether a stated power rating can stand beside the others of the same device, its supply and its fuses.</summary>
internal static class RatingFacts
{
    public static readonly FactGroup Declarations = new(Subject.Rating);

    public static readonly WordFact RatingDevice = Declarations.Word("rating_device", "Name of the device.", Reads.Entry.Itself);
    public static readonly WordFact RatingText = Declarations.Word("rating_text", "The rating in words.", Reads.Entry.Itself);
    public static readonly WordFact RatingCompared = Declarations.Word(
        "rating_compared", "The rating with which it is compared, in words.",
        Reads.Entry.Itself);
    public static readonly TruthFact RatingIsPeak = Declarations.Truth(
        "rating_is_peak", "The rating is a peak figure.",
        Reads.Entry.Itself);
    public static readonly NumberFact RatingRise = Declarations.Number(
        "rating_rise", Dimension.One,
        "Power times load, over the same of the next higher load: an output of given voltage never gets above 1.",
        Reads.Entry.Itself);
    public static readonly NumberFact BridgedToHalves = Declarations.Number(
        "bridged_to_halves", Dimension.One, "Bridged power over twice the power of one channel into half the load.",
        Reads.Entry.Itself);
    public static readonly NumberFact RatingPower = Declarations.Number(
        "rating_power", Dimension.Watt, "Power of the rating.",
        Reads.Entry.Itself);
    public static readonly NumberFact SupplyCeiling = Declarations.Number(
        "supply_ceiling", Dimension.Watt, "Highest sine power that 14.4 V without a supply converter give into this load.",
        Reads.Entry.Itself);
    public static readonly NumberFact RatingToCeiling = Declarations.Number(
        "rating_to_ceiling", Dimension.One, "Power over that ceiling, for devices without a supply converter.",
        Reads.Entry.Itself);
    public static readonly NumberFact RatingCurrent = Declarations.Number(
        "rating_current", Dimension.Ampere,
        "Supply current of all channels together at this rating, at the stated efficiency or else without loss.",
        Reads.Entry.Itself);
    public static readonly NumberFact DeviceFuses = Declarations.Number(
        "device_fuses", Dimension.Ampere, "Fuses on the device together.",
        Reads.Entry.Itself);
    public static readonly NumberFact CurrentToFuses = Declarations.Number(
        "current_to_fuses", Dimension.One, "That current over the fuses on the device.",
        Reads.Entry.Itself);

    public static IEnumerable<FactTable> Of(Entry entry)
    {
        var (ratings, converter) =
            entry switch
            {
                Amplifier a => (a.Ratings, a.PowerConverter ?? true),
                SourceUnit s => (s.Ratings, s.PowerConverter ?? false),
                _ => ([], true)
            };
        foreach (var rating in ratings)
        {
            var sheet = new FactSheet();
            sheet.Set(RatingDevice, entry.Name);
            sheet.Set(RatingText, Text(rating));
            sheet.Set(RatingIsPeak, rating.Peak);
            sheet.Set(RatingPower, rating.Power.Si);
            Neighbour(rating, ratings, sheet);
            if (!converter && !rating.Bridged && rating.Load.Si > 0)
                Ceiling(rating, sheet);
            if (entry is Amplifier amplifier)
                Fuses(rating, amplifier, sheet);
            yield return new FactTable(Subject.Rating, entry.Id, entry.Name, sheet.Values) { At = rating.Power.At };
        }
    }

    private static void Neighbour(Rating rating, IReadOnlyList<Rating> all, FactSheet sheet)
    {
        var alike = all.Where(r => r.Peak == rating.Peak).ToList();
        if (alike.Where(r => r.Bridged == rating.Bridged && r.Load.Si > rating.Load.Si).MinBy(r => r.Load.Si) is { } higher)
        {
            sheet.Set(RatingCompared, Text(higher));
            sheet.Set(RatingRise, Beside(rating, higher, rating.Power.Si * rating.Load.Si / (higher.Power.Si * higher.Load.Si)));
        }
        if (rating.Bridged && alike.Find(r => !r.Bridged && Math.Abs((2 * r.Load.Si) - rating.Load.Si) < 1e-9) is { } half)
        {
            sheet.Set(RatingCompared, Text(half));
            sheet.Set(BridgedToHalves, Beside(rating, half, rating.Power.Si / (2 * half.Power.Si)));
        }
    }

    private static void Ceiling(Rating rating, FactSheet sheet)
    {
        var ceiling = OutputRating.Ceiling(rating.Load.Si);
        sheet.Set(SupplyCeiling, ceiling);
        sheet.Set(RatingToCeiling,
            FactValue.Of(Dimension.One, rating.Power.Si / ceiling)
                with
            { Data = [Cited(rating.Power, "power"), Cited(rating.Load, "load")] });
    }

    private static void Fuses(Rating rating, Amplifier amplifier, FactSheet sheet)
    {
        if (amplifier.Fuses.Count == 0 || rating.Supply is not { Si: > 0 } supply || rating.AllChannels != true)
            return;
        var outputs = rating.Bridged ? amplifier.Channels / 2 : amplifier.Channels;
        var current = outputs * rating.Power.Si / ((amplifier.Efficiency?.Si ?? 1) * supply.Si);
        var fuses = amplifier.Fuses.Sum(f => f.Si);
        sheet.Set(RatingCurrent, current);
        sheet.Set(DeviceFuses, fuses);
        sheet.Set(CurrentToFuses,
            FactValue.Of(Dimension.One, current / fuses)
                with
            { Data = [Cited(rating.Power, "power"), .. amplifier.Fuses.Select(f => Cited(f, "fuse"))] });
    }

    private static FactValue Beside(Rating doubted, Rating other, double ratio) => FactValue.Of(Dimension.One, ratio) with
    {
        Data = [new Datum(Text(doubted), doubted.Power.At), new Datum(Text(other), other.Power.At)],
    };

    private static Datum Cited(Figure figure, string what) => new(what, figure);

    private static string Text(Rating r) => $"{r.Power} into {r.Load}{(r.Bridged ? " bridged" : "")}";
}
