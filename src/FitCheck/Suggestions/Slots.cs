using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>Everything in a build that may be chosen otherwise.</summary>
internal static class Slots
{
    // Slots with few options are numbered apart, for what is known of combinations is kept by number.
    private const int FirstOfFew = 1_000;

    /// <summary>All but what is to be kept.</summary>
    public static IReadOnlyList<Slot> Of(Bench bench, PartsCatalog catalog, bool currentOnly, IReadOnlyList<string> keep) => Of(bench, new Stock(catalog, currentOnly), keep, 0);

    /// <summary>The same with few options each, so that few parts have to be read.</summary>
    public static IReadOnlyList<Slot> Of(Bench bench, PartsCatalog catalog, bool currentOnly, IReadOnlyList<string> keep, Sample sample) =>
        Of(bench, new Stock(catalog, currentOnly) { Sample = sample }, keep, FirstOfFew * sample.Most);

    private static List<Slot> Of(Bench bench, Stock stock, IReadOnlyList<string> keep, int firstIndex)
    {
        var ground = new Ground(bench.Build, bench.Root, new YamlEditor(bench.Text), stock);
        List<Slot> slots = [.. FitSlots.Of(ground), .. SundrySlots.Of(ground), .. ChannelSlots.Of(ground), .. OutputSlots.Of(ground), .. DeviceSlots.Of(ground), .. SupplySlots.Of(ground)];
        slots.RemoveAll(s => IsKept(s, keep));
        for (var i = 0; i < slots.Count; i++)
            slots[i].Index = firstIndex + i;
        return slots;
    }

    private static bool IsKept(Slot slot, IReadOnlyList<string> keep) =>
        (slot.Now is { } now && keep.Contains(now, StringComparer.Ordinal)) || slot.Where.Any(w => keep.Contains(w, StringComparer.Ordinal));
}
