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
    public static int Run(IQuestions ask, string? file, string? vehicle, Folders folders)
    {
        if (file is not null && OutputFile.Taken(file) is { } taken)
            return Failed(taken);
        var problems = new ProblemList();
        var opened = new Lazy<OpenOutcome>(() => Checker.Open(CheckerOptions.Of(folders, ValidationCache.InUserFolder(), progress: null)));
        var dialogue = new BuildDialogue(PartsCatalog.Open(folders.Catalog, problems), Charted, ask);
        if (problems.HasErrors || dialogue.Ask(vehicle) is not { } draft)
            return dialogue.NothingToChoose is { } why ? Failed(why) : ProblemLines.Tell(problems.Sorted(), Console.Error);
        file ??= ask.Text("Write it to which file?", Free(draft.Vehicle.Id), f => f.Length == 0 ? null : OutputFile.Taken(f));
        if (Written(file, DraftYaml.Of(draft)) is not ExitStatus.Good and var failed)
            return failed;
        return Told(file, opened.Value);

        ChartResult? Charted(ChartSlice slice)
        {
            var outcome = opened.Value.Checker?.Chart(new ChartOptions { Slice = slice });
            problems.AddRange(outcome?.Result is null ? outcome?.Problems ?? opened.Value.Problems : opened.Value.With(outcome.Problems));
            return outcome?.Result;
        }
    }

    /// <summary>Writes a new file; one that exists is kept. Returns the exit status.</summary>
    public static int Written(string file, string text) => OutputFile.New(file, text) is { } error ? Failed(error) : ExitStatus.Good;

    private static int Told(string file, OpenOutcome opened)
    {
        IReadOnlyList<BuildSource> builds = [BuildSource.File(file)];
        if (opened.Checker is not { } checker)
            return ProblemLines.Tell(opened.ProblemsWith(builds), Console.Error);
        var outcome = checker.Check(builds);
        if (outcome.Result is not { } result)
            return ProblemLines.Tell(opened.With(outcome.Problems), Console.Error);
        Console.Out.WriteLine();
        Console.Out.WriteLine($"{PlainText.Line(file)} is written. {Headline.Of(result.Builds[0])}");
        Console.Out.WriteLine($"Go on with: fitcheck check {(file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file)}");
        return ExitStatus.Good;
    }

    private static string Free(string id)
    {
        var name = $"{id}.yaml";
        for (var i = 2; OutputFile.Taken(name) is not null; i++)
            name = $"{id}-{Figures.Whole(i)}.yaml";
        return name;
    }

    private static int Failed(string error) => Refusal.Input(error).Tell();
}
