using FitCheck.Builds;
using FitCheck.Facts;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Wiring;
using FitCheck.Findings;
using FitCheck.Rules.Model;
using FitCheck.Suggestions.Choices;

namespace FitCheck.Suggestions.Trials;

/// <summary>What one rule says of one subject of a tried build.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Key">The subject.</param>
/// <param name="Status">What the rule says; passes are kept for their clearance.</param>
/// <param name="Atoms">On what it rests.</param>
internal sealed record RuleVerdict(Rule Rule, string Key, Status Status, IReadOnlySet<string> Atoms)
{
    private static readonly string[] AcceptedWork = [PlaceFacts.DrillingAccepted.Name, PlaceFacts.EnlargingAccepted.Name,
        PlaceFacts.TrimmingAccepted.Name, WiringFacts.CuttingAccepted.Name];

    public (string Rule, string Key) Id => (Rule.Id, Key);
    public bool IsWaived { get; init; }
    /// <summary>In SI; null for truths, words and what is unknown.</summary>
    public double? Margin { get; init; }
    /// <summary>What is left of a length at a position before it fails, m.</summary>
    public double? Clearance { get; init; }
    /// <summary>It warns of work on vehicle or parts that the build accepts.</summary>
    public bool IsWork => Status == Status.Warn && Rule.Names.Any(n => AcceptedWork.Contains(n, StringComparer.Ordinal));

    /// <summary>It is about the price, so only what may save money can remove it.</summary>
    public bool IsOfPrice => Rule.Names.Contains(BuildFacts.TotalCost.Name, StringComparer.Ordinal);

    /// <summary>It is about parts to order and nothing else, so it goes only with the parts that have to be ordered.</summary>
    public bool IsOfOrder =>
        Rule.Names.All(n => n == BuildFacts.ToOrderCount.Name || n == BuildFacts.ToOrderNames.Name);

    /// <summary>It is told by the list of parts alone.</summary>
    public bool IsOfList => Rule.Names.All(BuildFacts.OfListNames.Contains);

    public bool RestsOn(Slot slot) => Atoms.Contains(Suggestions.Choices.BuildInputs.All) || slot.Atoms.Overlaps(Atoms);
}

/// <summary>A build as changed: its list and what the rules say.</summary>
internal sealed record ProposalVerdict(IReadOnlyList<ListLine> List, IReadOnlyList<RuleVerdict> Issues)
{
    /// <summary>The changes contradict each other, such as a setting that the new crossover does not have.</summary>
    public static ProposalVerdict Impossible { get; } = new([], []);

    public bool IsPossible => this != Impossible;

    public decimal Price { get; } = List.Sum(l => l.Sum.Amount);

    public int Count(Status status) => Issues.Count(i => i.Status == status && !i.IsWaived);

    public int Work => Issues.Count(i => i.IsWork);

    /// <summary>The least that is left of any length before it fails, m.</summary>
    public double LeastClearance =>
        Issues.Where(i => i.Clearance is not null && !i.IsWaived).Select(i => i.Clearance!.Value).DefaultIfEmpty(double.PositiveInfinity)
            .Min();
}
