using System.Globalization;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Lists;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Lists;

/// <summary>What more than one format says of a list of parts.</summary>
internal static class ListWords
{
    public const string Parts = "Parts to buy";

    public const string Asked = "Asked for by rules";

    public const string WhatAskedIs =
        "Not in the build. Each is the cheapest in stock with which the rule passes and no other rule says anything worse.";

    public const string Unanswered = "Asked for, and nothing in the catalog does it";

    public const string Already = "on the list already";

    /// <summary>`1 left over`, `2.5 m left`; empty where nothing is known or nothing is left.</summary>
    public static string Left(ListLine line) =>
        line.LeftMetres is > 0 and var metres ? $"{metres.ToString("0.##", CultureInfo.InvariantCulture)} m left over"
        : line.LeftPieces is > 0 and var pieces ? $"{Figures.Whole(pieces)} left over" : "";

    /// <summary>What is left over and how it is to be had, for a note beside the line.</summary>
    public static string Note(ListLine line) =>
        string.Join(", ", new[] { Left(line), Sentences.Availability(line.Availability) }.Where(w => w.Length > 0));

    /// <summary>`2 packs of 2`; of what lies on the list already, that.</summary>
    public static string ToBuy(ListLine line) => line is { Packs: 0, IsOwned: false } ? Already : Sentences.ToBuy(line);

    /// <summary>`list/splice-material-missing (Splices without heat-shrink): The whole build`, a line for each rule.</summary>
    public static IEnumerable<(string Rule, string Title, string Where)> By(IReadOnlyList<Ask> asks) =>
        asks.GroupBy(a => a.Rule, StringComparer.Ordinal)
            .Select(g => (g.Key, g.First().Title, Names.Joined(g.Select(a => a.PositionName))));

    /// <summary>What is missing and can't be had, a sentence for each rule.</summary>
    public static IEnumerable<(string Rule, string Text)> Missing(PartsList list) =>
        list.Unanswered.GroupBy(a => a.Rule, StringComparer.Ordinal)
            .Select(g =>
            (g.Key, $"{Names.Joined(g.Select(a => a.PositionName))}: {g.First().Title}. No {g.First().Wanted} of the catalog cures it "
                + $"without bringing up something else."));

    /// <summary>The lines below a sum of prices: its tax, or what it comes to with tax. Empty without a rate.</summary>
    public static IEnumerable<(string Label, Money Amount)> Taxed(Tax tax, Money prices)
    {
        var sum = tax.Of(prices);
        if (sum.Tax is null)
            yield break;
        var rate = tax.Percent!.Value.ToString("0.##", CultureInfo.InvariantCulture);
        if (tax.IsAdded)
        {
            yield return ($"and {rate} % tax", sum.Tax);
            yield return ("with tax", sum.Paid);
        }
        else
        {
            yield return ($"of it {rate} % tax", sum.Tax);
        }
    }

    /// <summary>What the amounts mean, in one sentence.</summary>
    public static string Basis(Tax tax, IEnumerable<PartsList> lists) => tax switch
    {
        { Percent: null } when lists.Any(l => l.Lines.Any(x => x.IsQuoted)) =>
            "Prices are those of the quote where it has one, else of the catalog; tax is not told apart.",
        { Percent: null } => "Prices are those of the catalog; tax is not told apart.",
        { IsAdded: true } => "Prices are without tax; it is added to each sum and rounded there to hundredths.",
        _ => "Prices contain the tax; its part is worked out from each sum and rounded there to hundredths.",
    };

    /// <summary>What is left of the budget by the build's list, and with what is asked for; null without a budget.</summary>
    public static string? Budget(PartsList list, Tax tax)
    {
        if (list.Budget is not { } budget)
            return null;
        var own = Rest(list.Totals, budget, tax);
        if (list.Asked.All(a => a.Line.Packs == 0))
            return $"Budget {budget}: {own}.";
        return $"Budget {budget}: {own} by the build's own list; {Rest(list.AllTotals, budget, tax)} with what the rules ask for.";
    }

    private static string Rest(IReadOnlyList<Money> totals, Money budget, Tax tax)
    {
        if (totals.Any(t => t.Currency != budget.Currency && t.Amount != 0))
            return $"not compared, because not all prices are in {budget.Currency}";
        var paid = totals.Count == 0 ? 0
            : tax.Of(totals.FirstOrDefault(t => t.Currency == budget.Currency) ?? budget with { Amount = 0 }).Paid.Amount;
        var rest = budget with { Amount = Math.Abs(budget.Amount - paid) };
        return paid == budget.Amount ? "exactly spent" : paid < budget.Amount ? $"{rest} left" : $"{rest} over";
    }
}
