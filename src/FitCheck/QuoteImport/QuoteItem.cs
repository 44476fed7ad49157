using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>A part of a seller's list, how many packs of it, and where it stands first.</summary>
internal sealed record QuoteItem(Part Part, int Packs, Location At)
{
    public int Pieces => Packs * Part.Pack;

    /// <summary>What a pack costs on the list; null when it does not say.</summary>
    public Money? Price { get; init; }

    /// <summary>This and more packs of the same.</summary>
    public QuoteItem And(int packs, Money? price) => this with
    {
        Packs = Packs + packs,
        // What of two prices is meant when only one is written, or in another currency, nobody knows: the first stands.
        Price = price is null || Price is null || price.Currency != Price.Currency ? Price ?? price
            : Price with
            {
                Amount = decimal.Round(((Price.Amount * Packs) + (price.Amount * packs)) / (Packs + packs), 2,
                    MidpointRounding.AwayFromZero),
            },
    };
}

/// <summary>A line of a list of which nobody can be sure which part it is.</summary>
/// <param name="Line">Its number.</param>
/// <param name="Text">What stands there.</param>
/// <param name="Near">The parts that may be meant, the nearest first.</param>
internal sealed record OpenLine(int Line, string Text, IReadOnlyList<Part> Near);

/// <summary>A part of a list that could go to several places.</summary>
/// <param name="Item">The part, and how many packs of it.</param>
/// <param name="Options">The places, each as `--at` takes it; the last are all of them, where the list has enough for that.</param>
internal sealed record OpenPlace(QuoteItem Item, IReadOnlyList<Group> Options);
