namespace FitCheck.Findings;

/// <summary>What a reader of a report is told of a rule, all of it from the rule's own file.</summary>
/// <param name="Id">`family/slug`.</param>
/// <param name="Title">What it looks at.</param>
/// <param name="Why">What happens when it is not kept.</param>
/// <param name="Advice">How to satisfy it.</param>
/// <param name="Source">Where its figure comes from.</param>
/// <param name="Url">Where the source can be read; null when it has no address.</param>
/// <param name="CanFail">False when the worst that it says is a warning.</param>
public sealed record RuleHelp(string Id, string Title, string Why, string Advice, string? Source, string? Url, bool CanFail)
{
    /// <summary>True when it tells of work on vehicle or parts that the build accepts: what it warns of is a plan, not a fault.</summary>
    public bool TellsOfWork { get; init; }

    /// <summary>False when no build may waive it.</summary>
    public bool CanBeWaived { get; init; } = true;
}
