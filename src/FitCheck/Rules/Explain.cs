using System.Text;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules.Messages;
using FitCheck.Rules.Model;

namespace FitCheck.Rules;

/// <summary>Tells in plain text what a rule asks, why, and how to satisfy it; everything comes from the rule's file.</summary>
internal static class Explain
{
    private const int MostKeys = 12;

    private const int Width = 96;

    /// <summary>The whole explanation, its lines ended by `\n`.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="declared">Every fact, for its meaning.</param>
    /// <param name="change">What a shop changed of it; null for nothing.</param>
    public static string Text(Rule rule, IReadOnlyList<Fact> declared, RuleChange? change = null)
    {
        var text = new StringBuilder();
        text.Append(rule.Id).Append('\n');
        Wrapped(text, "", rule.Title);
        Rows(text, "What it asks", Question(rule));
        if (change is not null)
            Section(text, "Changed by this shop", change.Reason is { } reason ? $"{change.What}. Reason: {reason}" : change.What);
        Section(text, "Why", rule.Why);
        Section(text, "What to do", rule.Advice);
        if (rule.Caution is not null)
            Section(text, "Caution", rule.Caution);
        Section(text, "Source", rule.Source.ToString());
        Rows(text, "What it says", rule.Statuses.Select(s => (s.Word(), rule.Messages[s]!.Text)));
        Rows(text, "Examples", rule.Examples.Select(e => (e.Expect?.Word() ?? "none", $"{e.Name}: {Given(rule, e)}")));
        Rows(text, "Facts", Facts(rule, declared).Select(f => (f.Name, $"{f.Meaning} ({f.Type})")));
        Rows(text, "Read from", Reads(Facts(rule, declared)));
        return text.ToString();
    }

    // What its facts read, each source once; of a source of which much is read the name says more than a list of keys.
    private static IEnumerable<(string Label, string Value)> Reads(IEnumerable<Fact> facts) =>
        from source in facts.SelectMany(f => f.Inputs).GroupBy(i => i.Source)
        let keys = source.SelectMany(i => i.Keys).Distinct(StringComparer.Ordinal).ToList()
        select (source.Key.Name, Told(keys));

    private static string Told(List<string> keys) => keys switch
    {
        [Source.Everything] => "everything",
        [] => "which it is",
        { Count: > MostKeys } => "what counts of it",
        _ => string.Join(", ", keys),
    };

    private static IEnumerable<(string Label, string Value)> Question(Rule rule)
    {
        yield return ("of each", rule.Subject.Word());
        if (rule.When is not null)
            yield return ("when", rule.When.Text);
        yield return ("fact", rule.Fact.Text + (rule.Unit is { Symbol: not "1" } unit ? $" (in {unit.Symbol})" : ""));
        yield return ("warns", rule.Warn?.ToString() ?? "never");
        yield return ("fails", rule.Fail?.ToString() ?? "never");
        if (!rule.CanBeWaived)
            yield return ("waived", "never: a build that does so is refused, and so is a directory of rules that loosens it");
        if (rule.AsksFor is { } asked)
            yield return ("asks for", asked.Words);
    }

    private static IEnumerable<Fact> Facts(Rule rule, IReadOnlyList<Fact> declared) =>
        rule.Names.Select(n => declared.FirstOrDefault(d => d.Subject == rule.Subject && d.Name == n)).OfType<Fact>();

    private static string Given(Rule rule, RuleExample example)
    {
        var parts = example.Facts.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key} = {Value(f.Value, null)}");
        return string.Join(", ", example.Given is null ? parts : parts.Prepend(Value(example.Given, rule.Unit)));
    }

    private static string Value(FactValue value, Physics.Quantities.Unit? unit)
    {
        unit ??= value.Type.Kind == FactKind.Number ? Physics.Quantities.Unit.DisplayFor(value.Type.Dimension) : null;
        var text = Shown.Value(value, unit, currency: null);
        if (value.Number is { IsExact: false } n && unit is not null)
            text += $", from {Shown.Number(n.Low, unit, null)} to {Shown.Number(n.High, unit, null)}";
        return value.IsEstimated ? text + ", estimated" : text;
    }

    private static void Section(StringBuilder text, string heading, string paragraph)
    {
        Heading(text, heading);
        Wrapped(text, "  ", paragraph);
    }

    private static void Rows(StringBuilder text, string heading, IEnumerable<(string Label, string Value)> rows)
    {
        var all = rows.ToList();
        if (all.Count > 0)
            Heading(text, heading);
        foreach (var (label, value) in all)
            Wrapped(text, $"  {label.PadRight(all.Max(r => r.Label.Length))}  ", value);
    }

    private static void Heading(StringBuilder text, string heading) => text.Append('\n').Append(heading).Append('\n');

    // Words are kept whole; the lines that follow stand under the first.
    private static void Wrapped(StringBuilder text, string prefix, string paragraph)
    {
        text.Append(prefix);
        var column = prefix.Length;
        foreach (var word in paragraph.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (column > prefix.Length && column + 1 + word.Length > Width)
            {
                text.Append('\n').Append(' ', prefix.Length);
                column = prefix.Length;
            }
            else if (column > prefix.Length)
            {
                text.Append(' ');
                column++;
            }
            text.Append(word);
            column += word.Length;
        }
        text.Append('\n');
    }
}
