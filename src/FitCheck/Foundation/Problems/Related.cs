namespace FitCheck.Foundation.Problems;

/// <summary>A further place that a finding or a problem touches: the datum in the catalog, the threshold in the rule.</summary>
/// <param name="At">The place.</param>
/// <param name="What">What stands there, in words.</param>
public sealed record Related(Location At, string What);
