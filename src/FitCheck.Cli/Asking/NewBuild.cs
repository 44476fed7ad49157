using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Asking;

/// <summary>From the first question to the file and its verdict.</summary>
internal static class NewBuild
{
    /// <summary>
    /// Asks (not for a vehicle that is named already), writes the file whole or not at all, checks it, and says how to go on. Returns the
    /// exit status.
    /// </summary>
    /// <param name="ask">Who answers.</param>
    /// <param name="file">Where to; null to ask for it at the end.</param>
    /// <param name="vehicle">Its id, or words that name it; null to ask for it.</param>
    /// <param name="folders">Catalogs and rules.</param>
    /// <param name="named">The options that name them, as they were given: the last line repeats them.</param>
    public static int Run(IQuestions ask, string? file, string? vehicle, Folders folders, string named = "")
    {
        if (file is not null && OutputFile.Taken(file) is { } taken)
            return Failed(taken);
        using var line = new ProgressLine();
        var opened = Checker.Open(CheckerOptions.Of(folders, ValidationCache.InUserFolder(), line));
        if (opened.Checker is not { } checker)
            return ProblemLines.Tell(opened.Problems, Console.Error);
        var problems = new ProblemList();
        var charts = new Dictionary<string, ChartResult?>(StringComparer.Ordinal);
        var catalog = PartsCatalog.Open(folders.Catalog, problems);
        var steps = new Steps(ask);
        var improvement = new Improvement(checker, line);
        var judge = new DraftJudge(checker);
        string? nothing = null;
        var (text, written) = steps.Through(asking =>
        {
            var dialogue = new BuildDialogue(catalog, Charted, judge, asking);
            if (dialogue.Ask(vehicle) is not { } draft)
            {
                nothing = dialogue.NothingToChoose;
                return ((string?)null, (string?)null);
            }
            var build = improvement.Offered(asking, draft, DraftYaml.Of(draft));
            return ((string?)build, (string?)(file ?? asking.Text("Write it to which file?", Free(draft.Vehicle.Id),
                f => f.Length == 0 ? null : OutputFile.Taken(f))));
        });
        line.Dispose();
        if (text is null)
            return nothing is { } why ? Failed(why) : ProblemLines.Tell(problems.Sorted(), Console.Error);
        return Written(written!, text) is not ExitStatus.Good and var failed ? failed : Told(written!, opened, named);

        ChartResult? Charted(ChartSlice slice)
        {
            var key = string.Join(' ', [.. slice.Vehicles, .. slice.Accepts ?? []]);
            if (charts.TryGetValue(key, out var known))
                return known;
            var outcome = checker.Chart(new ChartOptions { Slice = slice, Progress = line });
            if (outcome.Result is null)
                problems.AddRange(opened.With(outcome.Problems));
            return charts[key] = outcome.Result;
        }
    }

    /// <summary>Writes a new file; one that exists is kept. Returns the exit status.</summary>
    public static int Written(string file, string text) => OutputFile.New(file, text) is { } error ? Failed(error) : ExitStatus.Good;

    private static int Told(string file, OpenOutcome opened, string named)
    {
        IReadOnlyList<BuildSource> builds = [BuildSource.File(file)];
        if (opened.Checker is not { } checker)
            return ProblemLines.Tell(opened.ProblemsWith(builds), Console.Error);
        var outcome = checker.Check(builds);
        if (outcome.Result is not { } result)
            return ProblemLines.Tell(opened.With(outcome.Problems), Console.Error);
        Console.Out.WriteLine();
        Console.Out.WriteLine($"{PlainText.Line(file)} is written. {Headline.Of(result.Builds[0])}");
        Console.Out.WriteLine($"Go on with: fitcheck check {Quoted(file)}{named}");
        return ExitStatus.Good;
    }

    /// <summary>A word as a shell takes it.</summary>
    public static string Quoted(string word) => word.Any(c => !char.IsAsciiLetterOrDigit(c) && !"-_./\\:=+,@".Contains(c))
        ? OperatingSystem.IsWindows() ? $"\"{word}\"" : $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'" : word;

    private static string Free(string id)
    {
        var name = $"{id}.yaml";
        for (var i = 2; OutputFile.Taken(name) is not null; i++)
            name = $"{id}-{Figures.Whole(i)}.yaml";
        return name;
    }

    private static int Failed(string error) => Refusal.Input(error).Tell();
}
