namespace FitCheck.Cli.Asking;

/// <summary>
/// Keeps what was answered, so that a person may go back: the questions begin anew, and those before the one that is asked again are
/// answered as they were. What asks may so be written straight down, as long as the same answers lead to the same questions.
/// </summary>
internal sealed class Steps(IQuestions ask) : IQuestions
{
    private readonly List<object> _given = [];
    private int _next;

    /// <summary>What the questions lead to, after any number of steps back.</summary>
    public T Through<T>(Func<IQuestions, T> questions)
    {
        while (true)
        {
            _next = 0;
            try
            {
                return questions(this);
            }
            catch (StepBack)
            {
                // Before the first question there is none.
                if (_given.Count > 0)
                    _given.RemoveAt(_given.Count - 1);
            }
        }
    }

    public Choice One(string question, IReadOnlyList<Choice> choices) => Given(() => ask.One(question, choices));

    public IReadOnlyList<Choice> Several(string question, IReadOnlyList<Choice> choices, IReadOnlyList<Choice> usual, bool atLeastOne) =>
        Given(() => ask.Several(question, choices, usual, atLeastOne));

    public string Text(string question, string usual, Func<string, string?> wrong) => Given(() => ask.Text(question, usual, wrong));

    public void Say(string text)
    {
        if (_next == _given.Count)
            ask.Say(text);
    }

    private T Given<T>(Func<T> asked) where T : class
    {
        if (_next == _given.Count)
            _given.Add(asked());
        return (T)_given[_next++];
    }
}
