using System.Globalization;
using System.Text;

namespace FitCheck.Benchmarks.Synthetic;

/// <summary>One entry, written as people write them: a key a line, short collections in one line.</summary>
internal sealed class EntryText
{
    private readonly StringBuilder _text = new();

    public EntryText(string id, string kind, string name, Dice dice)
    {
        Id = id;
        var provenance = dice.Of("datasheet", "datasheet", "datasheet", "measured", "estimated");
        Line($"id: {id}").Line($"kind: {kind}").Line($"name: {name}").Line($"provenance: {provenance}").Line("source: " + provenance switch
        {
            "measured" => $"Measured on {dice.Of("one sample", "two samples", "three samples")} with callipers",
            "estimated" => "Scaled from the drawing in the maker's leaflet",
            _ => $"Maker's data sheet, revision {dice.Whole(1, 9)}",
        });
        if (!dice.Chance(0.1))
            return;
        Line("notes: >-").Line("  Sold in two finishes; the figures are those of the plain one.")
            .Line($"  Seen in the list of month {dice.Whole(1, 12)}.");
    }

    public string Id { get; }

    public EntryText Line(string line)
    {
        _text.Append(line).Append('\n');
        return this;
    }

    public EntryText Line(FormattableString line) => Line(line.ToString(CultureInfo.InvariantCulture));

    /// <summary>What every part has that can be bought.</summary>
    public EntryText Sold(Dice dice, int pack, double low, double high) =>
        Line($"pack: {pack}").Line($"price: {Math.Floor(dice.Around(low, high)) + 0.9:0.00} EUR")
            .Line($"availability: {dice.Of("current", "current", "current", "to-order", "discontinued")}");

    /// <summary>As a document of its own.</summary>
    public string Alone(string kind) => $"# yaml-language-server: $schema=../schema/{kind}.schema.json\n{_text}";

    /// <summary>As an item of a list.</summary>
    public string Item() =>
        "- " + _text.ToString().TrimEnd('\n').Replace("\n", "\n  ", StringComparison.Ordinal)
            .Replace("\n  \n", "\n\n", StringComparison.Ordinal) + "\n";
}
