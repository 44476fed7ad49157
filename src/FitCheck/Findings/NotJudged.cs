namespace FitCheck.Findings;

/// <summary>A rule that did not apply, where, and why.</summary>
/// <param name="Rule">The rule's id, `family/slug`.</param>
/// <param name="Position">The key of its subject: a position, a channel, `build`, or a part's id.</param>
/// <param name="PositionName">The subject's name for a person.</param>
/// <param name="Reason">In a few words: `no amplifier`, `not a door`.</param>
public sealed record NotJudged(string Rule, string Position, string PositionName, string Reason);
