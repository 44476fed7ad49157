using System.Text;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;

namespace FitCheck.Rules;

/// <summary>Tells in plain text what a rule asks, why, and how to satisfy it; everything comes from the rule's file.</summary>
public static class Explain
{
    private const int Width = 96;

    /// <summary>The whole explanation, its lines ended by `\n`.</summary>
    public static string Text(Rule rule, IReadOnlyList<FactDeclaration> declared)
    {
        var text = new StringBuilder();
        text.Append(rule.Id).Append('\n');
        Wrapped(text, "", rule.Title);
        Heading(text, "What it asks");
        Row(text, "of each", rule.Subject.Word());
        if (rule.When is not null)
            Row(text, "when", rule.When.Text);
        Row(text, "fact", rule.Fact.Text + (rule.Unit is { Symbol: not "1" } unit ? $" (in {unit.Symbol})" : ""));
        Row(text, "warns", rule.Warn?.ToString() ?? "never");
        Row(text, "fails", rule.Fail?.ToString() ?? "never");
        Section(text, "Why", rule.Why);
        Section(text, "What to do", rule.Advice);
        if (rule.Caution is not null)
            Section(text, "Caution", rule.Caution);
        Section(text, "Source", rule.Source.ToString());
        Heading(text, "What it says");
        foreach (var status in rule.Statuses)
            Row(text, status.Word(), rule.Messages[status].Text);
        Heading(text, "Examples");
        foreach (var example in rule.Examples)
            Row(text, example.Expect?.Word() ?? "none", $"{example.Name}: {Given(rule, example)}");
        var facts = Facts(rule, declared);
        if (facts.Count > 0)
            Heading(text, "Facts");
        foreach (var fact in facts)
            Row(text, fact.Name, $"{fact.Meaning} ({fact.Type})");
        return text.ToString();
    }

    private static List<FactDeclaration> Facts(Rule rule, IReadOnlyList<FactDeclaration> declared) =>
        [.. rule.Names.Select(n => declared.FirstOrDefault(d => d.Subject == rule.Subject && d.Name == n)).OfType<FactDeclaration>()];

    private static string Given(Rule rule, RuleExample example)
    {
        var parts = example.Facts.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key} = {Value(f.Value, null)}");
        return string.Join(", ", example.Given is null ? parts : parts.Prepend(Value(example.Given, rule.Unit)));
    }

    private static string Value(FactValue value, Physics.Quantities.Unit? unit)
    {
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

    private static void Heading(StringBuilder text, string heading) => text.Append('\n').Append(heading).Append('\n');

    private static void Row(StringBuilder text, string label, string value) => Wrapped(text, $"  {label.PadRight(8)} ", value);

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
