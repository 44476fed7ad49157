using System.Text;
using FitCheck.Builds.Readable;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Messages;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Rules;

/// <summary>Applies a rule to the facts of one subject.</summary>
internal static class Judge
{
    /// <summary>What the rule says of the subject; null when it doesn't apply.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="table">The facts of a subject of the rule's kind.</param>
    /// <param name="buildName">Goes into the fingerprint.</param>
    public static Finding? Evaluate(Rule rule, FactTable table, string buildName)
    {
        if (table.Subject != rule.Subject)
            return null;
        var inputs = new FactInputs(rule.Scope, table.Values, lacking: table.Lacking);
        return Judgement.Of(rule, inputs) is { } judgement ? Find(rule, table, inputs, judgement, buildName, problems: null) : null;
    }

    /// <summary>The finding of a judgement; a message that can't be rendered is reported where problems are wanted.</summary>
    internal static Finding Find(Rule rule, FactTable table, FactInputs inputs, Judgement judgement, string buildName,
        ProblemList? problems)
    {
        var parts = rule.About.Select(a => table.Choices.GetValueOrDefault(a)).OfType<Choice>().ToList();
        var unit = rule.Unit;
        var measure = judgement.Status == Status.Measure ? Measures(judgement) : [];
        var wanted = string.Join("; ",
            measure.Select(m => m.Passing is null ? Here(m.What, table) : $"{Here(m.What, table)} ({m.Passing})"));
        return new Finding
        {
            Rule = rule.Id,
            Title = rule.Title,
            Status = judgement.Status,
            Position = table.Key,
            PositionName = table.Name,
            Parts = [.. parts.Select(p => p.Part).Distinct(StringComparer.Ordinal)],
            Fact = rule.Fact.Text,
            Value = judgement.Fact.Number is { } n && unit is not null ? InUnit(n, unit) : null,
            ValueText = Shown.Value(judgement.Fact, unit, table.Currency),
            Unit = Shown.UnitName(unit, table.Currency),
            Limit = judgement.Deciding?.Value.Number is { } limit ? unit?.FromSi(limit.Value) : null,
            Margin = judgement.Margin is { } margin ? unit?.FromSi(margin) : null,
            Message = Message(rule, new MessageVariables(rule, table, inputs, judgement, wanted), judgement, problems),
            Advice = rule.Advice,
            Source = rule.Source.ToString(),
            At = parts.Count > 0 ? parts[0].At : table.At,
            Related = Places(rule, judgement),
            ToMeasure = measure,
            Fingerprint = Fingerprint(rule.Id, buildName, table.Key, rule.Fact.Text),
        };
    }

    // The finding names its place already; a work sheet of several places needs it in each line, a sentence about one does not.
    private static string Here(string what, FactTable table) =>
        what.Replace($" at {table.Name}", "", StringComparison.Ordinal).Replace($" ({table.Name})", "", StringComparison.Ordinal);

    private static Uncertain InUnit(in Uncertain n, Unit unit) =>
        new(unit.FromSi(n.Value), unit.FromSi(n.Low), unit.FromSi(n.High), unit.FromSi(n.Rss));

    // A rule with limits on both sides passes between them, so a datum is told both.
    private static List<ToMeasure> Measures(Judgement judgement)
    {
        var limits = new[] { LimitSide.Below, LimitSide.Above }
            .Select(side =>
            (judgement.Limits.FirstOrDefault(l => l.Side == side && l.Status == Status.Warn)
                ?? judgement.Limits.FirstOrDefault(l => l.Side == side))?.Passing)
            .OfType<PassLimit>().ToList();
        return [.. judgement.Unsure.Select(u => new ToMeasure(u.What, How(u), Passing(u, limits))
        {
            IsForMaker = u.IsForMaker,
            Key = u.Key,
        }).Distinct()];
    }

    // What no reading answers is written into the entry; most questions say so by themselves.
    private static string How(Unsure unsure) =>
        unsure.Key is { Where: { } where } key && !unsure.How.Contains('`', StringComparison.Ordinal)
            && AnswerShape.Of(key)?.IsNothingOnly != false
            ? $"{unsure.How} {UnwrittenKey.Begins}{key.Of}` into {where}." : unsure.How;

    private static string? Passing(Unsure unsure, List<PassLimit> limits)
    {
        var texts = limits.Select(l => unsure.Passing?.Invoke(l)).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        return texts.Count > 0 ? string.Join(" and ", texts) : null;
    }

    // What only the tolerances leave open tells what the nominal value alone would say, and then what the worst case, or the best one,
    // makes of it.
    private static string Message(Rule rule, MessageVariables variables, Judgement judgement, ProblemList? problems)
    {
        if (!judgement.InDoubt || judgement.Fact.Number is not { } number || judgement.Deciding is not { } limit)
            return Message(rule, variables, judgement.Status, problems);
        var good = judgement.Margin >= 0;
        var broken = judgement.Limits.FirstOrDefault(l => l.Margin(judgement.Fact) < 0);
        var nominal = Message(rule, broken is null ? variables : variables.Against(broken), broken?.Status ?? Status.Pass, problems);
        var other = limit.Side == LimitSide.Below == good ? number.Low : number.High;
        var perhaps = $"it may be {Shown.Number(other, rule.Unit!, null)} (typically ±{Shown.Number(number.Rss, rule.Unit!, null)})";
        return judgement.Status == Status.Measure
            ? $"{nominal} Only the tolerances of the figures could save it: {perhaps}. Measure before you give it up: "
                + $"{variables.Find("wanted")}"
            : $"{nominal} The tolerances of the figures leave it open: {perhaps}, so "
                + $"{(good ? "try it before anything is cut" : "measure before you give it up")}.";
    }

    private static string Message(Rule rule, MessageVariables variables, Status status, ProblemList? problems)
    {
        if (rule.Messages[status] is not { } template)
            throw new InvalidOperationException($"{rule.Id} has no message for {status.Word()}");
        if (template.Render(variables.Find, out var problem) is { } message)
            return message;
        problems?.Error(template.At, $"the message can't be rendered: {problem}", ProblemKind.BrokenRule);
        return $"{rule.Title}: {variables.Find("value")}. (The message of this rule can't be rendered; `fitcheck lint` says why.)";
    }

    private static Related[] Places(Rule rule, Judgement judgement)
    {
        var threshold = judgement.Deciding?.Bound.At ?? rule.When?.At ?? rule.Fact.At;
        var what = judgement.Deciding is null ? "condition of the rule" : "threshold of the rule";
        Related[] places = [.. judgement.Data.Select(d => new Related(d.At, d.What)).Append(new Related(threshold, what)).Distinct()];
        Array.Sort(places, (a, b) => a.At.CompareTo(b.At) is not 0 and var order ? order : string.CompareOrdinal(a.What, b.What));
        return places;
    }

    private static string Fingerprint(string rule, string build, string position, string fact) =>
        Sha256.Of(Encoding.UTF8.GetBytes(string.Join('\n', rule, build, position, fact)))[..16];
}
