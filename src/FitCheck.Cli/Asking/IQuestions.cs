namespace FitCheck.Cli.Asking;

/// <summary>Something that may be answered.</summary>
/// <param name="Id">What the answer is.</param>
/// <param name="Label">What the person reads.</param>
internal sealed record Choice(string Id, string Label);

/// <summary>Puts questions to a person, or to a list of answers.</summary>
internal interface IQuestions
{
    /// <summary>One of the choices, of which there is at least one; the first is the usual answer.</summary>
    Choice One(string question, IReadOnlyList<Choice> choices);

    /// <summary>Any of the choices, in their order.</summary>
    IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, bool atLeastOne);

    /// <summary>A line of text; empty stands for the usual answer. It is asked again as long as something is wrong with it.</summary>
    /// <param name="question">The question.</param>
    /// <param name="usual">The answer of those who just press Enter.</param>
    /// <param name="wrong">What is wrong with an answer; null when nothing is.</param>
    string Text(string question, string usual, Func<string, string?> wrong);
}
