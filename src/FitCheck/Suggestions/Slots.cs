using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>Everything in a build that may be chosen otherwise.</summary>
internal static class Slots
{
    /// <summary>All but what is to be kept.</summary>
    public static IReadOnlyList<Slot> Of(Bench bench, PartsCatalog catalog, bool currentOnly, IReadOnlyList<string> keep)
    {
        var ground = new Ground(bench.Build, bench.Root, new YamlEditor(bench.Text), new Stock(catalog, currentOnly));
        List<Slot> slots = [.. FitSlots.Of(ground), .. SundrySlots.Of(ground), .. ChannelSlots.Of(ground), .. OutputSlots.Of(ground), .. DeviceSlots.Of(ground), .. SupplySlots.Of(ground)];
        slots.RemoveAll(s => IsKept(s, keep));
        for (var i = 0; i < slots.Count; i++)
            slots[i].Index = i;
        return slots;
    }

    private static bool IsKept(Slot slot, IReadOnlyList<string> keep) =>
        (slot.Now is { } now && keep.Contains(now, StringComparer.Ordinal)) || slot.Where.Any(w => keep.Contains(w, StringComparer.Ordinal));
}
