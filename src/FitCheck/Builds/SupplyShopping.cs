using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>Counts what the supply of the amplifiers needs beyond what the build buys as `extras` and what lies in its kits.</summary>
internal static class SupplyShopping
{
    /// <summary>Parts, packs, and what stays of them, in metres for cables and in pieces for all else, in ordinal order of the parts' ids.</summary>
    public static IEnumerable<(WiringPart Part, int Packs, double Left)> ToBuy(Build build)
    {
        var needs = new SortedDictionary<string, Amount>(StringComparer.Ordinal);
        foreach (var kit in build.Supply.Kits)
            Need(kit, 1);
        foreach (var run in build.Supply.Runs.Values.Append(build.Supply.Main).OfType<SupplyRun>())
        {
            NeedCable(run.Cable?.Part, run.Length);
            NeedCable(run.Ground?.Part, run.GroundLength);
            if (run.Fuse is { } fuse)
                Need(fuse.Part, 1);
        }
        if (build.Supply.Distribution is { } block)
            Need(block.Part, 1);
        foreach (var (part, amount) in needs.Values)
        {
            var missing = amount - Bought(build, part);
            if (missing <= 0)
                continue;
            var packs = (int)Math.Ceiling(Math.Round(missing / InPack(part), 6));
            yield return (part, packs, Math.Round((packs * InPack(part)) - missing, 6));
        }

        void NeedCable(WiringPart? cable, Figure? length)
        {
            // A cable whose way nobody measured takes a roll.
            if (cable is not null)
                Need(cable, cable.Length is { } roll ? length?.Si ?? roll.Si : 1);
        }

        void Need(WiringPart part, double amount) => needs[part.Id] = new Amount(part, (needs.GetValueOrDefault(part.Id)?.Needed ?? 0) + amount);
    }

    private sealed record Amount(WiringPart Part, double Needed);

    private static double Bought(Build build, WiringPart part)
    {
        double amount = build.Extras.Where(e => e.Part.Id == part.Id).Sum(e => e.Packs) * InPack(part);
        var kits = build.Supply.Kits.Concat(build.Extras.SelectMany(e => e.Part is WiringPart { Type: "power-kit" } kit ? Enumerable.Repeat(kit, e.Packs) : []));
        // What a kit holds is counted in pieces, a cable by its length.
        var inKits = kits.Sum(k => k.Contains.Where(c => c.Part.Value == part.Id).Sum(c => c.Quantity));
        return amount + (inKits * (IsCable(part) ? part.Length!.Si : 1));
    }

    private static double InPack(WiringPart part) => IsCable(part) ? part.Length!.Si : part.Pack;

    /// <summary>True for what is counted in metres.</summary>
    public static bool IsCable(WiringPart part) => part is { Type: "power-cable", Length: not null };
}
