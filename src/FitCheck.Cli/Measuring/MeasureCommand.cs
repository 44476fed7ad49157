using System.CommandLine;
using FitCheck.Cli.Asking;
using FitCheck.Cli.Commands;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Measuring;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Measuring;
using FitCheck.Reports.Text;
using FitCheck.Reports.Wording;

namespace FitCheck.Cli.Measuring;

/// <summary>`fitcheck measure BUILD`</summary>
internal static class MeasureCommand
{
    public static Command Create()
    {
        var given = new MeasureArguments();
        var command = new Command("measure",
            "Ask for what a build waits for, and write it into the build; in a pipe, list it with the lines to fill in")
        {
            given.Build, given.Vehicle, given.Card, given.Write, given.Force, given.Common.Catalog, given.Common.Rules,
            given.Common.Units, given.Common.NoColor,
        };
        command.SetAction(parsed => given.Wrong(parsed) is { } wrong ? Refusal.Usage(wrong).Tell() : Run(given, parsed));
        return command;
    }

    private static int Run(MeasureArguments given, ParseResult parsed)
    {
        using var told = Lengths.Asked(given.Common.Told(parsed));
        if (parsed.GetValue(given.Vehicle) is { } vehicle)
            return VehicleCardFile.Write(vehicle, parsed.GetValue(given.Card)!, given.Common.Folders(parsed));
        var file = parsed.GetValue(given.Build)!;
        var (target, replaces, card, folders) = (parsed.GetValue(given.Write), parsed.GetValue(given.Force), parsed.GetValue(given.Card),
            given.Common.Folders(parsed));
        if (target is not null && (replaces ? OutputFile.Link(target) : OutputFile.Taken(target)) is { } taken)
            return Refusal.Input(File.Exists(target) && !AtomicFile.IsLink(target) ? taken + " (--force replaces it)" : taken).Tell();
        var files = new[] { ("--card", card), ("--write", target) }.Where(f => f.Item2 is not null).Select(f => (f.Item1, f.Item2!))
            .ToList();
        if (Overwriting.Of(files, [file], FilesRead.Of(folders), edited: target) is { } refusal)
            return refusal.Tell();
        using var line = new ProgressLine();
        var opened = Checker.Open(CheckerOptions.Of(folders, ValidationCache.InUserFolder(), line));
        if (opened.Checker is not { } checker)
            return ProblemLines.Tell(opened.ProblemsWith([BuildSource.File(file)]), Console.Error);
        var outcome = checker.Check([BuildSource.File(file)]);
        if (outcome.Result is not { } result)
            return ProblemLines.Tell(opened.With(outcome.Problems), Console.Error);
        line.Dispose();
        ProblemLines.Tell(opened.With(outcome.Problems), Console.Error);
        var build = result.Builds[0];
        using var ofBuild = Lengths.Asked(build.Lengths);
        if (card is not null && CardFile.Write(card, (options, output) => MeasureCard.Write(build, options, output)) is { } failed)
            return failed;
        if (card is not null && Console.IsOutputRedirected is false)
            return Left(build);
        if (TerminalQuestions.CanAsk)
            return Ask(checker, build, file, target, replaces);
        using (var output = StandardStreams.ForReport("text"))
            MeasureText.Write(build, Options(given, parsed), output);
        return Left(build);
    }

    private static ReportOptions Options(MeasureArguments given, ParseResult parsed) => ReportOptions.Default with
    {
        Color = CommonOptions.Color(parsed.GetValue(given.Common.NoColor)),
        Columns = StandardStreams.Columns,
    };

    private static int Ask(Checker checker, BuildResult build, string file, string? target, bool replaces)
    {
        if (ReadingFile.Open(file, target, replaces, out var wrong) is not { } edited)
            return Refusal.Input(wrong!).Tell();
        var page = new TextPage(Console.Out, StandardStreams.Columns, color: false);
        var dialogue = new MeasureDialogue(new TerminalQuestions(), page, Judged, edited.Keep)
        {
            Today = Calendar.Today,
            InInches = build.Lengths == LengthUnits.Inch,
        };
        Console.Out.WriteLine(
            $"`{MeasureDialogue.Stop}` ends the questions; each answer is written into {PlainText.Line(edited.Name)} at once.");
        var now = dialogue.Run(edited.Text, build);
        if (dialogue.Failed is { } failed)
            return Refusal.Input(failed).Tell();
        Console.Out.WriteLine();
        Console.Out.WriteLine($"{Sentences.Count(dialogue.Written, "reading is", "readings are")} written. "
            + $"{(OpenReadings.Of(now).Count == 0 ? MeasureWords.Nothing + " " : "")}{Headline.Of(now)}");
        return Left(now);

        CheckOutcome Judged(string text) => checker.Check([BuildSource.Text(build.File, text)]);
    }

    private static int Left(BuildResult build) =>
        build.Findings.Any(f => f is { Status: Status.Measure, Waived: null }) ? ExitStatus.Found : ExitStatus.Good;
}
