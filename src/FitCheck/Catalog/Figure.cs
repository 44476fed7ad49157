using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Catalog;

/// <summary>A quantity of the catalog with the place where it is written and where it comes from.</summary>
/// <param name="Quantity">The value, its unit and its tolerance.</param>
/// <param name="At">Where it is written.</param>
/// <param name="Provenance">Its own, or that of its entry.</param>
public sealed record Figure(Quantity Quantity, Location At, Provenance Provenance)
{
    /// <summary>True for what a build tells of its own vehicle or part, whatever the catalog has.</summary>
    internal bool IsReading { get; init; }

    /// <summary>SI value.</summary>
    public double Si => Quantity.Si;

    /// <summary>True when somebody guessed it.</summary>
    public bool IsEstimated => Provenance == Provenance.Estimated;

    /// <summary>
    /// Half of the width in which the true value lies, SI: as given, else for a length by its provenance: measured 0.5 mm, datasheet 1 mm,
    /// estimated 3 mm (common practice, no source). Figures of other dimensions count as exact when no tolerance is given.
    /// </summary>
    public double HalfWidth => Quantity.Tolerance ?? (Quantity.Dimension != Dimension.Metre ? 0 : Provenance switch
    {
        Provenance.Measured => 0.5e-3,
        Provenance.Datasheet => 1e-3,
        _ => 3e-3,
    });

    /// <summary>So many times as much, with its tolerance.</summary>
    internal Figure Times(double factor) =>
        this with { Quantity = Quantity with { Si = factor * Quantity.Si, Tolerance = factor * Quantity.Tolerance } };

    /// <summary>With a guess's tolerance where a closer one is written: that was another thing's.</summary>
    internal Figure AtLeastAsRoughAsAGuess => Quantity.Tolerance is { } own && Quantity.Dimension == Dimension.Metre
        && this with { Quantity = Quantity with { Tolerance = null }, Provenance = Provenance.Estimated } is { } guess
        && own < guess.HalfWidth ? guess : this;

    /// <summary>As a person would write it, in the unit in which it is written.</summary>
    public override string ToString() => Quantity.ToString();
}

/// <summary>Figures of which one can't be larger than the other.</summary>
internal static class FigureOrder
{
    /// <summary>Tells a range that goes from its upper end to its lower one.</summary>
    public static void Range(Fields f, Figure? lowest, Figure? highest)
    {
        if (lowest is not null && highest is not null && lowest.Si > highest.Si)
            f.Problems.Error(lowest.At, $"a range goes from its lower end to its upper one, found `{lowest}` before `{highest}`",
                ProblemKind.WrongShape);
    }

    /// <summary>Tells a short axis that is longer than the long one.</summary>
    public static void Axes(Fields f, string what, Figure? major, Figure? minor)
    {
        if (major is not null && minor is not null && minor.Si > major.Si)
            f.Problems.Error(minor.At, $"the short axis of the {what} is longer than its long axis: {minor} and {major}",
                ProblemKind.WrongShape);
    }
}
