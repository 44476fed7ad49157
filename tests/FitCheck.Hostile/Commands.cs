using System.Diagnostics;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FitCheck.Cli.Output;
using FitCheck.Foundation.Problems;

namespace FitCheck.Hostile;

/// <summary>Something did not hold: what was run, and what came of it.</summary>
internal sealed class BrokenException(string what) : Exception(what);

/// <summary>
/// Runs commands inside this process, through the entry that the program has, and holds their answers to what is promised: an exit status,
/// a place for whatever is refused, JSON and XML that can be read. What takes more than five seconds ends the process.
/// </summary>
internal sealed partial class Commands : IDisposable
{
    /// <summary>The exit status of a process whose command took too long.</summary>
    public const int Hung = 71;

    private static readonly TimeSpan Most = TimeSpan.FromSeconds(5);
    // On a machine with much else to do five seconds may pass with nothing done.
    private static readonly TimeSpan MostWaiting = TimeSpan.FromSeconds(60);
    // Between two questions a person sees a search go on, four times for three seconds.
    private static readonly TimeSpan MostBetweenQuestions = TimeSpan.FromSeconds(30);

    private readonly TextWriter _output = Console.Out;
    private readonly Process _self = Process.GetCurrentProcess();
    private readonly Timer _alarm;
    private long _begun;
    private TimeSpan _spent, _most = Most;
    private string _now = "";

    public Commands() => _alarm = new Timer(_ => Look(), null, 500, 500);

    /// <summary>How many were run.</summary>
    public int Count { get; private set; }

    /// <summary>The longest of them, in milliseconds.</summary>
    public long Longest { get; private set; }

    public void Dispose()
    {
        _alarm.Dispose();
        _self.Dispose();
    }

    /// <summary>Runs one, and returns its status and what it said on standard error.</summary>
    public (int Status, string Error) Run(params string[] words)
    {
        var (status, told) = Run("fitcheck " + string.Join(' ', words), mustSay: words[0] != "lint", () => Cli.Program.Run(words));
        for (var i = 0; i + 1 < words.Length; i++)
        {
            if (words[i] is "-o" or "--output" && File.Exists(words[i + 1]))
                Whole(words[i + 1]);
        }
        return (status, told);
    }

    /// <summary>Runs what a terminal would ask; who answers may break off.</summary>
    public void Asked(string what, Func<int> dialogue) => Run(what, mustSay: true, () =>
    {
        _most = MostBetweenQuestions;
        try
        {
            return dialogue();
        }
        catch (BrokenOffException)
        {
            return ExitStatus.Good;
        }
        finally
        {
            _most = Most;
        }
    });

    /// <summary>The clock of what is being run begins again: another question was asked.</summary>
    public void Again()
    {
        _spent = _self.TotalProcessorTime;
        Volatile.Write(ref _begun, Stopwatch.GetTimestamp());
    }

    private (int Status, string Error) Run(string what, bool mustSay, Func<int> run)
    {
        using var error = new StringWriter();
        using var output = new StringWriter();
        Console.SetError(error);
        Console.SetOut(output);
        var status = 0;
        try
        {
            Timed(what, () => status = run());
        }
        finally
        {
            Console.SetOut(_output);
        }
        var told = error.ToString();
        Hold(status is >= 0 and <= 2, $"status {status}: {told}");
        Placed(told, mustSay: status == ExitStatus.BadInput && mustSay);
        return (status, told);
    }

    /// <summary>Anything else that has to end in time.</summary>
    public void Timed(string what, Action action)
    {
        _now = what;
        Count++;
        _spent = _self.TotalProcessorTime;
        Volatile.Write(ref _begun, Stopwatch.GetTimestamp());
        try
        {
            action();
        }
        catch (Exception e) when (e is not BrokenException)
        {
            throw new BrokenException($"{what}: {e}");
        }
        finally
        {
            Longest = Math.Max(Longest, (long)Stopwatch.GetElapsedTime(Volatile.Read(ref _begun)).TotalMilliseconds);
            Volatile.Write(ref _begun, 0);
        }
    }

    /// <summary>What is refused has a place, but for a file that can't be read as text at all.</summary>
    public void Placed(IEnumerable<Problem> problems, bool answered)
    {
        var all = problems.ToList();
        Hold(answered || all.Exists(p => p.Severity == Severity.Error), "neither an answer nor a reason");
        foreach (var problem in all)
            Hold(problem.Message.Length > 0 && (problem.At is { Line: > 0, Column: > 0 } || problem.Kind == ProblemKind.Unreadable),
                $"no place: {problem}");
    }

    /// <summary>The same of lines.</summary>
    public void Placed(string told, bool mustSay)
    {
        var lines = told.Split('\n');
        Hold(!mustSay || lines.Any(l => l.Contains(": error: ", StringComparison.Ordinal) || l.StartsWith("fitcheck: ",
            StringComparison.Ordinal)), $"status 2 without a reason: {told}");
        foreach (var line in lines.Where(l => l.Contains(": error: ", StringComparison.Ordinal)))
            Hold(Place().IsMatch(line) || Unreadable().IsMatch(line), $"no place: {line}");
        Hold(!told.Contains("   at FitCheck", StringComparison.Ordinal), $"a stack trace: {told}");
    }

    public void Hold(bool condition, string what)
    {
        if (!condition)
            throw new BrokenException($"{_now}: {what}");
    }

    private void Whole(string file) => Timed($"reading {file}", () =>
    {
        if (file.EndsWith(".json", StringComparison.Ordinal) || file.EndsWith(".sarif", StringComparison.Ordinal))
            JsonNode.Parse(File.ReadAllText(file));
        else if (file.EndsWith(".xml", StringComparison.Ordinal))
            XDocument.Load(file);
    });

    private void Look()
    {
        if (Volatile.Read(ref _begun) is not (> 0 and var begun) || Stopwatch.GetElapsedTime(begun) is var waited && waited < _most)
            return;
        _self.Refresh();
        if (waited < MostWaiting && _self.TotalProcessorTime - _spent < _most)
            return;
        _output.WriteLine($"@@ hang {_now}");
        _output.Flush();
        Environment.Exit(Hung);
    }

    // An option is a place too.
    [GeneratedRegex(@"^(.+:[1-9]\d*:[1-9]\d*|--(at|as|skip|accept)): error: .",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Place();

    [GeneratedRegex(@"^.+: error: (the (file|table|list) (is|has|can't|of|begins)|no line of the list|no row of headings|"
        + "expected a text with two columns)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Unreadable();
}
