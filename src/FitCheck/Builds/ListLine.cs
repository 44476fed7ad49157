using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>One line of the list that the customer takes away.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Name">The part's name.</param>
/// <param name="Needed">Pieces that the build uses.</param>
/// <param name="Pack">Pieces in a pack.</param>
/// <param name="Packs">Packs to buy.</param>
/// <param name="Price">Of one pack, as it is counted: the quote's own where it has one, else the catalog's.</param>
/// <param name="Sum">Packs times price.</param>
/// <param name="Availability">`current`, `to-order` or `discontinued`; `owned` for what is there already, of which no pack is
/// bought.</param>
public sealed record ListLine(string Part, string Name, int Needed, int Pack, int Packs, Money Price, Money Sum, string Availability)
{
    /// <summary>Pieces that stay in their packs; null for what is cut from a roll or bought as the build says.</summary>
    public int? LeftPieces { get; init; }

    /// <summary>Metres of cable that stay on the roll; null for all but cables of known length.</summary>
    public double? LeftMetres { get; init; }

    /// <summary>What the seller asks for a pack, in whatever currency; null when no list of his says.</summary>
    public Money? QuotePrice { get; init; }

    /// <summary>What the catalog says that a pack costs; null when it has no price.</summary>
    public Money? CatalogPrice { get; init; }

    /// <summary>True for what is there already: it costs nothing.</summary>
    public bool IsOwned => Availability == OwnedWord;

    /// <summary>True when the quote's own price is counted.</summary>
    public bool IsQuoted => !IsOwned && QuotePrice is { } quoted && quoted == Price;

    internal const string OwnedWord = "owned";
}
