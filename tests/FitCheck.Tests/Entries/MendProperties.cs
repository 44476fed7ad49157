using System.Text;
using CsCheck;
using FitCheck.Fixes;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Entries;

/// <summary>
/// Entries of our catalog, roughened in ways that mean nothing: other spellings, spaces at line ends, keys in another order, other line
/// ends, no last one.
/// </summary>
public sealed class MendProperties
{
    private static readonly (string Kind,
        string Text)[] Entries = [.. new[] { ("drivers", "driver"), ("amplifiers", "amplifier"), ("adapters", "adapter"),
            ("vehicles", "vehicle"), ("crossovers", "crossover"), ("wiring", "wiring") }
        .SelectMany(
        k => Directory.GetFiles(RepositoryRoot.Of("catalog", k.Item1), "*.yaml").Order(StringComparer.Ordinal).Take(12)
            .Select(f => (k.Item2, File.ReadAllText(f))))];

    // In these a unit is part of a text.
    private static readonly string[] Words = ["name:", "notes:", "source:"];

    private static readonly Gen<(string Kind, string Good, string Rough)> Rough =
        from entry in Gen.OneOf(Entries)
        from seed in Gen.Int[0, int.MaxValue - 1]
        select (entry.Kind, entry.Text, Roughened(entry.Text, new Random(seed)));

    [Fact]
    public void Mending_twice_is_mending_once() => Rough.Sample(x =>
    {
        var once = Mended(x.Kind, x.Rough);
        return Mended(x.Kind, once.Text) is { Edits.Count: 0 } twice && twice.Text == once.Text;
    }, iter: 300);

    [Fact]
    public void The_data_are_the_same_afterwards() =>
        Rough.Where(x => Tree(x.Rough) is not null).Sample(x => Same(Tree(x.Good), Tree(Mended(x.Kind, x.Rough).Text)), iter: 300);

    [Fact]
    public void A_good_entry_is_not_touched() => Assert.All(Entries, e => Assert.Empty(Mended(e.Kind, e.Text).Edits));

    [Fact]
    public void Every_line_without_an_edit_is_kept_byte_for_byte() => Rough.Sample(x =>
    {
        var (text, edits) = Mended(x.Kind, x.Rough);
        var spelled = edits.Where(e => !e.What.Contains("moved", StringComparison.Ordinal)).Select(e => e.At.Line).ToHashSet();
        var kept = x.Rough.Split('\n').Where((_, i) => !spelled.Contains(i + 1));
        var after = text.Split('\n').GroupBy(l => l, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        return kept.GroupBy(l => l, StringComparer.Ordinal).All(g => after.GetValueOrDefault(g.Key) >= g.Count());
    }, iter: 300);

    [Fact]
    public void Whatever_the_text_nothing_is_thrown_and_the_data_stay() =>
        Gen.OneOf(Gen.OneOf("id: a", "  ", "\t", "\r", "# c", "notes: |", "  x  ", "\"", "'", "- ", "{", "}", "&a", "*a",
            "impedance: 4 Ohms", "---", ":", "\u0085", "\u2028"), Gen.String[0, 3])
        .Array[0, 12].Select(parts => string.Join("\n", parts)).Sample(text =>
        {
            var after = Mended("driver", text).Text;
            return after == text || SameData.Holds(Tree(text)!, Tree(after)!, Spelled(Tree(text)!));
        }, iter: 3000);

    // Of these keys one only is a quantity, and it has one spelling.
    private static Dictionary<Location, string> Spelled(YamlNode root) => root is YamlMap map
        ? map.Entries.Where(e => e is { Key: "impedance", Value: YamlScalar { Text: "4 Ohms" } })
        .ToDictionary(e => e.Value.At, _ => "4 ohm") : [];

    private static string Roughened(string text, Random random)
    {
        var lines = text.Split('\n').ToList();
        for (var i = 1; i < lines.Count; i++)
        {
            var folded = lines.Take(i + 1).Any(l => l.Contains(">-", StringComparison.Ordinal) || l.EndsWith('|'));
            if (random.Next(4) == 0 && !folded && !Words.Any(w => lines[i].Contains(w, StringComparison.Ordinal)))
                lines[i] = lines[i].Replace(" ohm", random.Next(2) == 0 ? " Ohms" : "Ω", StringComparison.Ordinal)
                    .Replace(" mm,", " millimetres,", StringComparison.Ordinal)
                    .Replace("dB @ 1 W/1 m", "dB @1W/1m", StringComparison.Ordinal).Replace(" Hz", "Hz", StringComparison.Ordinal)
                    .Replace(" AWG", "awg", StringComparison.Ordinal);
            if (!folded && random.Next(6) == 0)
                lines[i] += random.Next(2) == 0 || lines[i].EndsWith(':') ? "  " : " \t"; // a tab where a block may begin is no YAML
        }
        if (random.Next(3) == 0 && lines.Count > 6)
            (lines[4], lines[5]) =
                lines[4].StartsWith(' ') || lines[5].StartsWith(' ') || lines[6].StartsWith(' ') ? (lines[4], lines[5])
                    : (lines[5], lines[4]);
        var joined = string.Join(random.Next(3) == 0 ? "\r\n" : "\n", lines);
        return random.Next(4) == 0 ? joined.TrimEnd('\r', '\n') : joined;
    }

    private static (string Text, IReadOnlyList<Mended> Edits) Mended(string kind, string text)
    {
        var mended = Mend.Of("f", Encoding.UTF8.GetBytes(text), kind,
            Mend.KeysOf(File.ReadAllText(RepositoryRoot.Of("catalog", "starters", kind + ".yaml"))));
        return (Encoding.UTF8.GetString(mended.Bytes), mended.Edits);
    }

    private static YamlNode? Tree(string text)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("f", text), problems);
        return problems.HasErrors ? null : root;
    }

    private static bool Same(YamlNode? a, YamlNode? b) =>
        a is not null && b is not null && SameData.Holds(a, b, new Dictionary<Location, string>());
}
