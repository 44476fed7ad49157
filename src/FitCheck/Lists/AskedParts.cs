using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Lists;

/// <summary>
/// Finds what cures the findings whose rules say what sort of part does: a part of the catalog is written into the build in memory, the
/// rules judge again, and the first offer is taken with which the rule passes and no other rule says anything worse than before.
/// </summary>
internal sealed class AskedParts
{
    private readonly PartsCatalog _catalog;
    private readonly RuleSet _rules;
    private readonly string? _currency;
    private readonly Dictionary<string, List<Ask>> _askers = new(StringComparer.Ordinal);
    private readonly List<Ask> _unanswered = [];
    private readonly DateOnly _today;
    private readonly CancellationToken _cancel;
    private Trial _now;

    private AskedParts(YamlMap root, Build build, PartsCatalog catalog, RuleSet rules, CancellationToken cancel)
    {
        (_catalog, _rules, _today, _cancel) = (catalog, rules, build.Today, cancel);
        var before = BuildEvaluation.Judged(build, rules);
        _currency = build.Budget?.Value.Currency ?? (before.Totals.Count > 0 ? before.Totals[0].Currency : null);
        _now = new Trial(root, before);
    }

    /// <summary>The list of the build with what is asked for beside it.</summary>
    public static PartsList Of(YamlMap root, Build build, PartsCatalog catalog, RuleSet rules, CancellationToken cancel = default)
    {
        var parts = new AskedParts(root, build, catalog, rules, cancel);
        var before = parts._now.Result;
        foreach (var group in before.Findings.Where(
            f => f.Waived is null && f.Status is Status.Warn or Status.Fail && rules.Find(f.Rule)?.AsksFor is not null)
            .GroupBy(f => f.Rule, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
            parts.Cure(rules.Find(group.Key)!, [.. group]);
        return new PartsList
        {
            File = before.File,
            Name = before.Name,
            VehicleName = before.VehicleName,
            StandIn = before.StandIn,
            Budget = before.Budget,
            Lines = before.List,
            Asked = parts.Added(before.List),
            Unanswered = parts._unanswered,
        };
    }

    // One part for all places of a rule where one does, so that pairs are bought as pairs; else each place for itself.
    private void Cure(Rule rule, List<Finding> findings)
    {
        if (Tried(rule, findings) || findings.Count == 1)
            return;
        foreach (var finding in findings)
            Tried(rule, [finding], last: true);
    }

    private bool Tried(Rule rule, List<Finding> findings, bool last = false)
    {
        var asked = rule.AsksFor!;
        foreach (var offer in Offers(asked, findings))
        {
            _cancel.ThrowIfCancellationRequested();
            var result = BuildEvaluation.Judged(offer.Build, _rules);
            if (!findings.TrueForAll(f => Passes(result, f)) || IsWorse(result))
                continue;
            _now = new Trial(offer.Root, result);
            if (!_askers.TryGetValue(offer.Part.Id, out var askers))
                _askers.Add(offer.Part.Id, askers = []);
            askers.AddRange(findings.Select(f => AskOf(f, asked)));
            return true;
        }
        if (last || findings.Count == 1)
            _unanswered.AddRange(findings.Select(f => AskOf(f, asked)));
        return false;
    }

    // The best first: in stock before to order, in the wanted currency before others, then what makes the whole list cheapest, leftovers
    // counted.
    private IEnumerable<Offer> Offers(AskedPart asked, List<Finding> findings)
    {
        var open = findings.Where(f => !Passes(_now.Result, f)).Take(asked.Goes == "extras" ? 1 : int.MaxValue).ToList();
        var offers = new List<Offer>();
        foreach (var (part, packs) in Candidates.Of(asked, _catalog))
        {
            _cancel.ThrowIfCancellationRequested();
            var root = open.Aggregate(_now.Root, (r, f) => Addition.To(r, part.Id, packs, asked.Goes, f.Position));
            var problems = new ProblemList();
            if (BuildReader.Read(root, _catalog, problems, _today) is { } build && !problems.HasErrors)
                offers.Add(new Offer(part, root, build,
                    Shopping.List(build).Where(l => l.Sum.Currency == part.Price.Value.Currency).Sum(l => l.Sum.Amount)));
        }
        return offers.OrderBy(o => o.Part.Availability.Value == "current" ? 0 : 1)
            .ThenBy(o => _currency is null || o.Part.Price.Value.Currency == _currency ? 0 : 1)
            .ThenBy(o => o.Part.Price.Value.Currency, StringComparer.Ordinal).ThenBy(o => o.Total)
            .ThenBy(o => o.Part.Id, StringComparer.Ordinal);
    }

    private static Ask AskOf(Finding f, AskedPart asked) => new(f.Rule, f.Title, f.Status, f.Position, f.PositionName, asked.Words);

    // A finding that is gone, because the rule no longer applies, is cured as well.
    private static bool Passes(BuildResult result, Finding finding) =>
        result.Findings.All(f => f.Rule != finding.Rule || f.Position != finding.Position || f.Status == Status.Pass);

    // What a budget or a quote says of a longer list is no reason against the part.
    private bool IsWorse(BuildResult result)
    {
        var before = _now.Result.Findings.ToLookup(f => (f.Rule, f.Position), f => f.Status);
        return result.Findings.Any(
            f => f.Waived is null && f.Status is Status.Warn or Status.Fail
                && before[(f.Rule, f.Position)].All(s => s is Status.Pass or Status.Measure || s < f.Status)
            && !(_rules.Find(f.Rule)?.About.Any(a => a is "budget" or "quote") ?? false));
    }

    private List<AskedLine> Added(IReadOnlyList<ListLine> before)
    {
        var known = before.ToDictionary(l => l.Part, StringComparer.Ordinal);
        var added = new List<AskedLine>();
        foreach (var line in _now.Result.List)
        {
            var already = known.GetValueOrDefault(line.Part);
            var packs = line.Packs - (already?.Packs ?? 0);
            if (line.IsOwned)
                packs = 0;
            // What lies on the list already, with enough of it left, costs nothing more.
            if (_askers.TryGetValue(line.Part, out var by))
                added.Add(new AskedLine(
                    line with
                    {
                        Needed = line.Needed - (already?.Needed ?? 0),
                        Packs = packs,
                        Sum = line.Price with { Amount = line.Price.Amount * packs }
                    }, by));
        }
        return added;
    }

    private sealed record Offer(Part Part, YamlMap Root, Build Build, decimal Total);

    private sealed record Trial(YamlMap Root, BuildResult Result);
}
