namespace FitCheck.Foundation.Problems;

/// <summary>A value and the place where it was written.</summary>
/// <typeparam name="T">What the value is.</typeparam>
/// <param name="Value">What is written.</param>
/// <param name="At">Where it is written.</param>
public sealed record Located<T>(T Value, Location At);
