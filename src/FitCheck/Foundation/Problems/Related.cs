namespace FitCheck.Foundation.Problems;

/// <summary>A further place that a finding or a problem touches, and what stands there: the datum in the catalog, the threshold in the rule.</summary>
public sealed record Related(Location At, string What);
