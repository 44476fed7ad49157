using System.Runtime.CompilerServices;
using Xunit;

namespace FitCheck.Tests.Snapshots;

/// <summary>
/// Compares a text with NAME.verified.EXT beside the test's source. On a difference the text is left as NAME.received.EXT: whoever reads it
/// and finds it right renames it.
/// </summary>
public static class Snapshot
{
    private const int LinesShown = 40;

    public static void Match(string actual, string name, string extension = "txt", [CallerFilePath] string testFile = "")
    {
        var start = Path.Combine(Path.GetDirectoryName(testFile)!, name);
        string verified = $"{start}.verified.{extension}", received = $"{start}.received.{extension}";
        var expected = File.Exists(verified) ? File.ReadAllText(verified) : null;
        if (actual == expected)
        {
            File.Delete(received);
            return;
        }
        File.WriteAllText(received, actual);
        Assert.Fail(expected is null
            ? $"There is no {verified}. Read {received} and rename it if it is right."
            : $"{received} differs from the verified file:\n{Diff(expected.Split('\n'), actual.Split('\n'))}");
    }

    // What differs between the first and the last lines that agree; enough for a person to find the place.
    private static string Diff(string[] expected, string[] actual)
    {
        var shorter = Math.Min(expected.Length, actual.Length);
        var head = 0;
        while (head < shorter && expected[head] == actual[head])
            head++;
        var tail = 0;
        while (tail < shorter - head && expected[^(tail + 1)] == actual[^(tail + 1)])
            tail++;
        var lines = expected[head..^tail].Select((line, i) => $"{head + i + 1,5} - {Visible(line)}")
            .Concat(actual[head..^tail].Select((line, i) => $"{head + i + 1,5} + {Visible(line)}")).ToList();
        var more = lines.Count > LinesShown ? $"\n      and {lines.Count - LinesShown} more lines" : "";
        return string.Join('\n', lines.Take(LinesShown)) + more;
    }

    private static string Visible(string line) => line.Replace("\r", "␍");
}
