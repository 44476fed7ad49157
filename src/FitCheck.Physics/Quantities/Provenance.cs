namespace FitCheck.Physics.Quantities;

/// <summary>Where a figure comes from; it decides how far the figure is trusted.</summary>
public enum Provenance
{
    /// <summary>Someone measured it.</summary>
    Measured,
    /// <summary>The maker's sheet says it.</summary>
    Datasheet,
    /// <summary>Someone guessed it: never good enough for a pass.</summary>
    Estimated,
}
