namespace FitCheck.Findings;

/// <summary>A setting from which the installer starts: where, what is set, to which value. The ear decides the rest.</summary>
public sealed record StartingPoint(string Where, string What, string Value);
