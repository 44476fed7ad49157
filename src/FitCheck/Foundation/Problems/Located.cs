namespace FitCheck.Foundation.Problems;

/// <summary>A value and the place where it was written.</summary>
public sealed record Located<T>(T Value, Location At);
