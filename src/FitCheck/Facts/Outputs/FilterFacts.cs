using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Outputs;

/// <summary>Whether the electronic filters that a build sets on an output are there.</summary>
internal static class FilterFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        .. Of("high_pass", "high-pass"),
        .. Of("low_pass", "low-pass"),
        Declare.Truth(Subject.Channel, "tweeter_needs_high_pass", "A tweeter on this output has no other high-pass than the electronic one, so what is wrong with it is told there."),
    ];

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        Set(c.HighPassSet, "high_pass", sheet);
        Set(c.LowPassSet, "low_pass", sheet);
        sheet.Set("tweeter_needs_high_pass", c.Branches.Any(b => b.Doubted is not null && b.HighPasses.Count == 0 && !b.FeedUnknown));
    }

    private static IEnumerable<FactDeclaration> Of(string stem, string kind) =>
    [
        Declare.Truth(Subject.Channel, $"sets_{stem}", $"The build sets an electronic {kind} on this output."),
        Declare.Truth(Subject.Channel, $"{stem}_is_there", $"The output's device, or one before it, can make the {kind} that the build sets."),
        Declare.Word(Subject.Channel, $"{stem}_corner", $"Corner of the electronic {kind} that the build sets."),
        Declare.Word(Subject.Channel, $"{stem}_maker", $"The device that makes the {kind}."),
        Declare.Word(Subject.Channel, $"{stem}_limits", $"From where to where the {kind} of the output's device can be set."),
    ];

    private static void Set(FilterCheck? filter, string stem, FactSheet sheet)
    {
        sheet.Set($"sets_{stem}", filter is not null);
        if (filter is null)
            return;
        sheet.Set($"{stem}_is_there", (filter.IsThere is { } there ? FactValue.Of(there) : FactValue.Unknown(FactType.Truth, filter.Unsure)) with { Data = filter.Data });
        sheet.Set($"{stem}_corner", filter.Corner);
        sheet.Set($"{stem}_maker", filter.By.Part.Name);
        sheet.Set($"{stem}_limits", filter.Limits);
    }
}
