using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Outputs;

/// <summary>Whether the electronic filters that a build sets on an output are there.</summary>
internal static class FilterFacts
{
    public static readonly FactGroup Declarations = new(Subject.Channel);

    public static readonly TruthFact SetsHighPass = Declarations.Truth(
        "sets_high_pass", "The build sets an electronic high-pass on this output.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself)
        .Saying("no high-pass set");
    public static readonly TruthFact HighPassIsThere = Declarations.Truth(
        "high_pass_is_there", "The output's device, or one before it, can make the high-pass that the build sets.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact HighPassCorner = Declarations.Word(
        "high_pass_corner", "Corner of the electronic high-pass that the build sets.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact HighPassMaker = Declarations.Word(
        "high_pass_maker", "The device that makes the high-pass.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact HighPassLimits = Declarations.Word(
        "high_pass_limits", "From where to where the high-pass of the output's device can be set.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly TruthFact SetsLowPass = Declarations.Truth(
        "sets_low_pass", "The build sets an electronic low-pass on this output.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself)
        .Saying("no low-pass set");
    public static readonly TruthFact LowPassIsThere = Declarations.Truth(
        "low_pass_is_there", "The output's device, or one before it, can make the low-pass that the build sets.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact LowPassCorner = Declarations.Word(
        "low_pass_corner", "Corner of the electronic low-pass that the build sets.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact LowPassMaker = Declarations.Word(
        "low_pass_maker", "The device that makes the low-pass.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact LowPassLimits = Declarations.Word(
        "low_pass_limits", "From where to where the low-pass of the output's device can be set.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly TruthFact HasFilter = Declarations.Truth(
        "has_filter",
        "A device can make the corner of a filter that the build sets, or may, so its slope is asked for; not where it leaves a tweeter "
        + "bare, which is told there.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself)
        .Saying("no filter that could be there");
    public static readonly TruthFact SlopeIsThere = Declarations.Truth(
        "slope_is_there", "The filters that the build sets can be made as steep as it sets them.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact SlopeSet = Declarations.Word(
        "slope_set", "The slope that is asked for, or the first that is not there: `24 dB/octave of the high-pass at 80 Hz`.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly WordFact SlopesThere = Declarations.Word(
        "slopes_there", "How steep the filters of the device are that makes it.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself);
    public static readonly TruthFact TweeterNeedsHighPass = Declarations.Truth(
        "tweeter_needs_high_pass",
        "A tweeter on this output has no other high-pass than the electronic one, so what is wrong with it is told there.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself)
        .Saying("no tweeter needs it", "told at the tweeter");

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        Set(c.HighPassSet, new Keys(SetsHighPass, HighPassIsThere, HighPassCorner, HighPassMaker, HighPassLimits), sheet);
        Set(c.LowPassSet, new Keys(SetsLowPass, LowPassIsThere, LowPassCorner, LowPassMaker, LowPassLimits), sheet);
        var atTweeter = c.Branches.Any(b => b.Doubted is not null && b.HighPasses.Count == 0 && !b.FeedUnknown);
        sheet.Set(TweeterNeedsHighPass, atTweeter);
        var highPass = atTweeter && c.HighPassSet?.Exists == false ? null : c.HighPassSet;
        Slopes([.. new[] { highPass, c.LowPassSet }.OfType<FilterCheck>().Where(f => f.IsThere != false)], sheet);
    }

    // Of two filters the worse one is told.
    private static void Slopes(List<FilterCheck> filters, FactSheet sheet)
    {
        sheet.Set(HasFilter, filters.Count > 0);
        if (filters.Count == 0)
            return;
        var told = filters.Find(f => f.IsAsSteep == false) ?? filters.Find(f => f.IsAsSteep is null) ?? filters[0];
        sheet.Set(SlopeIsThere, (told.IsAsSteep is { } steep ? FactValue.Of(steep)
            : FactValue.Unknown(FactType.Truth, [.. filters.Where(f => f.IsAsSteep is null).Select(f => f.SlopeUnsure).Distinct()]))
            with
        { Data = told.SlopeData });
        sheet.Set(SlopeSet, told.Slope);
        sheet.Set(SlopesThere, told.Slopes);
    }

    private static void Set(FilterCheck? filter, Keys keys, FactSheet sheet)
    {
        sheet.Set(keys.Set, filter is not null);
        if (filter is null)
            return;
        sheet.Set(keys.IsThere,
            (filter.IsThere is { } there ? FactValue.Of(there) : FactValue.Unknown(FactType.Truth, filter.Unsure))
                with
            { Data = filter.Data });
        sheet.Set(keys.Corner, filter.Corner);
        sheet.Set(keys.Maker, filter.By.Part.Name);
        sheet.Set(keys.Limits, filter.Limits);
    }

    // The facts of one of the two filters.
    private sealed record Keys(TruthFact Set, TruthFact IsThere, WordFact Corner, WordFact Maker, WordFact Limits);
}
