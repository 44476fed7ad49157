using FitCheck.Cli.Measuring;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Fuzz;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Measuring;
using FitCheck.Reports.Sheet;
using FitCheck.Reports.Suggestions;
using FitCheck.Reports.Text;

namespace FitCheck.Hostile;

/// <summary>
/// Builds: each through the library in a format, all of them through `lint`, one through every command that takes one.
/// </summary>
internal sealed class BuildBatch(Seeds seeds) : IBatch
{
    private static readonly string[] Formats = [.. ReportList.Formats.Where(f => f != "html")];

    private readonly Checker _checker = Checker.Open(new CheckerOptions { Cache = ValidationCache.InUserFolder() }).Checker!;

    public int Run(Commands commands, int seed, int count)
    {
        var random = new Random(seed);
        var shaker = new Shaker([.. seeds.Builds.Select(s => s.Bytes)], seed);
        Directory.CreateDirectory("in");
        var judged = new List<string>();
        for (var i = 0; i < count; i++)
        {
            var file = $"in/b{i}.yaml";
            File.WriteAllBytes(file, shaker.Next());
            CheckOutcome? outcome = null;
            commands.Timed($"Check {file}", () => outcome = _checker.Check([BuildSource.File(file)]));
            commands.Placed(outcome!.Problems, outcome.Result is not null);
            if (outcome.Result is not { } result)
                continue;
            judged.Add(file);
            commands.Timed($"formats of {file}", () => Told(result, Formats[random.Next(Formats.Length)], random.Next(12) == 0));
            if (random.Next(4) == 0)
                commands.Timed($"List {file}", () => Listed(file, ListReports.All[random.Next(ListReports.All.Count)]));
        }
        commands.Run(["lint", "in", .. ReportList.LintFormats.SelectMany(f => (string[])["--format", f, "-o", f == "text" ? "lint.txt"
            : "lint." + Ending(f)])]);
        commands.Placed(File.ReadAllText("lint.txt"), mustSay: false);
        Commanded(commands, judged.Count > 0 ? judged[random.Next(judged.Count)] : "in/b0.yaml", random);
        return count;
    }

    private void Commanded(Commands commands, string build, Random random)
    {
        Measured(commands, build, random);
        File.Copy(build, "copy.yaml");
        string[] said = random.Next(2) == 0 ? ["--units", "inch"] : [];
        commands.Run(["check", build, "--sheet", "sheet.html", .. ReportList.Formats.SelectMany(f => (string[])["--format", f]),
            .. ReportList.Formats.SelectMany(f => (string[])["-o", "check." + Ending(f)]), .. said]);
        commands.Run("check", build, "--as-expected", "--verbose", "--format", Formats[random.Next(Formats.Length)], "-o", "expected.out");
        commands.Run(["list", build, .. ListReports.Formats.SelectMany(f => (string[])["--format", f, "-o", "list." + f]), "--tax", "19",
            "--for", "::error::x", .. said]);
        commands.Run(["measure", build, "--card", "card.html", .. said]);
        commands.Run("lint", "--fix", "copy.yaml", "-o", "fix.txt");
        commands.Run("lint", "--fix", "copy.yaml", "-o", "fix.txt");
        if (random.Next(4) == 0)
        {
            commands.Run(["suggest", build, "--time", "1", "--format",
                SuggestionReports.Formats[random.Next(SuggestionReports.Formats.Length)], "-o", "suggest.out", "--write", "better.yaml",
                .. said]);
        }
        if (random.Next(4) == 0)
            commands.Run("check", "in/b1.yaml", build, "in/b2.yaml", "--format", "json", "-o", "several.json");
    }

    // As on a terminal: each answer goes into the file at once.
    private void Measured(Commands commands, string build, Random random)
    {
        File.Copy(build, "measured.yaml");
        if (_checker.Check([BuildSource.File("measured.yaml")]).Result is not { } result)
            return;
        commands.Asked("measure measured.yaml", () =>
        {
            if (ReadingFile.Open("measured.yaml", null, replaces: false, out var wrong) is not { } file)
                throw new BrokenException($"measured.yaml can't be opened: {wrong}");
            var dialogue = new MeasureDialogue(new RandomAnswers(commands, random, 60),
                new TextPage(TextWriter.Null, 80, color: false),
                text => _checker.Check([BuildSource.Text("measured.yaml", text)]), file.Keep)
            {
                Today = new DateOnly(2026, 11, 2),
                InInches = random.Next(2) == 0,
            };
            dialogue.Run(file.Text, result.Builds[0]);
            return dialogue.Failed is { } failed ? throw new BrokenException(failed) : ExitStatus.Good;
        });
        commands.Hold(_checker.Check([BuildSource.File("measured.yaml")]).Result is not null, "what was measured can't be read any more");
    }

    private static string Ending(string format) => format switch { "junit" => "xml", "markdown" => "md", "github" => "log", _ => format };

    private static void Told(CheckResult result, string format, bool asPages)
    {
        foreach (var each in asPages ? [format, "html"] : (string[])[format])
        {
            using var report = StandardStreams.Report(new StringWriter(), each);
            ReportList.Find(each)!.Write(result, ReportOptions.Default with { Verbose = asPages }, report);
        }
        if (asPages)
        {
            SheetReport.Write(result, ReportOptions.Default, TextWriter.Null);
            MeasureCard.Write(result.Builds[0], ReportOptions.Default, TextWriter.Null);
        }
        MeasureText.Write(result.Builds[0], ReportOptions.Default, TextWriter.Null);
    }

    private void Listed(string file, IListReport report)
    {
        if (_checker.List([BuildSource.File(file)]).Result is { } list)
            report.Write(list, ReportOptions.Default, TextWriter.Null);
    }
}
