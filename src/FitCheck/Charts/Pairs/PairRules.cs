using System.Numerics;
using FitCheck.Facts.Values;
using FitCheck.Rules;
using FitCheck.Rules.Model;

namespace FitCheck.Charts.Pairs;

/// <summary>A rule about positions that a chart can't judge, and the facts of a build that it would need.</summary>
public sealed record LeftOut(string Rule, IReadOnlyList<string> Needs);

/// <summary>
/// The rules about positions that driver, mounting part and place decide by themselves. Which they are follows from what the facts that
/// they name are computed from; nobody lists them.
/// </summary>
internal sealed class PairRules
{
    private PairRules(IReadOnlyList<Rule> judged, IReadOnlyList<LeftOut> leftOut, Practice practice) =>
        (Judged, LeftOut, Practice) = (judged, leftOut, practice);

    /// <summary>Those that rest on the fewest things first, then by id: the order in which a pair is judged.</summary>
    public IReadOnlyList<Rule> Judged { get; }

    /// <summary>In order of their ids.</summary>
    public IReadOnlyList<LeftOut> LeftOut { get; }

    /// <summary>What their facts are reckoned with.</summary>
    public Practice Practice { get; }

    public static PairRules Of(RuleSet rules)
    {
        var judged = new List<Rule>();
        var leftOut = new List<LeftOut>();
        foreach (var rule in rules.Rules)
        {
            if (rule.Subject != Subject.Position)
                continue;
            var needs = rule.Names.Where(n => rule.Scope.Find(n)!.RestsOn.HasFlag(RestsOn.Build)).Order(StringComparer.Ordinal).ToList();
            if (needs.Count == 0)
                judged.Add(rule);
            else
                leftOut.Add(new LeftOut(rule.Id, needs));
        }
        return new PairRules([.. judged.OrderBy(r => BitOperations.PopCount((uint)RestsOnOf(r))).ThenBy(RestsOnOf)
            .ThenBy(r => r.Id, StringComparer.Ordinal)], leftOut, rules.Practice);
    }

    /// <summary>All that the facts of a rule rest on.</summary>
    public static RestsOn RestsOnOf(Rule rule) =>
        rule.Names.Aggregate(RestsOn.Nothing, (all, name) => all | rule.Scope.Find(name)!.RestsOn);
}
