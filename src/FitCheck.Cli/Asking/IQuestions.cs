namespace FitCheck.Cli.Asking;

/// <summary>Something that may be answered.</summary>
/// <param name="Id">What the answer is.</param>
/// <param name="Label">What the person reads.</param>
/// <param name="ShowsId">True where the id is worth reading too, because a build is written with it.</param>
internal sealed record Choice(string Id, string Label, bool ShowsId = true);

/// <summary>Puts questions to a person, or to a list of answers. Each may end in <see cref="StepBack"/>.</summary>
internal interface IQuestions
{
    /// <summary>One of the choices, of which there is at least one; the first is the usual answer.</summary>
    Choice One(string question, IReadOnlyList<Choice> choices);

    /// <summary>Any of the choices, in their order.</summary>
    /// <param name="question">The question.</param>
    /// <param name="choices">What may be chosen.</param>
    /// <param name="usual">Those that are chosen by who just presses Enter.</param>
    /// <param name="atLeastOne">False where nothing is an answer too.</param>
    IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne);

    /// <summary>A line of text; empty stands for the usual answer. It is asked again as long as something is wrong with it.</summary>
    /// <param name="question">The question.</param>
    /// <param name="usual">The answer of those who just press Enter.</param>
    /// <param name="wrong">What is wrong with an answer; null when nothing is.</param>
    string Text(string question, string usual, Func<string, string?> wrong);

    /// <summary>Something to read before the next question.</summary>
    void Say(string text);
}

/// <summary>The person wants to answer the question before this one anew.</summary>
internal sealed class StepBack : Exception
{
    public StepBack()
    {
    }

    public StepBack(string message) : base(message)
    {
    }

    public StepBack(string message, Exception inner) : base(message, inner)
    {
    }
}
