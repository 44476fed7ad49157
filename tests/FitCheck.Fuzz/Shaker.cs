using System.Text;

namespace FitCheck.Fuzz;

/// <summary>
/// Makes documents of others by shaking them at random: lines lost, doubled and exchanged, values exchanged for those of other documents or
/// for hostile ones, bytes flipped, ends cut off. The same seed makes the same documents.
/// </summary>
internal sealed class Shaker
{
    private static readonly string[] Hostile =
    [
        "", "~", "null", "-0 mm", "1e999 mm", "NaN ohm", "999999999999999999999", "-1", "0 mm ± 0 mm", "65 mm ± 1e308 mm", "&a", "*a",
        "!!str x", "!t", "|", ">-", "{", "[", "]", "}", "? x", "- - -",
        "\"", "'", "\t", "\u0000", "\uFEFF", "\u2028", "{{ value }}", "{{ for x in 1..9999999 }}", "${HOME}", "../../etc/passwd",
        "a: b: c", "[[[[[[[[[[[[[[[[", "never", "65 mm (estimated)", "65 in", "true", "x x x",
        "::error::x", "##vso[x]", "\u202E", "360 deg", "-90 deg", "90 deg", "0 ohm", "1e-300 mm", "1e300 mm", "2026-02-30", "default",
    ];

    private readonly Random _random;
    private readonly string[][] _lines;

    public Shaker(IReadOnlyList<byte[]> documents, int seed)
    {
        _random = new Random(seed);
        _lines = [.. documents.Select(d => Encoding.UTF8.GetString(d).Split('\n'))];
    }

    /// <summary>One made of any of the documents.</summary>
    public byte[] Next() => Next(_random.Next(_lines.Length));

    /// <summary>One made of the document of this number.</summary>
    public byte[] Next(int document)
    {
        var lines = _lines[document].ToList();
        for (var times = _random.Next(1, 6); times > 0 && lines.Count > 0; times--)
            Shake(lines);
        var bytes = Encoding.UTF8.GetBytes(string.Join('\n', lines));
        if (_random.Next(4) == 0 && bytes.Length > 0)
            bytes[_random.Next(bytes.Length)] ^= (byte)(1 << _random.Next(8));
        return _random.Next(20) == 0 ? bytes[.._random.Next(bytes.Length + 1)] : bytes;
    }

    private void Shake(List<string> lines)
    {
        var at = _random.Next(lines.Count);
        switch (_random.Next(8))
        {
            case 0:
                lines.RemoveAt(at);
                break;
            case 1:
                lines.Insert(at, lines[at]);
                break;
            case 2:
                lines.Insert(at, Any(Any(_lines)));
                break;
            case 3:
                var other = _random.Next(lines.Count);
                (lines[at], lines[other]) = (lines[other], lines[at]);
                break;
            case 4:
                lines[at] = _random.Next(2) == 0 ? "  " + lines[at] : lines[at].TrimStart();
                break;
            case 5:
                lines[at] = WithValue(lines[at], Any(Hostile));
                break;
            case 6:
                lines[at] = WithValue(lines[at], Any(Any(_lines)).Split(": ")[^1]);
                break;
            default:
                lines[at] = lines[at].Insert(_random.Next(lines[at].Length + 1), Any(Hostile));
                break;
        }
    }

    private static string WithValue(string line, string value) =>
        line.IndexOf(": ", StringComparison.Ordinal) is > 0 and var colon ? line[..(colon + 2)] + value : value;

    private T Any<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];
}
