using System.Globalization;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>The pairs of outputs that an amplifier's maker allows to be bridged; none of them: there are none.</summary>
internal sealed record Bridges(IReadOnlyList<(string First, string Second)> Pairs, Location At)
{
    internal static Bridges? Read(Fields f, int channels)
    {
        if (f.Map["bridges"] is not YamlList list)
            return null;
        var pairs = new List<(string, string)>();
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in list.Items)
        {
            if (item is not YamlList { Items: [YamlScalar first, YamlScalar second] })
                continue;
            foreach (var one in new[] { first, second })
            {
                if (!int.TryParse(one.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1
                    || number > channels)
                    f.Problems.Error(one.At, $"there is no output {one.Text}; `channels` says {channels}", ProblemKind.WrongShape);
                else if (!used.Add(one.Text))
                    f.Problems.Error(one.At,
                        one.Text == first.Text && one != first ? $"the output {one.Text} can't be bridged with itself"
                            : $"the output {one.Text} stands in two pairs", ProblemKind.WrongShape);
            }
            pairs.Add((first.Text, second.Text));
        }
        return new Bridges(pairs, list.At);
    }

    public bool Have(IReadOnlyList<string> outputs) => outputs is [var a, var b] && Pairs.Any(p => p == (a, b) || p == (b, a));

    /// <summary>Two neighbours, the first one odd: the pairs that most amplifiers are made for (common practice, no source).</summary>
    public static bool AreUsual(IReadOnlyList<string> outputs) => outputs.Count == 2
        && int.TryParse(outputs[0], NumberStyles.None, CultureInfo.InvariantCulture, out var a)
        && int.TryParse(outputs[1], NumberStyles.None, CultureInfo.InvariantCulture, out var b)
        && Math.Min(a, b) % 2 == 1 && Math.Abs(a - b) == 1;
}
