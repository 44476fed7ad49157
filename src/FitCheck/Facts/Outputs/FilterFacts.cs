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
    public static readonly TruthFact TweeterNeedsHighPass = Declarations.Truth(
        "tweeter_needs_high_pass",
        "A tweeter on this output has no other high-pass than the electronic one, so what is wrong with it is told there.",
        Reads.OwnFilters.Itself, Reads.OwnNetwork.Itself)
        .Saying("no tweeter needs it", "told at the tweeter");

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        Set(c.HighPassSet, new Keys(SetsHighPass, HighPassIsThere, HighPassCorner, HighPassMaker, HighPassLimits), sheet);
        Set(c.LowPassSet, new Keys(SetsLowPass, LowPassIsThere, LowPassCorner, LowPassMaker, LowPassLimits), sheet);
        sheet.Set(TweeterNeedsHighPass, c.Branches.Any(b => b.Doubted is not null && b.HighPasses.Count == 0 && !b.FeedUnknown));
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
