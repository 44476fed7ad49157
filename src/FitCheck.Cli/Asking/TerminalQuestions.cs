using FitCheck.Reports.Wording;
using Spectre.Console;

namespace FitCheck.Cli.Asking;

/// <summary>
/// Asks on a terminal: lists are narrowed by typing and walked through with the arrows. The only file that knows the library for it.
/// </summary>
internal sealed class TerminalQuestions : IQuestions
{
    private const int Rows = 12;

    private static readonly Style Chosen = new(decoration: Decoration.Bold | Decoration.Underline);

    /// <summary>True when a person sits at both ends and the terminal can move its cursor.</summary>
    public static bool CanAsk =>
        !Console.IsInputRedirected && !Console.IsOutputRedirected && AnsiConsole.Profile.Capabilities is { Interactive: true, Ansi: true }
            && Environment.GetEnvironmentVariable("TERM") != "dumb";

    /// <summary>A list hides the cursor; whoever breaks off gets it back.</summary>
    public TerminalQuestions() => Console.CancelKeyPress += (_, _) => Console.Out.Write("\e[?25h\n");

    public Choice One(string question, IReadOnlyList<Choice> choices)
    {
        var prompt = new SelectionPrompt<Choice>
        {
            Title = Plain(question),
            PageSize = Rows,
            HighlightStyle = Chosen,
            SearchHighlightStyle = Chosen,
            SearchEnabled = true,
            SearchPlaceholderText = "Type a part of a name or id; arrows and Enter choose.",
            MoreChoicesText = "(more below)",
            Converter = Shown,
            WrapAround = true,
        };
        foreach (var choice in choices)
            prompt.AddChoice(choice);
        var answer = AnsiConsole.Prompt(prompt);
        AnsiConsole.MarkupLine($"{Plain(question)} {Shown(answer)}");
        return answer;
    }

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, bool atLeastOne)
    {
        var prompt = new MultiSelectionPrompt<Choice>
        {
            Title = Plain(question),
            PageSize = Rows,
            HighlightStyle = Chosen,
            Required = atLeastOne,
            InstructionsText = $"Space marks, Enter goes on{(atLeastOne ? "" : ", also without a mark")}.",
            MoreChoicesText = "(more below)",
            Converter = Shown,
        };
        foreach (var choice in choices)
            prompt.AddChoice(choice);
        var answers = AnsiConsole.Prompt(prompt);
        AnsiConsole.MarkupLine(
            $"{Plain(question)} {(answers.Count == 0 ? "none" : string.Join("; ", answers.Select(a => Plain(a.Label))))}");
        return [.. choices.Where(answers.Contains)];
    }

    public string Text(string question, string usual, Func<string, string?> wrong)
    {
        var prompt = new TextPrompt<string>(Plain(question))
        {
            AllowEmpty = true,
            Validator = text => wrong(text.Trim()) is { } error ? ValidationResult.Error(Plain(error)) : ValidationResult.Success(),
        };
        if (usual.Length > 0)
            prompt.DefaultValue(usual);
        return AnsiConsole.Prompt(prompt).Trim();
    }

    private static string Shown(Choice choice) => Plain(choice.Id.Length == 0 ? choice.Label : $"{choice.Label}  ({choice.Id})");

    // Names come from files: nothing in them steers the terminal or the library's markup.
    private static string Plain(string text) => Markup.Escape(PlainText.Line(text));
}
