using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>A part of a seller's list, how many packs of it, and where it stands first.</summary>
internal sealed record QuoteItem(Part Part, int Packs, Location At)
{
    public int Pieces => Packs * Part.Pack;
}
