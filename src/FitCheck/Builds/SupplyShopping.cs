using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>Counts what the supply of the amplifiers needs beyond what the build buys as `extras` and what lies in its kits.</summary>
internal static class SupplyShopping
{
    /// <summary>
    /// Parts, packs, and what stays of them, in metres for cables and in pieces for all else, in ordinal order of the parts' ids. A cable
    /// of which the extras have enough comes with no pack, for what stays of it.
    /// </summary>
    public static IEnumerable<(WiringPart Part, int Packs, double Left)> ToBuy(Build build)
    {
        var needs = new SortedDictionary<string, Need>(StringComparer.Ordinal);
        var supply = build.Supply;
        foreach (var kit in supply.Kits)
            Of(kit).Count++;
        foreach (var run in supply.Runs.Values.Append(supply.Main).OfType<SupplyRun>())
        {
            NeedCable(run.Cable?.Part, run.Length);
            NeedCable(run.Ground?.Part, run.GroundLength);
            if (run.Fuse is { } fuse)
                Of(fuse.Part).Count++;
        }
        if (supply.Distribution is { } block)
            Of(block.Part).Count++;
        foreach (var need in needs.Values)
        {
            var part = need.Part;
            // A kit is there once, whether the build names it for a cable, buys it besides, or both.
            var there = supply.Kits.Any(k => k.Id == part.Id) ? 0 : supply.Pieces.Where(p => p.Part.Id == part.Id).Sum(p => p.Count);
            var missing = (need.Runs.Count > 0 ? CableCutting.Rolls(need.Runs, part.Length!.Si) : need.Count) - there;
            var packs = Math.Max(0, (missing + part.Pack - 1) / part.Pack);
            if (need.Runs.Count > 0 && (packs > 0 || build.Extras.Any(e => e.Part.Id == part.Id)))
                yield return (part, packs, Math.Round(((there + (packs * part.Pack)) * part.Length!.Si) - need.Runs.Sum(), 6));
            else if (packs > 0)
                yield return (part, packs, (packs * part.Pack) - missing);
        }

        void NeedCable(WiringPart? cable, Figure? length)
        {
            // A cable whose way nobody measured takes a roll.
            if (cable is not null && IsCable(cable))
                Of(cable).Runs.Add(length?.Si ?? cable.Length!.Si);
            else if (cable is not null and not { Type: "power-kit" })
                Of(cable).Count++;
        }

        Need Of(WiringPart part) => needs.TryGetValue(part.Id, out var need) ? need : needs[part.Id] = new Need(part);
    }

    /// <summary>True for what is cut from a roll.</summary>
    public static bool IsCable(WiringPart part) => part is { Type: "power-cable", Length: not null };

    private sealed class Need(WiringPart part)
    {
        public WiringPart Part => part;
        public List<double> Runs { get; } = [];
        public int Count { get; set; }
    }
}
