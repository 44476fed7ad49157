using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.Builds;

/// <summary>How the amplifiers get their current.</summary>
/// <param name="Main">The cable that several amplifiers share; null when each has its own from the battery.</param>
/// <param name="Distribution">The block that splits the main cable.</param>
/// <param name="Runs">The cable of each amplifier, by the device's name in the build: from the block, or from the battery without a main
/// cable.</param>
/// <param name="Listed">All wiring that the build names or buys, what is in kits included.</param>
/// <param name="Pieces">All that wiring with the number of each: what is bought besides, kits, and what is in them.</param>
/// <param name="Kits">Kits that stand for a cable in the build, once for each cable, beyond those that it buys besides.</param>
internal sealed record Supply(
    SupplyRun? Main, Chosen<WiringPart>? Distribution, IReadOnlyDictionary<string, SupplyRun> Runs, IReadOnlyList<WiringPart> Listed,
    IReadOnlyList<(WiringPart Part, int Count)> Pieces,
    IReadOnlyList<WiringPart> Kits)
{
    /// <summary>Under this name go the findings on the cable that several amplifiers share.</summary>
    public const string MainCable = "main-cable";

    public bool Lists(string type) => Listed.Any(p => p.Type == type);
}

/// <summary>One supply cable with its fuse, and the ground cable of the amplifier that it feeds.</summary>
internal sealed record SupplyRun
{
    public Chosen<WiringPart>? Cable { get; init; }
    /// <summary>One way.</summary>
    public Figure? Length { get; init; }
    /// <summary>Where it ends, `cargo`, `under-seat` or `dash`: where the amplifier or the block sits; null when not told.</summary>
    public Located<string>? Place { get; init; }
    public Chosen<WiringPart>? Fuse { get; init; }
    /// <summary>From the battery's terminal, along the cable.</summary>
    public Figure? FuseDistance { get; init; }
    public Chosen<WiringPart>? Ground { get; init; }
    public Figure? GroundLength { get; init; }
}
