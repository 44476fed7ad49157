using FitCheck.Cli.Asking;

namespace FitCheck.Tests.Asking;

/// <summary>
/// Answers by the beginning of the question; `usual` takes the first choice or the usual text. Keeps book of what was asked and offered.
/// </summary>
internal sealed class ListedAnswers(params (string Question, string Answer)[] answers) : IQuestions
{
    /// <summary>What was asked, with the ids that were offered.</summary>
    public List<(string Question, IReadOnlyList<Choice> Offered)> Asked { get; } = [];

    public Choice One(string question, IReadOnlyList<Choice> choices)
    {
        Asked.Add((question, choices));
        var answer = To(question);
        return answer == "usual" ? choices[0] : choices.Single(c => c.Id == answer);
    }

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne)
    {
        Asked.Add((question, choices));
        if (To(question) == "usual")
            return usual;
        var chosen = To(question).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return [.. chosen.Select(id => choices.Single(c => c.Id.Split(", ")[0] == id))];
    }

    public string Text(string question, string usual, Func<string, string?> wrong)
    {
        Asked.Add((question, []));
        var answer = To(question);
        return answer == "usual" ? usual : wrong(answer) is { } error ? throw new InvalidOperationException(error) : answer;
    }

    public void Say(string text) => Said.Add(text);

    /// <summary>What was told between the questions.</summary>
    public List<string> Said { get; } = [];

    private string To(string question)
    {
        foreach (var (beginning, answer) in answers)
        {
            if (question.StartsWith(beginning, StringComparison.Ordinal))
                return answer;
        }
        throw new InvalidOperationException($"nobody answers: {question}");
    }
}
