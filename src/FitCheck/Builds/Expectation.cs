using FitCheck.Foundation.Problems;

namespace FitCheck.Builds;

/// <summary>What a build is meant to give. It judges nothing; `check --as-expected` holds the findings to it.</summary>
/// <param name="Verdict">The word of the verdict.</param>
/// <param name="Findings">Every unwaived finding of the verdict's status; null where only the verdict is stated.</param>
internal sealed record Expectation(Located<string> Verdict, IReadOnlyList<ExpectedFinding>? Findings);

/// <summary>One finding that is meant.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Place">The place as a finding names it; null for wherever the rule speaks.</param>
/// <param name="At">Where the rule, or the place, is written.</param>
internal sealed record ExpectedFinding(string Rule, string? Place, Location At);
