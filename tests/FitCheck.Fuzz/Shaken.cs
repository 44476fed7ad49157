using System.Diagnostics;
using System.Text;

namespace FitCheck.Fuzz;

/// <summary>
/// Documents shaken at random, without a fuzzer: lines lost, doubled and exchanged, values exchanged for those of other documents or for
/// hostile ones, bytes flipped, ends cut off. A thousand times faster than a fuzzer that looks where each input goes, so both have their
/// use. The same seed makes the same documents.
/// </summary>
internal sealed class Shaken(IReadOnlyList<byte[]> documents, int seed)
{
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(10);

    private static readonly string[] Hostile =
    [
        "", "~", "null", "-0 mm", "1e999 mm", "NaN ohm", "999999999999999999999", "-1", "0 mm ± 0 mm", "65 mm ± 1e308 mm", "&a", "*a",
        "!!str x", "!t", "|", ">-", "{", "[", "]", "}", "? x", "- - -",
        "\"", "'", "\t", "\u0000", "\uFEFF", "\u2028", "{{ value }}", "{{ for x in 1..9999999 }}", "${HOME}", "../../etc/passwd",
        "a: b: c", "[[[[[[[[[[[[[[[[", "never", "65 mm (estimated)", "65 in", "true", "x x x",
    ];

    private readonly Random _random = new(seed);
    private readonly string[][] _lines = [.. documents.Select(d => Encoding.UTF8.GetString(d).Split('\n'))];

    /// <summary>Tries so many; what fails is written to a file, and its name told.</summary>
    public int Run(Action<byte[]> target, long count)
    {
        var input = Array.Empty<byte>();
        var watch = Stopwatch.StartNew();
        var begun = 0L;
        using var alarm = new Timer(_ =>
        {
            if (watch.ElapsedMilliseconds - Volatile.Read(ref begun) > Hang.TotalMilliseconds)
                Environment.Exit(Failed(input, $"takes longer than {Hang.TotalSeconds:0} s"));
        }, null, Hang, Hang);
        for (var i = 0L; i < count; i++)
        {
            input = Next();
            Volatile.Write(ref begun, watch.ElapsedMilliseconds);
            try
            {
                target(input);
            }
            catch (Exception e)
            {
                return Failed(input, e.ToString());
            }
        }
        Console.WriteLine($"{count} documents, none failed; {count / watch.Elapsed.TotalSeconds:0} a second");
        return 0;
    }

    private static int Failed(byte[] input, string why)
    {
        var file = Path.Combine(Path.GetTempPath(), $"fitcheck-shaken-{Guid.NewGuid():N}");
        File.WriteAllBytes(file, input);
        Console.Error.WriteLine($"{file}: {why}");
        return 1;
    }

    private byte[] Next()
    {
        var lines = Any(_lines).ToList();
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
