using FitCheck.Builds;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Suggestions;

/// <summary>One reading that would settle open findings, and what each outcome brings.</summary>
/// <param name="What">Named as on a work sheet.</param>
/// <param name="How">How to measure it.</param>
/// <param name="Settles">Titles of the findings that wait for nothing else.</param>
/// <param name="HelpsIn">How many more findings wait for it and for other data too.</param>
/// <param name="Passing">The reading with which all that it settles passes; null when that can't be told in one figure.</param>
/// <param name="Bearable">The reading with which none of it fails; null when nothing of it can, or it can't be told.</param>
public sealed record Reading(string What, string How, IReadOnlyList<string> Settles, int HelpsIn, string? Passing, string? Bearable);

/// <summary>Which measurement, taken today, settles the most.</summary>
internal static class Settling
{
    /// <summary>The readings that findings wait for, those that settle most first.</summary>
    public static IReadOnlyList<Reading> Of(Build build, RuleSet rules)
    {
        var waits = new List<(Unsure Datum, Wait Wait)>();
        var (tables, _, _, _) = FactRegistry.Of(build, Shopping.List(build), rules.Practice);
        var notes = new NotesOfThreads();
        foreach (var rule in rules.Rules)
        {
            foreach (var table in tables.Where(
                t => t.Subject == rule.Subject
                    && !build.Waivers.Any(w => w.Rule == rule.Id && (w.Position is null || w.Position == t.Key))))
            {
                if (notes.Judge(rule, table) is not { Status: Status.Measure })
                    continue;
                var judgement = Judgement.Of(rule, new FactInputs(rule.Scope, table.Values))!;
                var data = judgement.Unsure.DistinctBy(u => u.What).ToList();
                waits.AddRange(
                    data.Select(
                        d => (d, new Wait(rule.Title, data.Count == 1, Text(d, judgement, null), Text(d, judgement, Status.Fail),
                            rule.Fail is not null))));
            }
        }
        return [.. waits.GroupBy(w => w.Datum.What, StringComparer.Ordinal)
            .Select(g => Told(g.First().Datum, [.. g.Select(w => w.Wait)]))
            .OrderByDescending(r => r.Settles.Count).ThenByDescending(r => r.HelpsIn).ThenBy(r => r.What, StringComparer.Ordinal)];
    }

    private sealed record Wait(string Title, bool Alone, string? Passing, string? Bearable, bool CanFail);

    private static Reading Told(Unsure datum, IReadOnlyList<Wait> waits)
    {
        var alone = waits.Where(w => w.Alone).ToList();
        var failing = alone.Where(w => w.CanFail).ToList();
        return new Reading(datum.What, datum.How, [.. alone.Select(w => w.Title)], waits.Count - alone.Count,
            Together([.. alone.Select(w => w.Passing)]), failing.Count == 0 ? null : Together([.. failing.Select(w => w.Bearable)]));
    }

    // Of several limits the strictest settles all; limits on both sides make a range.
    private static string? Together(IReadOnlyList<string?> texts)
    {
        if (texts.Count == 0 || texts.Any(t => t is null))
            return null;
        var more = Bounds(texts, " or more").OrderByDescending(b => b.Si).Select(b => b.Text).FirstOrDefault();
        var less = Bounds(texts, " or less").OrderBy(b => b.Si).Select(b => b.Text).FirstOrDefault();
        return more is null ? less : less is null ? more : $"{more} and {less}";
    }

    private static IEnumerable<(double Si, string Text)> Bounds(IEnumerable<string?> texts, string side) =>
        texts.SelectMany(t => t!.Split(" and "))
            .Where(t => t.EndsWith(side, StringComparison.Ordinal) && QuantityText.Parse(t[..^side.Length]) is not null)
            .Select(t => (QuantityText.Parse(t[..^side.Length])!.Value.Si, t));

    private static string? Text(Unsure datum, Judgement judgement, Status? only)
    {
        var sides = judgement.Limits.Where(l => only is null || l.Status == only).GroupBy(l => l.Side)
            .Select(g => g.FirstOrDefault(l => l.Status == Status.Warn) ?? g.First());
        var texts = sides.Select(l => l.Passing is { } limit ? datum.Passing?.Invoke(limit) : null).OfType<string>().ToList();
        return texts.Count == 0 ? null : string.Join(" and ", texts);
    }
}
