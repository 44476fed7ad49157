namespace FitCheck.Physics.Quantities;

/// <summary>
/// A number in SI that knows its dimension, the unit it was written in, how far it may be off, and where it comes from.
/// </summary>
/// <param name="Si">Value in SI units; degrees Celsius for a temperature, radians for an angle.</param>
/// <param name="Unit">The unit it was written in.</param>
/// <param name="Tolerance">Half-width of what it may be, SI; null when not given.</param>
/// <param name="Provenance">Where this figure comes from; null means as the entry it stands in.</param>
public readonly record struct Quantity(double Si, Unit Unit, double? Tolerance = null, Provenance? Provenance = null)
{
    /// <summary>What it measures.</summary>
    public Dimension Dimension => Unit.Dimension;

    /// <summary>The value in the unit it was written in.</summary>
    public double Written => Unit.FromSi(Si);

    /// <summary>As a person would write it, in the unit it was written in.</summary>
    public override string ToString() => QuantityText.Format(Si, Unit);
}
