using FitCheck.Catalog;
using FitCheck.Suggestions.Choices;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Trials;

/// <summary>Everything in a build that may be chosen otherwise.</summary>
internal static class Slots
{
    // Slots with few options are numbered apart, for what is known of combinations is kept by number.
    private const int FirstOfFew = 1_000;

    /// <summary>All but what is to be kept.</summary>
    public static IReadOnlyList<Slot> Of(ProposalEvaluator evaluator, PartsCatalog catalog, bool currentOnly,
        IReadOnlyList<string> keep) => Of(Ground(evaluator, new Stock(catalog, currentOnly), new YamlEditor(evaluator.Text)), keep, 0);

    /// <summary>All but what is to be kept, with few options each, so that few parts have to be read.</summary>
    public static IReadOnlyList<Slot> Of(ProposalEvaluator evaluator, PartsCatalog catalog, bool currentOnly, IReadOnlyList<string> keep,
        Sample sample) =>
        Of(Ground(evaluator, new Stock(catalog, currentOnly) { Sample = sample }, new YamlEditor(evaluator.Text)), keep,
            FirstOfFew * sample.Most);

    /// <summary>
    /// All but what is to be kept, and what a build that is being put together does not have yet. A search goes without the latter: it
    /// changes what was wanted, and wants nothing more.
    /// </summary>
    public static IReadOnlyList<Slot> WithOpen(ProposalEvaluator evaluator, PartsCatalog catalog, bool currentOnly,
        IReadOnlyList<string> keep, YamlEditor editor)
    {
        var ground = Ground(evaluator, new Stock(catalog, currentOnly), editor);
        var open = OpenSlots.Of(ground).Where(s => !IsKept(s, keep));
        List<Slot> slots = [.. open, .. Of(ground, keep, 0)];
        for (var i = 0; i < slots.Count; i++)
            slots[i].Index = i;
        return slots;
    }

    private static SlotContext Ground(ProposalEvaluator evaluator, Stock stock, YamlEditor editor) =>
        new(evaluator.Build, evaluator.Root, editor, stock);

    private static List<Slot> Of(SlotContext ground, IReadOnlyList<string> keep, int firstIndex)
    {
        List<Slot> slots = [.. FitSlots.Of(ground), .. SetSlots.Of(ground), .. SundrySlots.Of(ground), .. ChannelSlots.Of(ground),
            .. OutputSlots.Of(ground), .. DeviceSlots.Of(ground), .. SupplySlots.Of(ground)];
        slots.RemoveAll(s => IsKept(s, keep));
        for (var i = 0; i < slots.Count; i++)
            slots[i].Index = firstIndex + i;
        return slots;
    }

    /// <summary>How many things that were chosen for their sound can be exchanged together.</summary>
    public static int MostVoices(IReadOnlyList<Slot> slots) =>
        Math.Max(slots.Where(s => s.Voices == 1).Sum(s => s.Voices), slots.Select(s => s.Voices).DefaultIfEmpty(0).Max());

    private static bool IsKept(Slot slot, IReadOnlyList<string> keep) =>
        slot.Parts.Concat(slot.Where).Any(held => keep.Contains(held, StringComparer.Ordinal));
}
