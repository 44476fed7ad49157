using FitCheck.Cli.Asking;

namespace FitCheck.Tests.Asking;

/// <summary>Types one line after the other, whatever is asked; `back` goes a step back, as a terminal takes it.</summary>
internal sealed class ScriptedAnswers(params string[] lines) : IQuestions
{
    private int _next;

    /// <summary>What was asked.</summary>
    public List<string> Asked { get; } = [];

    public Choice One(string question, IReadOnlyList<Choice> choices)
    {
        Asked.Add(question);
        return Line() is "" ? choices[0] : choices.Single(c => c.Id == lines[_next - 1]);
    }

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne)
    {
        Asked.Add(question);
        return Line() is "" ? usual : [.. choices.Where(c => lines[_next - 1].Split(' ').Contains(c.Id))];
    }

    public string Text(string question, string usual, Func<string, string?> wrong)
    {
        Asked.Add(question);
        var line = Line();
        return line.Length == 0 && usual.Length > 0 ? usual : wrong(line) is { } told ? throw new InvalidOperationException(told) : line;
    }

    public void Say(string text)
    {
    }

    private string Line() => lines[_next++] is var line && line == "back" ? throw new StepBack() : line;
}
