using FitCheck.Catalog;

namespace FitCheck.Builds;

/// <summary>One line of the list that the customer takes away.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Name">The part's name.</param>
/// <param name="Needed">Pieces that the build uses.</param>
/// <param name="Pack">Pieces in a pack.</param>
/// <param name="Packs">Packs to buy.</param>
/// <param name="Price">Of one pack.</param>
/// <param name="Sum">Packs times price.</param>
/// <param name="Availability">`current`, `to-order` or `discontinued`.</param>
public sealed record ListLine(string Part, string Name, int Needed, int Pack, int Packs, Money Price, Money Sum, string Availability)
{
    /// <summary>Pieces that stay in their packs; null for what is cut from a roll or bought as the build says.</summary>
    public int? LeftPieces { get; init; }

    /// <summary>Metres of cable that stay on the roll; null for all but cables of known length.</summary>
    public double? LeftMetres { get; init; }
}
