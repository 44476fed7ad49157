using FitCheck.Foundation.Problems;

namespace FitCheck.Findings;

/// <summary>
/// What a later directory of rules did to an earlier one, for the report: a shop's own limits must not pass for everybody's.
/// </summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Title">What the rule judges.</param>
/// <param name="What">What is different, in words: `switched off`, `warns below 8 mm instead of below 5 mm`.</param>
/// <param name="IsOff">True when the rule is no longer asked.</param>
/// <param name="Reason">Why, as the shop wrote it; null where a whole rule was added or put in another's place.</param>
/// <param name="At">The file of the later directory.</param>
public sealed record RuleChange(string Rule, string Title, string What, bool IsOff, string? Reason, Location At);
