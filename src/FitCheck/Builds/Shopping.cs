using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>Counts what a build uses, in pieces and in packs, and what it costs.</summary>
internal static class Shopping
{
    /// <summary>
    /// The list, in ordinal order of the parts' ids. Sets are bought whole; what is in the box of a set or kit is not bought twice.
    /// </summary>
    public static IReadOnlyList<ListLine> List(Build build)
    {
        var pieces = new Dictionary<string, Pieces>(StringComparer.Ordinal);
        foreach (var placed in build.Placed)
        {
            if (placed.Set is null)
                Add(placed.Driver?.Part);
            Add(placed.Adapter?.Part);
            Add(placed.Cup?.Part);
            Add(placed.Harness?.Part);
            foreach (var sundry in placed.Sundries.Where(s => !UsedFromTheRoll(s.Part)))
                Add(sundry.Part);
        }
        foreach (var roll in build.Placed.SelectMany(p => p.Sundries).Where(s => UsedFromTheRoll(s.Part)).DistinctBy(s => s.Part.Id))
            Add(roll.Part, roll.Part.Pack);
        // A set serves one side with its woofer and its tweeter: the side that uses more of them counts.
        foreach (var set in build.Placed.Where(p => p.Set is not null).GroupBy(p => p.Set!.Part.Id, StringComparer.Ordinal))
        {
            var tweeters = set.Count(p => p.Position.Role == "tweeter");
            Add(set.First().Set!.Part, Math.Max(tweeters, set.Count() - tweeters));
        }
        var fromSets = build.Placed.Select(p => p.Set?.Part.Crossover?.Value).OfType<string>().ToHashSet(StringComparer.Ordinal);
        foreach (var channel in build.Channels)
        {
            if (channel.Crossover is { } crossover && !fromSets.Contains(crossover.Part.Id))
                Add(crossover.Part);
            foreach (var sundry in channel.InLine)
                Add(sundry.Part);
        }
        foreach (var device in build.Devices.Where(d => !d.IsFactory))
            Add(device.Part);
        var lines = new Dictionary<string, ListLine>(StringComparer.Ordinal);
        foreach (var (part, count) in pieces.Values)
        {
            var packs = Packs(count, part.Pack);
            int? left = part is Sundry sundry && UsedFromTheRoll(sundry) ? null : (packs * part.Pack) - count;
            lines[part.Id] = Line(build, part, count, packs) with { LeftPieces = left };
        }
        AddCables(build, lines);
        foreach (var (part, packs, left) in SupplyShopping.ToBuy(build))
        {
            lines[part.Id] = SupplyShopping.IsCable(part)
                ? Line(build, part, packs * part.Pack, packs) with { LeftMetres = left }
                : Line(build, part, (packs * part.Pack) - (int)left, packs) with { LeftPieces = (int)left };
        }
        AddExtras(build, lines);
        return [.. lines.Values.Select(Owned).OrderBy(l => l.Part, StringComparer.Ordinal)];

        void Add(Part? part, int count = 1)
        {
            if (part is not null)
                pieces[part.Id] = new Pieces(part, (pieces.GetValueOrDefault(part.Id)?.Count ?? 0) + count);
        }
    }

    private static void AddExtras(Build build, Dictionary<string, ListLine> lines)
    {
        foreach (var extra in build.Extras)
        {
            var already = lines.GetValueOrDefault(extra.Part.Id);
            var (needed, packs) = ((already?.Needed ?? 0) + (extra.Packs * extra.Part.Pack), (already?.Packs ?? 0) + extra.Packs);
            var line = Line(build, extra.Part, needed, packs);
            lines[extra.Part.Id] = line with { LeftPieces = already?.LeftPieces, LeftMetres = already?.LeftMetres };
        }
    }

    /// <summary>Sums by currency.</summary>
    public static IReadOnlyList<Money> Totals(IReadOnlyList<ListLine> list)
    {
        var totals = new List<Money>();
        foreach (var line in list.Where(l => !l.IsOwned))
        {
            var at = totals.FindIndex(t => t.Currency == line.Sum.Currency);
            if (at < 0)
                totals.Add(line.Sum);
            else
                totals[at] = totals[at] with { Amount = totals[at].Amount + line.Sum.Amount };
        }
        totals.Sort((a, b) => string.CompareOrdinal(a.Currency, b.Currency));
        return totals;
    }

    // Cable is bought by the roll, and each run is one piece of it. Rolls that the build buys besides are there already.
    private static void AddCables(Build build, Dictionary<string, ListLine> lines)
    {
        foreach (var runs in build.Placed.Where(p => p.NewWire is not null).GroupBy(p => p.NewWire!.Part.Id, StringComparer.Ordinal))
        {
            var cable = runs.First().NewWire!.Part;
            List<double> lengths = [.. runs.Select(r => r.NewWireLength?.Si ?? 0)];
            var there = build.Extras.Where(e => e.Part.Id == cable.Id).Sum(e => e.Packs * e.Part.Pack);
            var rolls = cable.Length is { Si: > 0 } roll ? Math.Max(1, CableCutting.Rolls(lengths, roll.Si)) : 1;
            var packs = Packs(Math.Max(0, rolls - there), cable.Pack);
            lines[cable.Id] = Line(build, cable, Math.Max(0, lengths.Count - there), packs) with
            {
                LeftMetres = cable.Length is { } known ? Math.Round(((there + (packs * cable.Pack)) * known.Si) - lengths.Sum(), 6) : null,
            };
        }
    }

    // Tape, sheet and shrink come by the roll or the bag, which serves several positions; more of it goes into the build's `extras`.
    private static bool UsedFromTheRoll(Sundry sundry) =>
        sundry.Type is "foam-tape" or "damping-sheet" or "heat-shrink" or "crimp" or "screws" or "foam-wrap" or "grommet";

    private static int Packs(int pieces, int pack) => (pieces + pack - 1) / pack;

    // Of what is there already nothing is bought, and nothing is left in a pack.
    private static ListLine Owned(ListLine line) => !line.IsOwned ? line
        : line with { Packs = 0, Sum = line.Price with { Amount = 0 }, LeftPieces = null, LeftMetres = null };

    private static ListLine Line(Build build, Part part, int needed, int packs)
    {
        var price = build.PriceOf(part);
        return new ListLine(part.Id, part.Name, needed, part.Pack, packs, price, price with { Amount = price.Amount * packs },
            build.Owns(part) ? ListLine.OwnedWord : part.Availability.Value)
        {
            QuotePrice = build.QuotePrice(part),
            CatalogPrice = part.HasPrice ? part.Price.Value : null,
        };
    }

    private sealed record Pieces(Part Part, int Count);
}
