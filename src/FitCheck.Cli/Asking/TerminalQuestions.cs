using System.Text;
using FitCheck.Reports.Wording;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FitCheck.Cli.Asking;

/// <summary>Asks on a terminal of at least 40 columns and 8 lines. The only file that knows the library for it.</summary>
internal sealed class TerminalQuestions : IQuestions
{
    private const int MostRows = 16;
    private const string Back = "back";

    /// <summary>True when a person sits at both ends and the terminal can move its cursor.</summary>
    public static bool CanAsk =>
        !Console.IsInputRedirected && !Console.IsOutputRedirected && AnsiConsole.Profile.Capabilities is { Interactive: true, Ansi: true }
            && Environment.GetEnvironmentVariable("TERM") != "dumb";

    /// <summary>A list hides the cursor; whoever breaks off gets it back.</summary>
    public TerminalQuestions() => Console.CancelKeyPress += (_, _) => Console.Out.Write("\e[?25h\n");

    public Choice One(string question, IReadOnlyList<Choice> choices)
    {
        var answer = Answered(new ListScreen(PlainText.Line(question), choices))[0];
        Say($"{question} {Shown(answer)}");
        return answer;
    }

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne)
    {
        var answers = Answered(new ListScreen(PlainText.Line(question), choices, usual, atLeastOne));
        Say($"{question} {(answers.Count == 0 ? "none" : string.Join("; ", answers.Select(a => a.Label)))}");
        return answers;
    }

    public string Text(string question, string usual, Func<string, string?> wrong)
    {
        var prompt = new TextPrompt<string>(Markup.Escape($"{PlainText.Line(question)} (or `{Back}`)"))
        {
            AllowEmpty = true,
            Validator = text =>
                text.Trim() != Back && wrong(text.Trim()) is { } error ? ValidationResult.Error(Markup.Escape(PlainText.Line(error)))
                    : ValidationResult.Success(),
        };
        if (usual.Length > 0)
            prompt.DefaultValue(usual);
        var answer = AnsiConsole.Prompt(prompt).Trim();
        return answer == Back ? throw new StepBack() : answer;
    }

    public void Say(string text) => AnsiConsole.WriteLine(PlainText.Line(text));

    private static IReadOnlyList<Choice> Answered(ListScreen screen)
    {
        var drawn = 0;
        Console.Out.Write("\e[?25l");
        try
        {
            while (screen.Answer is null)
            {
                drawn = Draw(screen, drawn);
                screen.Press(Console.ReadKey(intercept: true));
            }
            return screen.Answer;
        }
        finally
        {
            Console.Out.Write($"{Up(drawn)}\e[?25h");
        }
    }

    // Over what was drawn before. No line is as wide as the screen, which would break it in two.
    private static int Draw(ListScreen screen, int drawn)
    {
        var (width, height) = (Math.Max(20, AnsiConsole.Profile.Width - 1), Math.Clamp(AnsiConsole.Profile.Height - 1, 5, MostRows));
        var lines = screen.Lines(height, Shown);
        var text = new StringBuilder(Up(drawn));
        foreach (var (line, isChosen) in lines)
            text.Append(isChosen ? "\e[1;4m" : "").Append(Cut(line, width)).Append(isChosen ? "\e[0m" : "").Append('\n');
        Console.Out.Write(text);
        return lines.Count;
    }

    private static string Up(int lines) =>
        lines == 0 ? "" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"\e[{lines}A\e[J");

    private static string Cut(string line, int width)
    {
        if (Width(line) <= width)
            return line;
        var (text, cells) = (new StringBuilder(), 0);
        foreach (var rune in line.EnumerateRunes())
        {
            cells += Width(rune.ToString());
            if (cells >= width)
                break;
            text.Append(rune);
        }
        return text.Append('…').ToString();
    }

    private static int Width(string text) => new Segment(text).CellCount();

    // Names come from files: nothing in them steers the terminal.
    private static string Shown(Choice choice) =>
        PlainText.Line(choice.Id.Length == 0 || !choice.ShowsId ? choice.Label : $"{choice.Label}  ({choice.Id})");
}
